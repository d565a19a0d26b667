package steadyturn.fusion.attitude;

import steadyturn.ingest.sample.TimeAxis;

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
    int after = TimeAxis.indexAt(timeS, instantS);
    if (after > 0 && after < n) {
      double part = (instantS - timeS[after - 1]) / (timeS[after] - timeS[after - 1]);
      return sdRad[after - 1] + part * (sdRad[after] - sdRad[after - 1]);
    }
    return after == 0 ? sdRad[0] : sdRad[n - 1];
  }
}
