package steadyturn.cli.command.lesson;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.reading.LessonReading;
import steadyturn.cli.lesson.FormatChoice;
import steadyturn.cli.lesson.FormatChoice.Format;
import steadyturn.cli.lesson.LessonPaths;
import steadyturn.cli.lesson.Lessons;
import steadyturn.cli.lesson.TeachingChoice;
import steadyturn.cli.output.json.JsonReport;
import steadyturn.cli.output.table.TableReport;
import steadyturn.cli.output.table.WorkOn;
import steadyturn.cli.output.tsv.Derivatives;
import steadyturn.cli.output.tsv.TsvReport;
import steadyturn.cli.page.Sheet;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.words.Words;
import steadyturn.ingest.recording.dataset.Session;

/** Measures every swing of the recordings under the given paths. */
@Command(name = "analyze", sortOptions = false)
public final class AnalyzeCommand implements Callable<Integer> {

  @Mixin private Console console;

  @Mixin private LessonPaths paths;

  @Mixin private FormatChoice formatChoice;

  @Option(names = "--each")
  private boolean each;

  @Option(names = "--out", paramLabel = "DIR")
  private Optional<Path> out = Optional.empty();

  @Mixin private TeachingChoice teachingChoice;

  private final Map<String, TableReport.Told> told = new LinkedHashMap<>();

  @Override
  public Integer call() throws IOException {
    Format format = formatChoice.among(console, Format.TABLE, Format.JSON, Format.TSV);
    Optional<Teaching> teaching =
        format == Format.TABLE || teachingChoice.isNamed()
            ? Optional.of(teachingChoice.read())
            : Optional.empty();
    Lessons lessons = paths.lessons(console);
    List<LessonResult> results = new ArrayList<>();
    lessons.each(
        lesson -> {
          List<LessonResult> its = analyzeWithoutCurves(lesson, lessons);
          results.addAll(its);
          if (format == Format.TABLE && !its.isEmpty()) {
            told.put(lesson.id(), told(lesson, its, lessons, teaching.orElseThrow()));
          }
        });
    if (!results.isEmpty()) {
      print(results, format);
    }
    if (out.isPresent()) {
      Path folder = Derivatives.write(results, out.get());
      console.err().println(Words.say("analyze.written", folder));
    }
    return lessons.allWell() ? Failures.DONE : Failures.FAILED;
  }

  /** The results of the runs that were asked for; wear steps may lie in runs before them. */
  static List<LessonResult> analyze(Session lesson, Lessons lessons) {
    return analyze(lesson, lessons, AnalysisSettings.defaults());
  }

  /** The same without the course of each measure over time, which takes a third of the work. */
  static List<LessonResult> analyzeWithoutCurves(Session lesson, Lessons lessons) {
    return analyze(lesson, lessons, AnalysisSettings.defaults().withoutCurves());
  }

  static List<LessonResult> analyze(Session lesson, Lessons lessons, AnalysisSettings settings) {
    List<LessonResult> results = LessonReading.results(lesson, settings, lessons);
    if (!results.stream().allMatch(LessonResult::isSound)) {
      lessons.notWell();
    }
    return results;
  }

  /** What to work on, and how the drills went. */
  static TableReport.Told told(
      Session lesson, List<LessonResult> results, Lessons lessons, Teaching teaching) {
    Sheet sheet =
        Sheet.of(
            lesson.id(),
            ReportCommand.runs(lesson, results, lessons),
            teaching,
            "",
            Optional.empty());
    return new TableReport.Told(
        new WorkOn(sheet.club(), sheet.advice(), sheet.drillsToDo().stream().findFirst()),
        sheet.drills());
  }

  private void print(List<LessonResult> results, Format format) throws IOException {
    switch (format) {
      case TABLE -> TableReport.write(results, told, each, console.out());
      case JSON -> JsonReport.write(results, AnalysisSettings.defaults(), console.out());
      default -> TsvReport.write(results, console.out());
    }
  }
}
