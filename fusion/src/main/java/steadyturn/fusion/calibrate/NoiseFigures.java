package steadyturn.fusion.calibrate;

import java.util.ArrayList;
import java.util.List;
import steadyturn.ingest.sample.Averages;

/**
 * What the overlapping Allan deviation of one channel at rest says of its noise. The readings are
 * those of IEEE 952 (from memory): white noise where the curve falls as tau^-1/2, read at 1 s; bias
 * instability 0.664 times the flat floor.
 *
 * @param curve the deviation at averaging times an octave apart
 * @param whiteNoisePerRootS white noise: deviation of the mean over 1 s; the channel's unit times
 *     sqrt s
 * @param floor lowest deviation, the channel's unit
 * @param floorTauS averaging time of the floor, s
 */
public record NoiseFigures(
    List<AllanPoint> curve, double whiteNoisePerRootS, double floor, double floorTauS) {

  /** Flat part of flicker noise, sqrt(2 ln 2 / pi) = 0.664. */
  private static final double FLICKER = Math.sqrt(2 * Math.log(2) / Math.PI);

  /** A deviation from fewer independent stretches than this is too uncertain to be a floor. */
  private static final int FEWEST_STRETCHES = 9;

  /** One point of the curve. */
  public record AllanPoint(double tauS, double deviation) {}

  public NoiseFigures {
    curve = List.copyOf(curve);
  }

  /**
   * Reads the figures off a channel at rest.
   *
   * @param values the channel at even steps, no losses
   * @param stepS its step, s
   */
  public static NoiseFigures of(double[] values, double stepS) {
    if (values.length < 4 * FEWEST_STRETCHES || !(stepS > 0)) {
      throw CalibrationException.of(
          "noise figures need at least %d samples at even steps; there are %d: record longer",
          4 * FEWEST_STRETCHES, values.length);
    }
    List<AllanPoint> curve = new ArrayList<>();
    for (int m = 1; values.length / m >= FEWEST_STRETCHES; m *= 2) {
      curve.add(new AllanPoint(m * stepS, AllanDeviation.overlapping(values, m)));
    }
    AllanPoint lowest = curve.get(0);
    for (AllanPoint point : curve) {
      lowest = point.deviation() < lowest.deviation() ? point : lowest;
    }
    return new NoiseFigures(curve, white(curve, lowest), lowest.deviation(), lowest.tauS());
  }

  /**
   * Median of deviation times sqrt tau over the falling part, that is up to half the floor's tau.
   */
  private static double white(List<AllanPoint> curve, AllanPoint lowest) {
    double[] readings =
        curve.stream()
            .filter(p -> p.tauS() <= Math.max(0.5 * lowest.tauS(), curve.get(0).tauS()))
            .mapToDouble(p -> p.deviation() * Math.sqrt(p.tauS()))
            .toArray();
    return Averages.median(readings);
  }

  /** Bias instability, the channel's unit: an upper limit where the floor was not yet reached. */
  public double biasInstability() {
    return floor / FLICKER;
  }
}
