package steadyturn.ingest.recording;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import steadyturn.ingest.recording.table.MotionLayout;
import steadyturn.ingest.recording.table.MotionStream;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.recording.table.SampleColumns;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/** Reads a run piece by piece, holding the samples of one piece at a time. Close it after use. */
public final class Stretches implements Iterator<Stretch>, AutoCloseable {

  private final RunPlan plan;
  private final Player player;
  private final double ownS;
  private final double marginS;
  private final List<String> notices;
  private final List<RecordingException> unread;
  private final List<OpenUnit> units = new ArrayList<>();
  private double fromS;
  private boolean ended;

  Stretches(
      RunPlan plan,
      Player player,
      double ownS,
      double marginS,
      List<String> notices,
      List<RecordingException> unread) {
    if (!(ownS > 0) || !(marginS >= 0)) {
      throw new IllegalArgumentException(
          "pieces of " + ownS + " s with a margin of " + marginS + " s");
    }
    this.plan = plan;
    this.player = player;
    this.ownS = ownS;
    this.marginS = marginS;
    this.notices = notices;
    this.unread = unread;
    for (int i = 0; i < plan.sources().size(); i++) {
      try {
        units.add(new OpenUnit(plan.sources().get(i), plan.offsetsS().get(i)));
      } catch (RecordingException e) { // the other units stay
        unread.add(e);
      }
    }
    double firstS = plan.offsetsS().stream().mapToDouble(o -> o).min().orElse(0);
    fromS = Math.max(firstS, -ownS);
  }

  /** What was left out or taken as given up to now; complete after the last piece. */
  public List<String> notices() {
    List<String> all = new ArrayList<>(notices);
    for (OpenUnit unit : units) {
      all.addAll(unit.stream.tally().notices());
      if (ended && !unit.shown && unit.failure.isEmpty()) {
        all.add(
            RecordingException.place(unit.source.file().table(), 0, "")
                + ": left out, it shares no time with the first unit. Check acq_time in the scans"
                + " file.");
      }
    }
    return all;
  }

  /** What is wrong with units that could not be read, or not on; complete after the last piece. */
  public List<RecordingException> unread() {
    List<RecordingException> all = new ArrayList<>(unread);
    units.forEach(unit -> unit.failure.ifPresent(all::add));
    return all;
  }

  /**
   * Whether there is more of the first unit, whose first sample is the zero of the axis, or of a
   * unit that ran beside it.
   *
   * @throws RecordingException when not one unit can be read
   */
  @Override
  public boolean hasNext() {
    double nextS = Double.POSITIVE_INFINITY;
    boolean firstToRead = true;
    for (OpenUnit unit : units) {
      if (unit.shown || firstToRead) {
        unit.fill(fromS - marginS, Math.max(fromS, 0), ownS);
        nextS = Math.min(nextS, unit.firstAtOrAfterS(fromS));
        firstToRead &= unit.unreadable();
      }
    }
    if (firstToRead) {
      throw unread().get(0);
    }
    ended = Double.isInfinite(nextS);
    if (!ended && nextS > fromS + ownS) {
      fromS = nextS;
    }
    return !ended;
  }

  @Override
  public Stretch next() {
    if (!hasNext()) {
      throw new NoSuchElementException("no more samples in " + plan.run().id());
    }
    double toS = fromS + ownS;
    double untilS = toS + marginS;
    double sinceS = fromS - marginS;
    units.parallelStream().forEach(unit -> unit.fill(sinceS, untilS, ownS));
    List<UnitStream> streams =
        units.stream()
            .flatMap(unit -> unit.cut(sinceS, untilS))
            .sorted(Comparator.comparing(UnitStream::point))
            .toList();
    List<Mark> marks =
        plan.marks().stream().filter(m -> m.onsetS() < untilS && m.endS() >= sinceS).toList();
    Stretch stretch =
        new Stretch(new Recording(plan.run().id(), player, streams, marks), fromS, toS);
    fromS = toS;
    return stretch;
  }

  @Override
  public void close() {
    units.forEach(unit -> unit.stream.close());
  }

  /** A table being read, with the samples still wanted. */
  private static final class OpenUnit {

    private static final int FIRST_CAPACITY = 1 << 12;

    private final UnitSource source;
    private final double offsetS;
    private final MotionStream stream;
    private final SampleColumns columns;
    private boolean more = true;
    private boolean shown;
    private Optional<RecordingException> failure = Optional.empty();
    private double readToS = Double.NEGATIVE_INFINITY;

    OpenUnit(UnitSource source, double offsetS) {
      this.source = source;
      this.offsetS = offsetS;
      stream = source.open();
      columns = new SampleColumns(source.layout().slots(), FIRST_CAPACITY);
    }

    /** Reads on to an instant, forgetting what lies before another. */
    void fill(double sinceS, double untilS, double stepS) {
      columns.dropBefore(sinceS - offsetS);
      while (more && readToS < untilS) {
        double stopS = Math.min(untilS, Math.max(readToS, offsetS) + stepS);
        more = readOn(stopS - offsetS);
        readToS = columns.size() > 0 ? columns.lastTimeS() + offsetS : stopS;
        columns.dropBefore(sinceS - offsetS);
      }
    }

    /** A table that breaks off ends there; the other units go on. */
    private boolean readOn(double untilS) {
      try {
        return stream.fill(columns, untilS);
      } catch (RecordingException e) {
        failure = Optional.of(e);
        return false;
      }
    }

    /** Whether not one sample of it can be read. */
    boolean unreadable() {
      return failure.isPresent() && !shown && columns.size() == 0;
    }

    double firstAtOrAfterS(double instantS) {
      int i = columns.indexAt(instantS - offsetS);
      return i < columns.size() ? columns.timeS(i) + offsetS : Double.POSITIVE_INFINITY;
    }

    Stream<UnitStream> cut(double sinceS, double untilS) {
      int from = columns.indexAt(sinceS - offsetS);
      int to = columns.indexAt(untilS - offsetS);
      if (to <= from) {
        return Stream.empty();
      }
      shown = true;
      double rateHz = source.rateHz(columns);
      return IntStream.range(0, source.layout().points().size())
          .mapToObj(
              i ->
                  columns.copy(
                      source.factsOf(i, rateHz), MotionLayout.firstSlot(i), from, to, offsetS));
    }
  }
}
