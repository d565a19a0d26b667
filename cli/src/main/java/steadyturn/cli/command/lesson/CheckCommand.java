package steadyturn.cli.command.lesson;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.lesson.LessonAnalyzer;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.lesson.Notice;
import steadyturn.cli.lesson.FormatChoice;
import steadyturn.cli.lesson.FormatChoice.Format;
import steadyturn.cli.lesson.LessonPaths;
import steadyturn.cli.lesson.Lessons;
import steadyturn.cli.output.json.CheckJson;
import steadyturn.cli.output.table.QualityReport;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.ingest.clock.CommonClock;
import steadyturn.ingest.quality.Finding;
import steadyturn.ingest.quality.QualityReason;
import steadyturn.ingest.quality.RecordingQuality;
import steadyturn.ingest.quality.RecordingReport;
import steadyturn.ingest.quality.Verdict;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.recording.RecordingReader;
import steadyturn.ingest.recording.Stretch;
import steadyturn.ingest.recording.Stretches;
import steadyturn.ingest.recording.dataset.Session;
import steadyturn.ingest.recording.dataset.SessionRun;
import steadyturn.ingest.recording.dataset.UnitFile;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;

/** Says for every unit of a recording whether it is good enough, and what to do if not. */
@Command(name = "check")
public final class CheckCommand implements Callable<Integer> {

  /** A table of this size is 6 million samples, 350 MB in memory. */
  private static final long LARGEST_WHOLE_BYTES = 400_000_000;

  private static final double PIECE_S = 3600;

  @Mixin private Console console;

  @Mixin private LessonPaths paths;

  @Mixin private FormatChoice formatChoice;

  private final CheckJson json = new CheckJson();
  private boolean forScripts;

  @Override
  public Integer call() throws IOException {
    forScripts = formatChoice.among(console, Format.TABLE, Format.JSON) == Format.JSON;
    Lessons lessons = paths.lessons(console);
    lessons.each(lesson -> check(lesson, lessons));
    if (forScripts) {
      json.write(console.out());
    }
    return lessons.allWell() ? Failures.DONE : Failures.FAILED;
  }

  private void check(Session lesson, Lessons lessons) {
    for (SessionRun run : lesson.runs()) {
      lessons.tried(
          () -> {
            if (bytesOf(run) > LARGEST_WHOLE_BYTES) {
              checkInPieces(run, lessons);
            } else {
              judge(unitsOf(run, lessons), run.id(), lessons);
            }
          });
    }
  }

  private static long bytesOf(SessionRun run) throws IOException {
    long bytes = 0;
    for (UnitFile unit : run.units()) {
      bytes += Files.size(unit.table());
    }
    return bytes;
  }

  /** A day-long recording gets a report an hour. */
  private void checkInPieces(SessionRun run, Lessons lessons) throws IOException {
    try (Stretches pieces = RecordingReader.stretches(run, PIECE_S, 0)) {
      while (pieces.hasNext()) {
        Stretch piece = pieces.next();
        String name =
            String.format(Locale.ROOT, "%s, %.0f to %.0f s", run.id(), piece.fromS(), piece.toS());
        judge(piece.recording(), name, lessons);
      }
      pieces.unread().forEach(lessons::failed);
    }
  }

  private void judge(Recording recording, String name, Lessons lessons) throws IOException {
    RecordingReport alone =
        RecordingQuality.judge(recording).withClocks(CommonClock.align(recording).reasons());
    List<LessonResult> results =
        new LessonAnalyzer(AnalysisSettings.defaults().withoutCurves()).analyze(List.of(recording));
    boolean showsSwings = results.stream().anyMatch(result -> !result.swings().isEmpty());
    RecordingReport report = showsSwings ? alone.without(QualityReason.OF_PLACES) : alone;
    List<Notice> impossible = impossible(results, report);
    RecordingReport named = new RecordingReport(name, report.units(), report.scale());
    if (forScripts) {
      json.add(named, impossible);
    } else {
      QualityReport.write(named, impossible, showsSwings, console.out());
    }
    if (report.verdict() == Verdict.NOT_USABLE || !impossible.isEmpty()) {
      lessons.notWell();
    }
  }

  /** What the analysis refuses besides the units that are not usable. */
  private static List<Notice> impossible(List<LessonResult> results, RecordingReport report) {
    Set<Reason> told =
        report.units().stream()
            .flatMap(unit -> unit.findings().stream())
            .map(Finding::what)
            .collect(Collectors.toSet());
    return results.stream()
        .flatMap(result -> result.notices().stream())
        .filter(notice -> notice.refuses() && !told.contains(notice.reason()))
        .toList();
  }

  /** The side the player swings from need not be known. */
  private static Recording unitsOf(SessionRun run, Lessons lessons) {
    return new Recording(
        run.id(),
        RecordingReader.player(run)
            .orElseGet(() -> Player.unmeasured(run.player(), Handedness.RIGHT)),
        RecordingReader.readUnits(run, lessons::failed),
        RecordingReader.readMarks(run));
  }
}
