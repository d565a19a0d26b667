package steadyturn.cli.lesson;

import java.util.ArrayList;
import java.util.List;
import steadyturn.analysis.reading.ReadingWatch;

/** Notes what is said while a lesson is read, and hands it on; or not, where it was said before. */
final class ReadingNotes implements ReadingWatch {

  private final ReadingWatch watch;
  private final boolean tells;
  private final List<String> said = new ArrayList<>();
  private boolean allWell = true;

  ReadingNotes(ReadingWatch watch, boolean tells) {
    this.watch = watch;
    this.tells = tells;
  }

  /** What a reader should know, one sentence each, up to now. */
  List<String> said() {
    return said;
  }

  /** Whether nothing has failed up to now. */
  boolean allWell() {
    return allWell;
  }

  @Override
  public boolean tried(Attempt attempt) {
    boolean went = watch.tried(attempt);
    allWell &= went;
    return went;
  }

  @Override
  public void failed(Exception failure) {
    allWell = false;
    watch.failed(failure);
  }

  @Override
  public void warn(String sentence) {
    said.add(sentence);
    if (tells) {
      watch.warn(sentence);
    }
  }
}
