package steadyturn.ingest.quality;

import java.util.List;

/**
 * What the quiet stretches of a stream tell of the unit.
 *
 * @param totalS summed length of the stretches in which the unit was still, s; 0 when there is none
 * @param gyroNoiseRadPerS root of the summed variances of the three rates in the quietest stretch
 * @param accelNoiseMps2 the same of the three accelerations
 * @param gyroBiasRadPerS mean rate (x, y, z) of the quietest stretches; empty without a rest
 * @param accelNormMps2 median size of the specific force over the rests, NaN without a rest
 */
public record RestFacts(
    double totalS,
    double gyroNoiseRadPerS,
    double accelNoiseMps2,
    List<Double> gyroBiasRadPerS,
    double accelNormMps2) {

  /** No rest was found. */
  static final RestFacts NONE = new RestFacts(0, Double.NaN, Double.NaN, List.of(), Double.NaN);

  public RestFacts {
    gyroBiasRadPerS = List.copyOf(gyroBiasRadPerS);
  }

  public boolean found() {
    return totalS > 0;
  }

  /** Size of the bias, rad/s; NaN without a rest. */
  public double gyroBiasNormRadPerS() {
    if (!found()) {
      return Double.NaN;
    }
    return Math.sqrt(gyroBiasRadPerS.stream().mapToDouble(b -> b * b).sum());
  }
}
