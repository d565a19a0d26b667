package steadyturn.analysis.reading;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.lesson.LessonAnalyzer;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.lesson.Notice;
import steadyturn.analysis.lesson.UnitResult;
import steadyturn.fusion.calibrate.CalibrationStore;
import steadyturn.fusion.calibrate.UnitCalibration;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.recording.RecordingReader;
import steadyturn.ingest.recording.Stretches;
import steadyturn.ingest.recording.dataset.Session;
import steadyturn.ingest.recording.dataset.SessionRun;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * The recordings of a lesson one after the other, long ones in pieces, so that one piece at a time
 * is in memory. Earlier runs of the same day that hold wear steps come first. A run that breaks off
 * is reported, what was read of it before stays, and the next run follows.
 */
public final class LessonReading implements Iterable<Recording> {

  /** A quarter of an hour of five units at 1 kHz is 250 MB; swings fit into the margin. */
  private static final double PIECE_S = 900;

  private static final double MARGIN_S = 30;

  private final List<SessionRun> runs;
  private final Set<String> asked;
  private final ReadingWatch watch;
  private final SortedSet<String> serials = new TreeSet<>();

  /** The days of the calibrations that were taken off, by recording. */
  private final Map<String, Map<BodyPoint, LocalDate>> calibrated = new HashMap<>();

  public LessonReading(Session lesson, ReadingWatch watch) {
    this(runs(lesson), lesson, watch);
  }

  private static List<SessionRun> runs(Session lesson) {
    Stream<SessionRun> withSteps =
        lesson.runs().isEmpty()
            ? Stream.of()
            : lesson.before(lesson.runs().get(0)).stream().filter(LessonReading::hasMarks);
    return Stream.concat(withSteps, lesson.runs().stream()).distinct().toList();
  }

  private LessonReading(List<SessionRun> runs, Session lesson, ReadingWatch watch) {
    this.runs = runs;
    this.watch = watch;
    asked = lesson.runs().stream().map(SessionRun::id).collect(Collectors.toSet());
  }

  /** Only the runs of a lesson that hold marks: its wear steps lie there. */
  public static LessonReading ofSteps(Session lesson, ReadingWatch watch) {
    return new LessonReading(
        lesson.allRuns().stream().filter(LessonReading::hasMarks).toList(), lesson, watch);
  }

  /**
   * The results of the runs that were asked for, one a run that could be read; wear steps may lie
   * in runs before them. A function of the files alone.
   */
  public static List<LessonResult> results(
      Session lesson, AnalysisSettings settings, ReadingWatch watch) {
    return new LessonReading(lesson, watch).results(settings);
  }

  /** The same of a lesson that is read here. */
  public List<LessonResult> results(AnalysisSettings settings) {
    return new LessonAnalyzer(settings)
        .analyze(this).stream()
            .filter(result -> asked.contains(result.recording()))
            .map(this::withCalibrations)
            .toList();
  }

  /** Names the calibrations, and those that were made after the recording. */
  private LessonResult withCalibrations(LessonResult result) {
    Map<BodyPoint, LocalDate> days = calibrated.getOrDefault(result.recording(), Map.of());
    List<UnitResult> units = new ArrayList<>();
    List<Notice> notices = new ArrayList<>(result.notices());
    for (UnitResult unit : result.units()) {
      Optional<LocalDate> day = Optional.ofNullable(days.get(unit.point()));
      units.add(day.map(unit::withCalibrationOf).orElse(unit));
      day.map(its -> daysLater(result.recording(), its))
          .filter(count -> count > 0)
          .map(count -> Reason.of(ReadingReason.CALIBRATED_LATER, count))
          .ifPresent(why -> notices.add(new Notice(unit.point().trackedPoint(), why)));
    }
    return new LessonResult(
        result.recording(), result.player(), result.aim(), units, result.swings(), notices);
  }

  /** Days from a recording to a day; none where it is not told when it began. */
  private long daysLater(String recording, LocalDate day) {
    return runs.stream()
        .filter(run -> run.id().equals(recording))
        .flatMap(run -> run.startedAt().stream())
        .mapToLong(start -> ChronoUnit.DAYS.between(start.toLocalDate(), day))
        .findFirst()
        .orElse(0);
  }

  /** The serial numbers whose calibrations were asked for, up to now. */
  public SortedSet<String> serials() {
    return serials;
  }

  private Recording calibrated(Recording recording, CalibrationStore calibrations) {
    List<UnitStream> units = new ArrayList<>();
    for (UnitStream unit : recording.units()) {
      String serial = unit.facts().serialNumber();
      serials.add(serial);
      Optional<UnitCalibration> its =
          calibrations.latest(serial).filter(any -> !unit.facts().calibrated());
      its.ifPresent(
          used ->
              calibrated
                  .computeIfAbsent(recording.id(), id -> new EnumMap<>(BodyPoint.class))
                  .put(unit.point(), used.date()));
      units.add(its.map(used -> used.apply(unit)).orElse(unit));
    }
    return new Recording(recording.id(), recording.player(), units, recording.marks());
  }

  private static boolean hasMarks(SessionRun run) {
    return !RecordingReader.readMarks(run).isEmpty();
  }

  @Override
  public Iterator<Recording> iterator() {
    return new Pieces(new ArrayDeque<>(runs));
  }

  /** Looks one piece ahead, as only reading it tells whether it can be read. */
  private final class Pieces implements Iterator<Recording> {

    private final Deque<SessionRun> toRead;
    private CalibrationStore calibrations = CalibrationStore.of(Path.of(""));
    private Optional<Stretches> open = Optional.empty();
    private Optional<Recording> ahead = Optional.empty();

    Pieces(Deque<SessionRun> toRead) {
      this.toRead = toRead;
    }

    @Override
    public boolean hasNext() {
      while (ahead.isEmpty() && (open.isPresent() || !toRead.isEmpty())) {
        if (!watch.tried(this::readAhead)) {
          close();
        }
      }
      return ahead.isPresent();
    }

    private void readAhead() {
      if (open.isEmpty()) {
        SessionRun next = toRead.remove();
        calibrations = CalibrationStore.of(next.root());
        open = Optional.of(RecordingReader.stretches(next, PIECE_S, MARGIN_S));
      }
      Stretches run = open.get();
      if (run.hasNext()) {
        ahead = Optional.of(calibrated(run.next().recording(), calibrations));
      } else {
        run.notices().forEach(watch::warn);
        run.unread().forEach(watch::failed);
        close();
      }
    }

    private void close() {
      open.ifPresent(Stretches::close);
      open = Optional.empty();
    }

    @Override
    public Recording next() {
      if (!hasNext()) {
        throw new NoSuchElementException("the lesson is read to its end");
      }
      Recording recording = ahead.orElseThrow();
      ahead = Optional.empty();
      return recording;
    }
  }
}
