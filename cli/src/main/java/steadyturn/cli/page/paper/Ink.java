package steadyturn.cli.page.paper;

/**
 * Colours of the pictures, from the set of Okabe and Ito that colour-blind people can tell apart
 * (Color Universal Design, 2008), in an order of our own. No meaning hangs on colour alone: lines
 * also differ in dash, points in shape, and everything is labelled.
 */
public final class Ink {

  public static final String BACK = "#0072B2";
  public static final String DOWN = "#D55E00";
  public static final String GOAL = "#009E73";
  public static final String POINT = "#CC79A7";
  public static final String DARK = "#222222";
  public static final String QUIET = "#6b6b6b";
  public static final String FAINT = "#d9d5cc";
  public static final String PAPER = "#fdfbf6";
  public static final String DASH_BACK = "9 5";

  private Ink() {}
}
