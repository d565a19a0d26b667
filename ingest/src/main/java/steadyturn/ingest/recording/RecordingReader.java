package steadyturn.ingest.recording;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import steadyturn.ingest.recording.dataset.Archive;
import steadyturn.ingest.recording.dataset.Participants;
import steadyturn.ingest.recording.dataset.SessionRun;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Offered;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * Reads the runs that an {@link Archive} lists. Samples come in SI units and sensor axes on one
 * time axis, whose zero is the first sample of the pelvis unit; units with clocks of their own are
 * laid side by side by their start times, to microseconds.
 */
@Offered
public final class RecordingReader {

  /** Of the heap, the rest being left to those who work on the samples: our choice. */
  private static final double LARGEST_SHARE_OF_HEAP = 0.7;

  private RecordingReader() {}

  private static void allOrNothing(RecordingException failure) {
    throw failure;
  }

  /**
   * Reads a whole run.
   *
   * @throws RecordingException when the run cannot be read, or when the player's side is not known
   */
  public static ReadRun read(SessionRun run) {
    List<String> notices = new ArrayList<>();
    Player player = Participants.player(run.root(), run.player(), notices);
    RunPlan plan =
        RunPlan.of(
            run, pointsOf(Optional.of(player.handed())), notices, RecordingReader::allOrNothing);
    List<UnitStream> streams =
        overlapping(plan, streams(plan, notices, RecordingReader::allOrNothing), notices);
    return new ReadRun(new Recording(run.id(), player, streams, plan.marks()), notices);
  }

  /**
   * Reads the units of a run, for those who need no player: whether the samples are good can be
   * told without knowing the side.
   *
   * @throws RecordingException when one of them cannot be read
   */
  public static List<UnitStream> readUnits(SessionRun run) {
    return readUnits(run, RecordingReader::allOrNothing);
  }

  /**
   * Reads the units that can be read.
   *
   * @param unread is handed what is wrong with each of the others
   * @throws RecordingException when none can be read
   */
  public static List<UnitStream> readUnits(SessionRun run, Consumer<RecordingException> unread) {
    List<String> notices = new ArrayList<>();
    RunPlan plan = planWithoutPlayer(run, notices, unread);
    return streams(plan, notices, unread);
  }

  private static RunPlan planWithoutPlayer(
      SessionRun run, List<String> notices, Consumer<RecordingException> unread) {
    return RunPlan.of(
        run, pointsOf(Participants.handedness(run.root(), run.player())), notices, unread);
  }

  /** The marks of a run without its samples, such as the wear steps of an earlier one. */
  public static List<Mark> readMarks(SessionRun run) {
    return planWithoutPlayer(run, new ArrayList<>(), failure -> {}).marks();
  }

  /** The player of a run; none where the archive does not say who it is and how they swing. */
  public static Optional<Player> player(SessionRun run) {
    try {
      return Optional.of(Participants.player(run.root(), run.player(), new ArrayList<>()));
    } catch (RecordingException e) {
      return Optional.empty();
    }
  }

  /**
   * Reads a run piece by piece in a bounded amount of memory.
   *
   * @param ownS length of the part of the time axis that each piece stands for, s
   * @param marginS what each piece shows beyond its own part on either side, s
   */
  public static Stretches stretches(SessionRun run, double ownS, double marginS) {
    List<String> notices = new ArrayList<>();
    Player player = Participants.player(run.root(), run.player(), notices);
    List<RecordingException> unread = new ArrayList<>();
    RunPlan plan = RunPlan.of(run, pointsOf(Optional.of(player.handed())), notices, unread::add);
    return new Stretches(plan, player, ownS, marginS, notices, unread);
  }

  private static Function<String, Optional<BodyPoint>> pointsOf(Optional<Handedness> handed) {
    return handed.isPresent()
        ? word -> PointWords.pointOf(word, handed.get())
        : PointWords::pointOf;
  }

  private static List<UnitStream> streams(
      RunPlan plan, List<String> notices, Consumer<RecordingException> unread) {
    requireRoom(plan, Runtime.getRuntime().maxMemory());
    List<RecordingException> failures = Collections.synchronizedList(new ArrayList<>());
    List<UnitStream> streams =
        IntStream.range(0, plan.sources().size())
            .parallel()
            .boxed()
            .flatMap(i -> readable(plan.sources().get(i), plan.offsetsS().get(i), failures))
            .toList();
    RunPlan.tellUnless(streams.isEmpty(), failures, unread);
    plan.sources().forEach(source -> notices.addAll(source.notices()));
    return streams.stream().sorted(Comparator.comparing(UnitStream::point)).toList();
  }

  private static Stream<UnitStream> readable(
      UnitSource source, double offsetS, List<RecordingException> failures) {
    try {
      return source.readAll(offsetS).stream();
    } catch (RecordingException e) { // the other units stay
      failures.add(e);
      return Stream.empty();
    }
  }

  /** Those that share time with the first table's first unit, the zero of the axis. */
  private static List<UnitStream> overlapping(
      RunPlan plan, List<UnitStream> streams, List<String> notices) {
    BodyPoint first = plan.sources().get(0).layout().points().get(0);
    UnitStream zero = streams.stream().filter(s -> s.point() == first).findAny().orElseThrow();
    List<UnitStream> kept = new ArrayList<>();
    for (UnitStream stream : streams) {
      if (overlap(zero, stream)) {
        kept.add(stream);
      } else {
        notices.add(noOverlap(plan.run(), zero, stream));
      }
    }
    return kept;
  }

  /** Refuses what cannot be held before an hour is spent on it. */
  static void requireRoom(RunPlan plan, long heapBytes) {
    long neededBytes = plan.sources().stream().mapToLong(UnitSource::expectedBytes).sum();
    if (neededBytes > LARGEST_SHARE_OF_HEAP * heapBytes) {
      throw RecordingException.of(
          plan.sources().get(0).file().table(),
          "this run needs about "
              + (neededBytes >> 20)
              + " MiB to be held whole, of "
              + (heapBytes >> 20)
              + " MiB there are. Analyse it in pieces, split it into several runs, or give Java"
              + " more memory (-Xmx).");
    }
  }

  private static boolean overlap(UnitStream a, UnitStream b) {
    return a.timeS(0) <= b.timeS(b.size() - 1) && b.timeS(0) <= a.timeS(a.size() - 1);
  }

  static String noOverlap(SessionRun run, UnitStream zero, UnitStream other) {
    return String.format(
        Locale.ROOT,
        "%s: %s left out, it shares no time with %s (%.1f to %.1f s against %.1f to %.1f s). Check"
            + " acq_time in the scans file.",
        run.id(),
        other.point().trackedPoint(),
        zero.point().trackedPoint(),
        other.timeS(0),
        other.timeS(other.size() - 1),
        zero.timeS(0),
        zero.timeS(zero.size() - 1));
  }
}
