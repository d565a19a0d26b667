package steadyturn.analysis.rows;

import java.io.IOException;
import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Curve;
import steadyturn.analysis.measure.Decimals;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.reading.LessonReading;
import steadyturn.analysis.reading.MadeBy;
import steadyturn.analysis.reading.ReadingWatch;
import steadyturn.analysis.swing.EventTime;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.recording.dataset.Session;
import steadyturn.ingest.recording.dataset.SessionRun;
import steadyturn.ingest.recording.disk.ProgramVersion;
import steadyturn.ingest.sample.BodyPoint;

/** Analyses a lesson and hands out its rows, with the numbers that {@code analyze} prints. */
public final class LessonRows {

  private final String archive;
  private final AnalysisSettings settings;
  private final String settingsText;
  private final RowSink sink;

  /**
   * Rows of lessons of one archive.
   *
   * @param archive what the archive is called in its rows
   */
  public LessonRows(String archive, AnalysisSettings settings, RowSink sink) {
    this.archive = archive;
    this.settings = settings;
    settingsText = MadeBy.inOneLine(settings);
    this.sink = sink;
  }

  /** All tables but the orientations, of the runs that were asked for. Returns the results. */
  public List<LessonResult> write(Session lesson, ReadingWatch watch) throws IOException {
    FailureNotes failures = new FailureNotes(watch);
    List<LessonResult> results = new ArrayList<>();
    failures.tried(() -> results.addAll(LessonReading.results(lesson, settings, failures)));
    write(lesson, results, failures);
    return results;
  }

  /** The same of results that are known already, in whose making nothing failed. */
  public void write(Session lesson, List<LessonResult> results, ReadingWatch watch)
      throws IOException {
    write(lesson, results, new FailureNotes(watch));
  }

  private void write(Session lesson, List<LessonResult> results, FailureNotes failures)
      throws IOException {
    Map<String, LessonResult> byRun =
        results.stream().collect(Collectors.toMap(LessonResult::recording, result -> result));
    for (SessionRun run : lesson.runs()) {
      Optional<LessonResult> result = Optional.ofNullable(byRun.get(run.id()));
      recording(lesson, run, result, failures.of(run.id(), result.isEmpty()));
      if (result.isPresent()) {
        values(lesson, run, result.get());
      }
    }
  }

  /** The row of what could not even be opened. */
  void unopened(String failure) throws IOException {
    Object[] cells = new Object[RowTable.RECORDINGS.columns().size()];
    Arrays.fill(cells, "");
    cells[0] = archive;
    System.arraycopy(
        new Object[] {failure, ProgramVersion.current(), settingsText},
        0,
        cells,
        cells.length - 3,
        3);
    sink.row(RowTable.RECORDINGS, cells);
  }

  private void recording(
      Session lesson, SessionRun run, Optional<LessonResult> result, String failure)
      throws IOException {
    sink.row(
        RowTable.RECORDINGS,
        archive,
        run.id(),
        lesson.player(),
        result.map(r -> r.player().handed().word()).orElse(""),
        lesson.lesson(),
        start(run),
        result.map(LessonResult::aim).orElse(""),
        result.<Object>map(r -> r.swings().size()).orElse(""),
        result.map(LessonRows::notices).orElse(""),
        result.map(LessonRows::calibrations).orElse(""),
        failure,
        ProgramVersion.current(),
        settingsText);
  }

  private static String calibrations(LessonResult result) {
    return result.units().stream()
        .flatMap(
            unit -> unit.calibratedOn().map(on -> unit.point().trackedPoint() + ":" + on).stream())
        .collect(Collectors.joining(","));
  }

  private static String notices(LessonResult result) {
    return result.notices().stream()
        .map(notice -> Stream.of(notice.about(), notice.reason().code().word()))
        .map(parts -> parts.filter(part -> !part.isEmpty()).collect(Collectors.joining(":")))
        .distinct()
        .collect(Collectors.joining(","));
  }

  private void values(Session lesson, SessionRun run, LessonResult result) throws IOException {
    String start = start(run);
    for (SwingResult swing : result.swings()) {
      for (MeasureValue value : swing.measures()) {
        sink.row(
            RowTable.RESULTS,
            archive,
            run.id(),
            lesson.player(),
            lesson.lesson(),
            start,
            swing.number(),
            swing.club(),
            swing.kind().word(),
            String.join(",", swing.flags()),
            value.measure().id(),
            value.at(),
            number(value.value()),
            number(value.low()),
            number(value.high()),
            value.measure().unit(),
            value.grade().word(),
            value.why().code().word(),
            args(value.why()),
            ProgramVersion.current(),
            settingsText);
      }
      for (EventTime event : swing.events()) {
        sink.row(
            RowTable.KEY_POSITIONS,
            archive,
            run.id(),
            swing.number(),
            event.event().word(),
            number(event.timeS(), Decimals.OF_TIME_S),
            number(event.sdS(), Decimals.OF_TIME_S),
            event.grade().word(),
            event.why().code().word(),
            args(event.why()));
      }
      curves(run.id(), swing);
    }
  }

  private void curves(String run, SwingResult swing) throws IOException {
    Map<BigDecimal, Object[]> rows = new TreeMap<>();
    for (Curve curve : swing.curves()) {
      int measure =
          RowTable.curves()
              .indexOf(Measure.ofId(curve.id()).orElseThrow(IllegalStateException::new));
      for (int i = 0; i < curve.timeS().size(); i++) {
        BigDecimal timeS = Decimals.round(curve.timeS().get(i), Decimals.OF_TIME_S);
        Object[] row = rows.computeIfAbsent(timeS, at -> curveRow(run, swing.number(), at));
        row[4 + 2 * measure] = number(curve.value().get(i));
        row[5 + 2 * measure] = number(curve.sd().get(i));
      }
    }
    for (Object[] row : rows.values()) {
      sink.row(RowTable.CURVES, row);
    }
  }

  private Object[] curveRow(String run, int swing, BigDecimal timeS) {
    Object[] row = new Object[RowTable.CURVES.columns().size()];
    Arrays.fill(row, "");
    System.arraycopy(new Object[] {archive, run, swing, timeS}, 0, row, 0, 4);
    return row;
  }

  private static String start(SessionRun run) {
    return run.startedAt().map(LocalDateTime::toString).orElse("");
  }

  private static Object number(double value) {
    return number(value, Decimals.OF_VALUE);
  }

  /** A number as {@code analyze} prints it; nothing where there is none, or no end. */
  static Object number(double value, int decimals) {
    return Double.isFinite(value) ? Decimals.round(value, decimals) : "";
  }

  /** What a reason speaks of: {@code leastDeg=15}; a second reason behind {@code also}. */
  public static String args(Reason reason) {
    return reason.args().entrySet().stream()
        .map(arg -> arg.getKey() + "=" + arg(arg.getValue()))
        .collect(Collectors.joining("; "));
  }

  private static String arg(Object value) {
    if (value instanceof Reason other) {
      return other.code().word() + (other.args().isEmpty() ? "" : " (" + args(other) + ")");
    }
    if (value instanceof BodyPoint point) {
      return point.trackedPoint();
    }
    return value instanceof Double number && Double.isFinite(number)
        ? Decimals.round(number, Decimals.OF_VALUE).toPlainString()
        : value.toString();
  }
}
