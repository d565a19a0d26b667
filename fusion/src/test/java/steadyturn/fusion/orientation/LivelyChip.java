package steadyturn.fusion.orientation;

import java.util.Random;
import steadyturn.fusion.rotation.Vector3;

/**
 * A three-axis sensor with errors: noise, quantisation to 16 bit, bias that walks, scale and
 * cross-talk, and (gyroscope) sensitivity to force. Sizes are our assumptions, of the order that
 * data sheets of small units state.
 */
final class LivelyChip {

  private final Random random;
  private final double[] matrix = new double[9];
  private final double[] byForce = new double[9];
  private final double[] bias = new double[3];
  private final double densityPerRootHz;
  private final double walkPerRootS;

  private LivelyChip(
      Random random, double densityPerRootHz, double bias, double walk, double scale, double g) {
    this.random = random;
    this.densityPerRootHz = densityPerRootHz;
    walkPerRootS = walk;
    for (int k = 0; k < 9; k++) {
      matrix[k] = (k % 4 == 0 ? 1 : 0) + scale * random.nextGaussian();
      byForce[k] = g * random.nextGaussian();
    }
    for (int axis = 0; axis < 3; axis++) {
      this.bias[axis] = bias * random.nextGaussian();
    }
  }

  /** 0.007 deg/s/rtHz; 1 deg/s; 0.002 deg/s/rt s; 0.4 %; 0.05 deg/s/g, times the factors. */
  static LivelyChip gyro(Random random, LivelyTrial.Kind kind) {
    double e = kind.errors();
    return new LivelyChip(
        random,
        Math.toRadians(0.007) * kind.noise(),
        Math.toRadians(1) * Math.min(e, 4),
        Math.toRadians(0.002) * e,
        0.004 * e,
        Math.toRadians(0.05) / 9.81 * e);
  }

  /** 150 micro-g/rtHz; 8 mg; 0.3 %, times the factors. */
  static LivelyChip accel(Random random, LivelyTrial.Kind kind) {
    double e = kind.errors();
    return new LivelyChip(random, 150e-6 * 9.81 * kind.noise(), 0.008 * 9.81 * e, 0, 0.003 * e, 0);
  }

  Vector3 shows(Vector3 v, Vector3 force, double dt, double fullScale) {
    double step = fullScale / 32768;
    double[] out = new double[3];
    for (int i = 0; i < 3; i++) {
      bias[i] += walkPerRootS * Math.sqrt(dt) * random.nextGaussian();
      double x = bias[i] + densityPerRootHz * Math.sqrt(0.5 / dt) * random.nextGaussian();
      for (int j = 0; j < 3; j++) {
        x += matrix[3 * i + j] * v.get(j) + byForce[3 * i + j] * force.get(j);
      }
      x = Math.max(-fullScale, Math.min(fullScale, x));
      out[i] = step * Math.rint(x / step);
    }
    return new Vector3(out[0], out[1], out[2]);
  }
}
