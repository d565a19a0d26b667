package steadyturn.ingest.sensor.kit;

import java.io.ByteArrayOutputStream;
import java.util.Random;
import steadyturn.ingest.lab.UnitEncoder;
import steadyturn.ingest.sample.Offered;
import steadyturn.ingest.sensor.UnitHello;

/**
 * A golden recording as a unit of one of our own protocols would send it: seeded noise and bias,
 * exact movement, 200 Hz.
 */
@Offered
public final class MadeGolden {

  private static final double RATE_HZ = 200;
  private static final double G = 9.80665;

  private final UnitEncoder encoder;
  private final double helloEveryS;
  private final Random random = new Random(20260402);

  private MadeGolden(UnitEncoder encoder, double helloEveryS) {
    this.encoder = encoder;
    this.helloEveryS = helloEveryS;
  }

  /**
   * The four situations in the protocol of the encoder, which is asked for a hello once, at the
   * start of each (pelvis, number G-1, 200 Hz, 16 g, 2000 deg/s), then for every sample.
   */
  public static GoldenRecording of(UnitEncoder encoder) {
    return made(new MadeGolden(encoder, Double.POSITIVE_INFINITY));
  }

  /**
   * The same of a unit whose samples are believed only after a hello: it is asked for one every so
   * many seconds.
   */
  public static GoldenRecording of(UnitEncoder encoder, double helloEveryS) {
    return made(new MadeGolden(encoder, helloEveryS)).believedFromHello(helloEveryS);
  }

  private static GoldenRecording made(MadeGolden made) {
    return new GoldenRecording(
        RATE_HZ,
        made.bytes(2, new double[] {0, 0, 1}, (t, rate) -> {}),
        made.bytes(2, new double[] {1, 0, 0}, (t, rate) -> {}),
        made.bytes(3, new double[] {0, 0, 1}, MadeGolden::quarterTurn),
        made.bytes(12, new double[] {0, 0, 1}, MadeGolden::tumble));
  }

  /** Fills in the rate at a time. */
  @FunctionalInterface
  private interface Movement {
    void at(double timeS, double[] rateRadPerS);
  }

  private static void quarterTurn(double timeS, double[] rate) {
    boolean turns = timeS > 1 && timeS < 2;
    rate[2] = turns ? 0.5 * Math.PI * (1 - Math.cos(2 * Math.PI * timeS)) : 0;
  }

  private static void tumble(double timeS, double[] rate) {
    if (timeS > 1) {
      rate[0] = 1.2 * Math.sin(0.9 * timeS);
      rate[1] = 1.1 * Math.cos(0.6 * timeS);
      rate[2] = 0.8 * Math.sin(0.37 * timeS + 1);
    }
  }

  private byte[] bytes(double lengthS, double[] up, Movement movement) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    UnitHello hello = new UnitHello("pelvis", "G-1", RATE_HZ, 16 * G, Math.toRadians(2000));
    double nextHelloS = 0;
    double[] u = up.clone();
    double[] rate = new double[3];
    double[] accel = new double[3];
    double[] gyro = new double[3];
    for (int k = 0; k < lengthS * RATE_HZ; k++) {
      if (k / RATE_HZ >= nextHelloS) {
        out.writeBytes(encoder.hello(hello));
        nextHelloS += helloEveryS;
      }
      movement.at(k / RATE_HZ, rate);
      turn(u, rate, 1 / RATE_HZ);
      for (int axis = 0; axis < 3; axis++) {
        accel[axis] = G * u[axis] + 0.05 + 0.03 * random.nextGaussian();
        gyro[axis] = rate[axis] + 0.008 + 0.002 * random.nextGaussian();
      }
      long micros = Math.round(77_000_000 + k * 1e6 / RATE_HZ);
      out.writeBytes(encoder.sample(k, micros, accel, gyro));
    }
    return out.toByteArray();
  }

  private static void turn(double[] u, double[] rate, double stepS) {
    int parts = 20;
    for (int k = 0; k < parts; k++) {
      double wx = rate[0] * stepS / parts;
      double wy = rate[1] * stepS / parts;
      double wz = rate[2] * stepS / parts;
      double x = u[0] + u[1] * wz - u[2] * wy;
      double y = u[1] + u[2] * wx - u[0] * wz;
      double z = u[2] + u[0] * wy - u[1] * wx;
      double size = Math.sqrt(x * x + y * y + z * z);
      u[0] = x / size;
      u[1] = y / size;
      u[2] = z / size;
    }
  }
}
