package steadyturn.cli.command.lesson;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.cli.lesson.Lessons;
import steadyturn.cli.page.Page;
import steadyturn.cli.page.Sheet;
import steadyturn.cli.page.reader.Audience;
import steadyturn.cli.page.reader.LengthUnits;
import steadyturn.cli.page.reader.Letter;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.words.Words;
import steadyturn.ingest.recording.dataset.Session;

/**
 * A lesson that was recorded, read back and analysed as {@code analyze} and {@code report} do.
 *
 * @param results one a recording; none where nothing could be read
 */
public record FinishedLesson(
    Optional<Session> session, List<LessonResult> results, Lessons lessons) {

  /** Reads the lesson of a player in an archive. */
  public static FinishedLesson of(Path root, String player, String label, Console console) {
    Lessons lessons = Lessons.under(List.of(root), console);
    List<Session> found = new ArrayList<>();
    List<LessonResult> results = new ArrayList<>();
    lessons.eachOf(
        player,
        session -> {
          if (session.lesson().equals(label)) {
            found.add(session);
            results.addAll(AnalyzeCommand.analyze(session, lessons));
          }
        });
    return new FinishedLesson(found.stream().findFirst(), results, lessons);
  }

  /** What is to be said of it; empty where nothing was recorded. */
  public Optional<Sheet> sheet(Teaching teaching) {
    return results.isEmpty()
        ? Optional.empty()
        : session.map(
            its ->
                Sheet.of(
                    ReportCommand.label(its),
                    ReportCommand.runs(its, results, lessons),
                    teaching,
                    "",
                    Optional.empty()));
  }

  /** The page to send, as {@code report} writes it. */
  public Optional<String> page(Teaching teaching, Audience audience, Letter letter) {
    return sheet(teaching)
        .map(sheet -> Page.html(sheet, audience, LengthUnits.METRIC, Words.inUse(), letter));
  }
}
