package steadyturn.cli.page.reader;

/**
 * What makes a page a letter; each may be empty.
 *
 * @param name the player's name as they write it
 * @param teacher who sends it
 * @param says a sentence of the teacher's own
 */
public record Letter(String name, String teacher, String says) {

  /** A page that nobody signed. */
  public static final Letter NONE = new Letter("", "", "");
}
