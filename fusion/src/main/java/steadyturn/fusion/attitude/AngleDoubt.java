package steadyturn.fusion.attitude;

/**
 * How unsure an angle becomes while a rate is guessed.
 *
 * @param timeS instants, growing, s
 * @param sdRad standard deviation of the angle since before the first, rad
 */
public record AngleDoubt(double[] timeS, double[] sdRad) {

  /** Standard deviation at any instant: 0 before, as at the end after, rad. */
  public double atRad(double instantS) {
    int n = timeS.length;
    if (n == 0 || instantS < timeS[0]) {
      return 0;
    }
    for (int i = 1; i < n; i++) {
      if (instantS < timeS[i]) {
        double part = (instantS - timeS[i - 1]) / (timeS[i] - timeS[i - 1]);
        return sdRad[i - 1] + part * (sdRad[i] - sdRad[i - 1]);
      }
    }
    return sdRad[n - 1];
  }
}
