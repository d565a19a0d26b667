package steadyturn.cli.page.reader;

import java.util.Locale;

/** For whom a page is: the teacher sees everything, the player one thing in plain words. */
public enum Audience {
  TEACHER,
  PLAYER;

  /** The word of the command line. */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}
