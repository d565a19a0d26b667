package steadyturn.analysis.swing.find;

/** A moment with its standard deviation, both in s. */
record Instant(double timeS, double sdS) {

  private static final double FAR_SDS = 2;

  /**
   * What two witnesses of one moment say together: the mean, each weighted by its certainty, no
   * more certain than they agree.
   */
  Instant with(Instant other) {
    double own = 1 / (sdS * sdS);
    double others = 1 / (other.sdS * other.sdS);
    double apart = Math.abs(timeS - other.timeS) / Math.hypot(sdS, other.sdS);
    return new Instant(
        (own * timeS + others * other.timeS) / (own + others),
        Math.max(1, apart) / Math.sqrt(own + others));
  }

  /** The same, doubted where another witness of the moment says surely something else. */
  Instant beside(Instant witness) {
    double awayS = Math.abs(timeS - witness.timeS);
    return awayS > FAR_SDS * witness.sdS ? and(awayS) : this;
  }

  /** The same where it was shown late by so much. */
  Instant earlier(double lateS, double lateSdS) {
    return new Instant(timeS - lateS, Math.hypot(sdS, lateSdS));
  }

  /** The same, but not before a moment. */
  Instant after(double leastS) {
    return new Instant(Math.max(leastS, timeS), sdS);
  }

  /** The same with a doubt more. */
  Instant and(double moreSdS) {
    return new Instant(timeS, Math.hypot(sdS, moreSdS));
  }
}
