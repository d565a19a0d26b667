package steadyturn.ingest.recording;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.stream.Stream;
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
  private final List<OpenUnit> units = new ArrayList<>();
  private double fromS;

  Stretches(RunPlan plan, Player player, double ownS, double marginS, List<String> notices) {
    if (!(ownS > 0) || !(marginS >= 0)) {
      throw new IllegalArgumentException(
          "pieces of " + ownS + " s with a margin of " + marginS + " s");
    }
    this.plan = plan;
    this.player = player;
    this.ownS = ownS;
    this.marginS = marginS;
    this.notices = notices;
    for (int i = 0; i < plan.sources().size(); i++) {
      units.add(new OpenUnit(plan.sources().get(i), plan.offsetsS().get(i)));
    }
    fromS = plan.offsetsS().stream().mapToDouble(o -> o).min().orElse(0);
  }

  /** What was left out or taken as given up to now; complete after the last piece. */
  public List<String> notices() {
    List<String> all = new ArrayList<>(notices);
    units.forEach(unit -> all.addAll(unit.stream.tally().notices()));
    return all;
  }

  @Override
  public boolean hasNext() {
    units.parallelStream().forEach(unit -> unit.fill(fromS));
    double firstS = units.stream().mapToDouble(u -> u.firstAtOrAfterS(fromS)).min().orElse(fromS);
    if (Double.isInfinite(firstS)) {
      return false;
    }
    fromS = firstS > fromS + ownS ? firstS : fromS;
    return true;
  }

  @Override
  public Stretch next() {
    if (!hasNext()) {
      throw new NoSuchElementException("no more samples in " + plan.run().id());
    }
    double toS = fromS + ownS;
    double untilS = toS + marginS;
    double sinceS = fromS - marginS;
    units.parallelStream().forEach(unit -> unit.fill(untilS));
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
    units.forEach(unit -> unit.columns.dropBefore(toS - marginS - unit.offsetS));
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

    OpenUnit(UnitSource source, double offsetS) {
      this.source = source;
      this.offsetS = offsetS;
      stream = source.open();
      columns = new SampleColumns(source.layout().slots(), FIRST_CAPACITY);
    }

    void fill(double instantS) {
      boolean reached = columns.size() > 0 && columns.lastTimeS() + offsetS >= instantS;
      if (more && !reached) {
        more = stream.fill(columns, instantS - offsetS);
      }
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
      double rateHz = source.rateHz(columns);
      List<UnitStream> streams = new ArrayList<>();
      for (int i = 0; i < source.layout().points().size(); i++) {
        streams.add(
            columns.copy(source.factsOf(i, rateHz), MotionLayout.firstSlot(i), from, to, offsetS));
      }
      return streams.stream();
    }
  }
}
