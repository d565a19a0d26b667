package steadyturn.cli.command.lesson;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import steadyturn.analysis.coach.LessonStep;
import steadyturn.analysis.coach.PlayerProgress;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.kept.KeptLesson;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.reading.MadeBy;
import steadyturn.cli.lesson.FormatChoice;
import steadyturn.cli.lesson.FormatChoice.Format;
import steadyturn.cli.lesson.LessonAnswers;
import steadyturn.cli.lesson.Lessons;
import steadyturn.cli.lesson.PageChoice;
import steadyturn.cli.lesson.TeachingChoice;
import steadyturn.cli.output.json.ProgressJson;
import steadyturn.cli.output.table.ProgressTable;
import steadyturn.cli.page.LessonRuns;
import steadyturn.cli.page.ProgressPage;
import steadyturn.cli.page.Sheet;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.words.Words;
import steadyturn.ingest.recording.dataset.Session;
import steadyturn.ingest.sample.Player;

/** Says what changed over the lessons of a player. */
@Command(name = "progress", sortOptions = false)
public final class ProgressCommand implements Callable<Integer> {

  @Mixin private Console console;

  @Parameters(index = "0", paramLabel = "PLAYER")
  private String player = "";

  @Parameters(index = "1", arity = "0..1", paramLabel = "ARCHIVE")
  private Path archive = Path.of("");

  @Mixin private FormatChoice formatChoice;

  @Mixin private PageChoice page;

  @Mixin private TeachingChoice teachingChoice;

  /** A lesson that was read, with its day. */
  private record Read(Session lesson, String date, LessonRuns runs) {}

  private static final AnalysisSettings WITHOUT_CURVES =
      AnalysisSettings.defaults().withoutCurves();

  @Override
  public Integer call() throws IOException {
    Format format = formatChoice.among(console, Format.TABLE, Format.JSON, Format.HTML);
    Teaching teaching = teachingChoice.read();
    String label = player.replaceFirst("^sub-", "");
    Lessons lessons = Lessons.ofPlayer(archive.toAbsolutePath(), label, console);
    List<Read> read = new ArrayList<>();
    LessonAnswers answers = new LessonAnswers(lessons, WITHOUT_CURVES);
    lessons.eachOf(label, lesson -> read(lesson, answers).ifPresent(read::add));
    if (read.stream().noneMatch(r -> r.date().isEmpty())) {
      read.sort(Comparator.comparing(Read::date)); // stable: lessons of one day keep their order
    }
    String chosen = page.club().isEmpty() ? mostHit(read) : page.club();
    PlayerProgress progress =
        PlayerProgress.of(read.parallelStream().map(r -> step(r, teaching, chosen)).toList());
    if (progress.steps().isEmpty()) {
      console.warn(
          chosen.isEmpty()
              ? Words.say("progress.none", label, archive.toAbsolutePath())
              : Words.say("progress.none.club", label, archive.toAbsolutePath(), chosen));
      return Failures.FAILED;
    }
    Player who = read.get(read.size() - 1).runs().player();
    MadeBy madeBy = MadeBy.of(WITHOUT_CURVES, read.stream().flatMap(r -> r.runs().units()));
    write(who, chosen, progress, teaching.forPlayer(label, chosen), madeBy, format);
    return lessons.allWell() ? Failures.DONE : Failures.FAILED;
  }

  private static Optional<Read> read(Session lesson, LessonAnswers answers) {
    KeptLesson answer = answers.of(lesson);
    return answer.results().isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Read(lesson, ReportCommand.date(lesson), ReportCommand.runs(lesson, answer)));
  }

  private static String mostHit(List<Read> read) {
    Map<String, Integer> clubs = new LinkedHashMap<>();
    read.forEach(r -> r.runs().clubsHit().forEach(name -> clubs.merge(name, 1, Integer::sum)));
    return clubs.entrySet().stream()
        .max(Map.Entry.comparingByValue())
        .map(Map.Entry::getKey)
        .orElse("");
  }

  private static LessonStep step(Read read, Teaching teaching, String club) {
    String label = ReportCommand.label(read.lesson());
    Sheet sheet = Sheet.of(label, read.runs(), teaching, club, Optional.empty());
    return new LessonStep(label, read.date(), sheet.swings(), sheet.advice());
  }

  private void write(
      Player who,
      String chosen,
      PlayerProgress progress,
      Teaching teaching,
      MadeBy madeBy,
      Format format)
      throws IOException {
    switch (format) {
      case TABLE ->
          ProgressTable.write(
              progress,
              ProgressPage.told(progress, teaching, page.units()),
              ProgressPage.drills(progress, teaching, page.units()),
              console.out());
      case JSON ->
          ProgressJson.write(
              player.replaceFirst("^sub-", ""), chosen, progress, teaching, madeBy, console.out());
      default -> {
        String html =
            ProgressPage.html(who, chosen, progress, teaching, page.units(), Words.inUse(), madeBy);
        String name = "sub-" + player.replaceFirst("^sub-", "") + "_progress.html";
        console.out().println(page.pages(console).write(name, html));
      }
    }
  }
}
