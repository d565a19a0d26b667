package steadyturn.analysis.swing.find;

/**
 * A blow between two samples of a unit: after the last that was calm, not later than the first that
 * it moved.
 *
 * @param afterS the blow came after this, s
 * @param byS and not later than this, s
 */
record Onset(double afterS, double byS, boolean isBehindSoft) {

  private static final double EVENLY = Math.sqrt(12);

  // hands and shaft pass a blow on as they are held, and it rises before it shows: our assumption
  private static final double LEAST_SD_S = 0.0015;

  Onset {
    if (!(afterS < byS)) {
      throw new IllegalArgumentException(
          "a blow must come after " + afterS + " s and by " + byS + " s");
    }
  }

  Onset(double afterS, double byS) {
    this(afterS, byS, false);
  }

  /** The same, seen as the hard edge behind a soft wave. */
  Onset behindSoft() {
    return new Onset(afterS, byS, true);
  }

  /** Any moment in between is as likely. */
  Instant instant() {
    return new Instant((afterS + byS) / 2, Math.hypot((byS - afterS) / EVENLY, LEAST_SD_S));
  }

  /**
   * What two units say of one blow: the mean of both, each weighted by its certainty. Where they
   * leave no moment in common, the later one was taken near a zero of its ring first: then it had
   * come when the earlier one was moved.
   */
  Instant and(Onset other) {
    if (afterS >= other.byS || other.afterS >= byS) {
      boolean isLate = afterS >= other.byS;
      boolean isBehind = isLate && isBehindSoft && !other.isBehindSoft;
      boolean isAhead = !isLate && (isBehindSoft || !other.isBehindSoft);
      return (isBehind || isAhead ? this : other).instant();
    }
    Instant a = instant();
    Instant b = other.instant();
    double wa = 1 / (a.sdS() * a.sdS());
    double wb = 1 / (b.sdS() * b.sdS());
    return new Instant((wa * a.timeS() + wb * b.timeS()) / (wa + wb), Math.sqrt(1 / (wa + wb)));
  }

  /** The one or the other. */
  Onset or(Onset other) {
    return new Onset(
        Math.min(afterS, other.afterS),
        Math.max(byS, other.byS),
        isBehindSoft && other.isBehindSoft);
  }

  /** The same, a step longer back. */
  Onset oneStepMore() {
    return new Onset(2 * afterS - byS, byS);
  }
}
