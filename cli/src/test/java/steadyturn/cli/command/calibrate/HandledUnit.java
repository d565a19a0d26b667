package steadyturn.cli.command.calibrate;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;

/** A table in the layout of the bundled map handheld-with-optical-truth, written step by step. */
public final class HandledUnit {

  public static final String MAP = "handheld-with-optical-truth";
  private static final double STEP_S = 0.01;

  private final StringBuilder rows =
      new StringBuilder(
          "time_s,ax_m_s2,ay_m_s2,az_m_s2,gx_rad_s,gy_rad_s,gz_rad_s,"
              + "opt_qw,opt_qx,opt_qy,opt_qz,movement\n");
  private final Random random = new Random(20260106);
  private final double[] accelBias;
  private final double[] gyroBias;
  private int samples;

  public HandledUnit(double[] accelBias, double[] gyroBias) {
    this.accelBias = accelBias.clone();
    this.gyroBias = gyroBias.clone();
  }

  /** Adds seconds of this force and rate, with noise; a hand adds much more of it. */
  public HandledUnit add(double seconds, double[] force, double[] rate, boolean byHand) {
    double shake = byHand ? 1 : 0.01;
    for (int i = 0; i < Math.round(seconds / STEP_S); i++) {
      rows.append(String.format(Locale.ROOT, "%.6f", STEP_S * samples++));
      for (int axis = 0; axis < 3; axis++) {
        double value = force[axis] + accelBias[axis] + shake * random.nextGaussian();
        rows.append(String.format(Locale.ROOT, ",%.5f", value));
      }
      for (int axis = 0; axis < 3; axis++) {
        double value = rate[axis] + gyroBias[axis] + 0.1 * shake * random.nextGaussian();
        rows.append(String.format(Locale.ROOT, ",%.6f", value));
      }
      rows.append(",nan,nan,nan,nan,0\n");
    }
    return this;
  }

  HandledUnit lie(double seconds, double x, double y, double z) {
    return add(seconds, new double[] {x, y, z}, new double[3], false);
  }

  HandledUnit pickUp() {
    return add(0.6, new double[] {2, 3, 5}, new double[3], true);
  }

  public Path write(Path file) throws IOException {
    return Files.writeString(file, rows);
  }
}
