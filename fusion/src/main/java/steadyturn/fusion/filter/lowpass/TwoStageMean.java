package steadyturn.fusion.filter.lowpass;

/**
 * A low-pass of several numbers: two first-order stages in a row, each with half the time constant.
 * The first seconds are a plain mean, so the answer is right from the first sample on.
 */
final class TwoStageMean {

  private final double halfTimeS;
  private final double[] first;
  private final double[] second;
  private double ageS;
  private double gain;
  private double secondGain;

  TwoStageMean(double timeS, int numbers) {
    halfTimeS = 0.5 * timeS;
    first = new double[numbers];
    second = new double[numbers];
  }

  /** Begins a step; {@link #add} each number after it. */
  void step(double dtS) {
    ageS += dtS;
    gain = dtS / (dtS + Math.min(halfTimeS, ageS - dtS));
    secondGain = dtS / (dtS + Math.min(halfTimeS, 0.5 * (ageS - dtS)));
  }

  void add(int k, double value) {
    first[k] += gain * (value - first[k]);
    second[k] += secondGain * (first[k] - second[k]);
  }

  double get(int k) {
    return second[k];
  }

  /** What the second stage still lags behind the first. */
  double lag(int k) {
    return first[k] - second[k];
  }

  /** Keeps this part of what is known: 1 all, 0 nothing. */
  void trust(double part) {
    ageS = Math.min(ageS, 2 * halfTimeS) * part;
  }

  /** Whether the first seconds (after a start or a loss of trust) are over. */
  boolean settled() {
    return ageS > 2 * halfTimeS;
  }
}
