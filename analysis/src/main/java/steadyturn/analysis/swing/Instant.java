package steadyturn.analysis.swing;

/** A moment with its standard deviation, both in s. */
record Instant(double timeS, double sdS) {

  /** The mean of two independent views of one moment, each weighted by its certainty. */
  static Instant ofBoth(Instant a, Instant b) {
    double wa = 1 / (a.sdS * a.sdS);
    double wb = 1 / (b.sdS * b.sdS);
    return new Instant((wa * a.timeS + wb * b.timeS) / (wa + wb), Math.sqrt(1 / (wa + wb)));
  }
}
