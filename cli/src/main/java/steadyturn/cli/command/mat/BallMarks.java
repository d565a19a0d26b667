package steadyturn.cli.command.mat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.cli.command.live.LiveSession;
import steadyturn.ingest.live.LiveMark;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.recording.dataset.EventsFile;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.sample.Mark;

/**
 * What the teacher says of a ball goes into the events of its recording at once, so that no end of
 * the program loses it: a note, and that the ball is left out. A ball that was struck before the
 * program was started anew lies in a recording that is finished; its file is changed.
 */
final class BallMarks implements BallBoard.Said {

  /** A mark lies on the ball before it; so long after the top it still belongs to it, s. */
  private static final double AFTER_S = 1;

  private final Path root;
  private final LessonNotes notes;
  private final Supplier<Optional<MatSession>> session;
  private final Map<String, List<LiveMark>> marked = new HashMap<>();

  /**
   * Of the lesson that the notes are of.
   *
   * @param session what is recorded now
   */
  BallMarks(Path root, LessonNotes notes, Supplier<Optional<MatSession>> session) {
    this.root = root;
    this.notes = notes;
    this.session = session;
  }

  @Override
  public void said(String id, SwingResult ball, JsonNode what) {
    String run = id.substring(0, id.lastIndexOf('_'));
    Optional<MatSession> its = session.get().filter(now -> now.run().equals(run));
    if (its.isPresent()) {
      mark(id, of(ball, what), its.get().live());
    } else {
      RunLabel lesson = RunLabel.lesson(notes.kept("player"), notes.kept("lesson"));
      write(root.resolve(lesson.folder()), run, atS(ball), of(ball, what));
    }
  }

  private static List<Mark> of(SwingResult ball, JsonNode what) {
    double atS = atS(ball);
    List<Mark> marks = new ArrayList<>();
    if (what.path("discarded").asBoolean()) {
      marks.add(new Mark(atS, 0, MarkWord.LEFT_OUT.word(), "", ""));
    }
    String note = what.path("note").asText();
    if (!note.isEmpty()) {
      marks.add(new Mark(atS, 0, MarkWord.NOTE.word(), "", note));
    }
    return marks;
  }

  private static double atS(SwingResult ball) {
    return ball.timeS(SwingEvent.TOP) + AFTER_S;
  }

  /** In the recording under way, in place of what was said before. */
  private void mark(String id, List<Mark> marks, LiveSession live) {
    marked.getOrDefault(id, List.of()).forEach(live.recorder()::unmark);
    marked.put(id, marks.stream().map(mark -> at(mark, live)).toList());
    marked.get(id).forEach(live.recorder()::mark);
  }

  private static LiveMark at(Mark mark, LiveSession live) {
    return new LiveMark(
        live.timeOfDay(mark.onsetS()), 0, mark.trialType(), mark.club(), mark.note());
  }

  /** In a recording that is finished, where it has an events file. */
  private static void write(Path folder, String run, double atS, List<Mark> marks) {
    try {
      Optional<Path> file = events(folder, run);
      if (file.isPresent()) {
        EventsFile.about(file.get(), atS, marks);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Optional<Path> events(Path folder, String run) throws IOException {
    int cut = run.lastIndexOf("_run-");
    String first = (cut < 0 ? run : run.substring(0, cut)) + "_tracksys-";
    String last = (cut < 0 ? "" : run.substring(cut)) + "_events.tsv";
    try (Stream<Path> files = Files.walk(folder)) {
      return files
          .filter(f -> f.getFileName().toString().startsWith(first))
          .filter(f -> f.getFileName().toString().endsWith(last))
          .findFirst();
    }
  }
}
