package steadyturn.cli.command.lesson;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.coach.teaching.TeachingReader;
import steadyturn.analysis.kept.KeptLesson;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.cli.lesson.FormatChoice;
import steadyturn.cli.lesson.FormatChoice.Format;
import steadyturn.cli.lesson.LessonAnswers;
import steadyturn.cli.lesson.LessonPaths;
import steadyturn.cli.lesson.Lessons;
import steadyturn.cli.lesson.PageChoice;
import steadyturn.cli.lesson.Pages;
import steadyturn.cli.lesson.Rehearsals;
import steadyturn.cli.lesson.TeachingChoice;
import steadyturn.cli.page.LessonRuns;
import steadyturn.cli.page.Page;
import steadyturn.cli.page.Sheet;
import steadyturn.cli.page.SheetJson;
import steadyturn.cli.page.reader.Audience;
import steadyturn.cli.page.reader.LengthUnits;
import steadyturn.cli.page.reader.Letter;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.words.Words;
import steadyturn.ingest.recording.RecordingReader;
import steadyturn.ingest.recording.dataset.Session;
import steadyturn.ingest.recording.dataset.SessionRun;
import steadyturn.ingest.sample.Mark;

/** Writes the page to send home. */
@Command(name = "report", sortOptions = false)
public final class ReportCommand implements Callable<Integer> {

  @Mixin private Console console;

  @Mixin private LessonPaths paths;

  @Option(names = "--for", paramLabel = "READER")
  private Audience audience = Audience.TEACHER;

  @Option(names = "--name", paramLabel = "NAME")
  private String name = "";

  @Option(names = "--teacher", paramLabel = "NAME")
  private String teacher = "";

  @Option(names = "--say", paramLabel = "SENTENCE")
  private String says = "";

  @Mixin private FormatChoice formatChoice;

  @Mixin private PageChoice page;

  @Mixin private ModelChoice model;

  @Mixin private TeachingChoice teachingChoice;

  @Override
  public Integer call() throws IOException {
    Format format = formatChoice.among(console, Format.HTML, Format.JSON);
    Teaching teaching = teachingChoice.read();
    Optional<ModelChoice.Chosen> against = model.choose(teaching, console);
    if (against.isEmpty()) {
      return Failures.FAILED;
    }
    Lessons lessons = paths.lessons(console);
    Pages pages = page.pages(console);
    LessonAnswers answers = new LessonAnswers(lessons, AnalysisSettings.defaults());
    lessons.each(
        lesson ->
            report(lesson, answers.of(lesson), lessons, teaching, against.get(), format, pages));
    return lessons.allWell() ? Failures.DONE : Failures.FAILED;
  }

  private void report(
      Session lesson,
      KeptLesson answer,
      Lessons lessons,
      Teaching teaching,
      ModelChoice.Chosen against,
      Format format,
      Pages pages)
      throws IOException {
    if (answer.results().isEmpty()) {
      return;
    }
    LessonRuns runs = runs(lesson, answer);
    runs.note(against.notice());
    Sheet sheet = Sheet.of(label(lesson), runs, teaching, page.club(), against.swings());
    if (!page.club().isEmpty() && sheet.swings().isEmpty()) {
      console.warn(Words.say("report.no-club", lesson.id(), page.club(), sheet.clubsLeftOut()));
      lessons.notWell();
      return;
    }
    String text =
        format == Format.HTML
            ? Page.html(
                sheet, audience, page.units(), Words.inUse(), new Letter(name, teacher, says))
            : SheetJson.json(sheet, audience);
    console.out().println(pages.write(name(lesson, audience + "." + format), text));
  }

  /** Writes the page of a lesson with everything as shipped; returns its file. */
  static Path page(
      Session lesson, List<LessonResult> results, Lessons lessons, Audience audience, Pages pages)
      throws IOException {
    Sheet sheet =
        Sheet.of(
            label(lesson),
            runs(lesson, results, lessons),
            TeachingReader.shipped(),
            "",
            Optional.empty());
    String text = Page.html(sheet, audience, LengthUnits.METRIC, Words.inUse(), Letter.NONE);
    return pages.write(name(lesson, audience + ".html"), text);
  }

  private static String name(Session lesson, String ending) {
    return lesson.id() + "_page-" + ending;
  }

  /** {@code 2026-05-04}, or an empty string where no run says when it began. */
  static String date(Session lesson) {
    return lesson.runs().stream()
        .map(SessionRun::startedAt)
        .flatMap(Optional::stream)
        .min(Comparator.naturalOrder())
        .map(start -> start.toLocalDate().toString())
        .orElse("");
  }

  static String label(Session lesson) {
    return lesson.lesson().isEmpty() ? lesson.id() : lesson.lesson();
  }

  /** The recordings of a lesson on one time axis, with marks and rehearsals. */
  static LessonRuns runs(Session lesson, List<LessonResult> results, Lessons lessons) {
    Map<String, List<Mark>> marks =
        lesson.runs().stream()
            .collect(Collectors.toMap(SessionRun::id, RecordingReader::readMarks, (a, b) -> a));
    return runs(
        lesson, new KeptLesson(results, marks, Rehearsals.of(lesson, lessons, marks), List.of()));
  }

  /** The same of a lesson that was read with all that. */
  static LessonRuns runs(Session lesson, KeptLesson answer) {
    LessonRuns runs = new LessonRuns(answer.results().get(0).player(), date(lesson));
    answer
        .results()
        .forEach(
            r ->
                runs.add(
                    r,
                    answer.marks().getOrDefault(r.recording(), List.of()),
                    answer.rehearsals().getOrDefault(r.recording(), List.of())));
    return runs;
  }
}
