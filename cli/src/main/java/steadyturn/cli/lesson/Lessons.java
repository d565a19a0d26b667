package steadyturn.cli.lesson;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import steadyturn.analysis.reading.ReadingWatch;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.terminal.Progress;
import steadyturn.ingest.recording.dataset.Archive;
import steadyturn.ingest.recording.dataset.Session;

/**
 * The lessons under the paths that were asked for. What is broken is reported at once and left out,
 * the rest goes on; {@link #allWell} tells at the end.
 */
public final class Lessons implements ReadingWatch {

  /** What is done with one lesson. */
  public interface Task {
    void run(Session lesson) throws Exception;
  }

  private final Console console;
  private final List<Session> lessons = new ArrayList<>();
  private boolean allWell = true;

  private Lessons(Console console) {
    this.console = console;
  }

  /** Lists the lessons under all paths without reading samples. */
  public static Lessons under(List<Path> paths, Console console) {
    Lessons found = new Lessons(console);
    for (Path path : paths) {
      found.tried(
          () -> {
            Archive archive = Archive.open(path);
            archive.notices().forEach(console::warn);
            found.lessons.addAll(archive.sessions());
          });
    }
    return found;
  }

  /** Lists the lessons of one player; those of others are not looked at where folders tell. */
  public static Lessons ofPlayer(Path archive, String player, Console console) {
    Path own = archive.resolve("sub-" + player);
    boolean isApart = Files.exists(archive.resolve("participants.tsv")) && Files.isDirectory(own);
    return under(List.of(isApart ? own : archive), console);
  }

  /** Does the task for each lesson in turn, with a progress bar. */
  public void each(Task task) {
    each(lessons, task);
  }

  /** Does the task for each lesson of one player in turn. */
  public void eachOf(String player, Task task) {
    each(lessons.stream().filter(lesson -> lesson.player().equals(player)).toList(), task);
  }

  private void each(List<Session> chosen, Task task) {
    Progress progress = console.progress(chosen.size());
    for (Session lesson : chosen) {
      progress.at(lesson.id(), System.nanoTime());
      tried(() -> task.run(lesson));
      progress.step();
    }
    progress.clear();
  }

  @Override
  public boolean tried(Attempt attempt) {
    try {
      attempt.run();
      return true;
    } catch (OutOfMemoryError e) {
      console.warn(Failures.OUT_OF_MEMORY);
    } catch (Exception e) { // whatever it is, the other recordings go on
      console.report(e);
    }
    allWell = false;
    return false;
  }

  @Override
  public void failed(Exception failure) {
    console.report(failure);
    allWell = false;
  }

  @Override
  public void warn(String sentence) {
    console.warn(sentence);
  }

  /** Whether everything asked for was done. */
  public boolean allWell() {
    return allWell;
  }

  public void notWell() {
    allWell = false;
  }
}
