package steadyturn.analysis.lab.family;

/**
 * What a struck ball does to a player's units.
 *
 * @param kind its shape
 * @param handG peak at the hand with a middle iron, g
 * @param forearm what of it comes to the forearm
 * @param trunk what of it comes to pelvis and chest
 * @param trunkDelayS how much later
 * @param hz of the ring at the hand
 */
public record Blow(
    Kind kind, double handG, double forearm, double trunk, double trunkDelayS, double hz) {

  /** Shapes of blows. */
  public enum Kind {
    /** A ring from the first moment on. */
    HARD,
    /** Hands are held back softly for 15-20 ms, to a fifth of the blow, before it comes. */
    SOFT_FIRST,
    /** The ring swells over some milliseconds, as through a soft strap. */
    SLOW,
    /** A second blow 8-30 ms after the first, smaller or larger. */
    DOUBLE,
    /** Turf 4-15 ms before the ball; units ring long. */
    TURF_FIRST,
    /** A mild blow. */
    LIGHT
  }

  static Blow draw(Dice dice, Kind kind) {
    double g = kind == Kind.LIGHT ? dice.times(12, 26) : dice.times(32, 100);
    return new Blow(
        kind,
        g,
        dice.even(0.2, 0.6),
        dice.times(0.007, 0.03),
        dice.even(0.0004, 0.005),
        dice.times(70, 200));
  }

  /** How hard a club hits beside a middle iron: our choice. */
  public static double ofClub(String club) {
    if (club.contains("driver") || club.contains("wood")) {
      return 1.2;
    }
    return club.contains("wedge") ? 0.75 : 1;
  }
}
