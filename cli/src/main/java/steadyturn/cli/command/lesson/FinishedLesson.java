package steadyturn.cli.command.lesson;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.kept.KeptLesson;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.cli.lesson.LessonAnswers;
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
 * @param answer what it shows; empty, as the session is, where nothing could be read
 */
public record FinishedLesson(Optional<Session> session, Optional<KeptLesson> answer) {

  /** Reads the lesson of a player in an archive. */
  public static FinishedLesson of(Path root, String player, String label, Console console) {
    Lessons lessons = Lessons.ofPlayer(root, player, console);
    List<Session> found = new ArrayList<>();
    List<KeptLesson> answers = new ArrayList<>();
    lessons.eachOf(
        player,
        session -> {
          if (session.lesson().equals(label)) {
            found.add(session);
            answers.add(new LessonAnswers(lessons, AnalysisSettings.defaults()).of(session));
          }
        });
    return new FinishedLesson(found.stream().findFirst(), answers.stream().findFirst());
  }

  /** One a recording; none where nothing could be read. */
  public List<LessonResult> results() {
    return answer.map(KeptLesson::results).orElse(List.of());
  }

  /** What is to be said of it; empty where nothing was recorded. */
  public Optional<Sheet> sheet(Teaching teaching) {
    return results().isEmpty()
        ? Optional.empty()
        : session.map(
            its ->
                Sheet.of(
                    ReportCommand.label(its),
                    ReportCommand.runs(its, answer.orElseThrow()),
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
