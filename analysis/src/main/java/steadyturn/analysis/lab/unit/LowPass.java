package steadyturn.analysis.lab.unit;

/**
 * A path as it comes through a chip's own filter: a Butterworth of second order by the bilinear
 * transform (any textbook of digital filters), run between the samples too. To be asked for one
 * sample after another; the filter is late, as a chip's is.
 */
final class LowPass implements UnitPath {

  private static final double LEAST_HZ = 1000;

  private final UnitPath path;
  private final int perSample;
  private final double stepS;
  private final double gain;
  private final double[] back = new double[2];
  private final double[][][] memory = new double[2][3][];
  private final double[] force = new double[3];
  private final double[] rate = new double[3];

  LowPass(UnitPath path, double cutHz, double periodS) {
    this.path = path;
    this.perSample = (int) Math.max(1, Math.ceil(LEAST_HZ * periodS - 1e-6));
    this.stepS = periodS / perSample;
    double k = Math.tan(Math.PI * Math.min(cutHz * stepS, 0.45));
    double norm = 1 / (1 + Math.sqrt(2) * k + k * k);
    this.gain = k * k * norm;
    this.back[0] = 2 * (k * k - 1) * norm;
    this.back[1] = (1 - Math.sqrt(2) * k + k * k) * norm;
  }

  @Override
  public void feel(double timeS, double[] forceOut, double[] rateOut) {
    for (int i = perSample - 1; i >= 0; i--) {
      path.feel(timeS - i * stepS, force, rate);
      for (int axis = 0; axis < 3; axis++) {
        forceOut[axis] = next(0, axis, force[axis]);
        rateOut[axis] = next(1, axis, rate[axis]);
      }
    }
  }

  /** Direct form; memory: two inputs, two outputs, all at the first value to begin with. */
  private double next(int sensor, int axis, double in) {
    double[] m = memory[sensor][axis];
    if (m == null) {
      m = new double[] {in, in, in, in};
      memory[sensor][axis] = m;
    }
    double out = gain * (in + 2 * m[0] + m[1]) - back[0] * m[2] - back[1] * m[3];
    m[1] = m[0];
    m[0] = in;
    m[3] = m[2];
    m[2] = out;
    return out;
  }
}
