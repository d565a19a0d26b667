package steadyturn.cli.command.rehearsal;

import java.io.IOException;
import java.util.function.IntUnaryOperator;
import steadyturn.ingest.lab.BinaryFrameEncoder;
import steadyturn.ingest.lab.VirtualPort;
import steadyturn.ingest.sample.StandardGravity;
import steadyturn.ingest.sample.UnitStream;
import steadyturn.ingest.sensor.UnitHello;
import steadyturn.ingest.serial.HostTime;

/** One virtual unit: shows what a course says, into a port of its own, until it is closed. */
final class RehearsedUnit implements Runnable {

  private static final int RANGE_G = 16;
  private static final int RANGE_DEG_PER_S = 2000;
  private static final long PAUSE_MS = 3;

  /** A hand that moves a unit to and fro, or a player who cannot stand still. */
  private static final double SHAKE_HZ = 1.6;

  private static final double SHAKE_RAD_PER_S = Math.toRadians(140);

  private final UnitStream stream;
  private final VirtualPort port;
  private final IntUnaryOperator course;
  private final UnitHello hello;
  private final double rateHz;
  private final BinaryFrameEncoder encoder = new BinaryFrameEncoder(RANGE_G, RANGE_DEG_PER_S);
  private final double[] biasRadPerS;
  private volatile double shakenUntilS;
  private volatile double shake;
  private volatile double gone;
  private volatile double slippedRad;
  private volatile boolean isStopped;
  private double startS;

  /**
   * A unit.
   *
   * @param course the instant of the stream that is shown at each of the unit's samples
   * @param biasRadPerS what its gyroscope shows at rest
   */
  RehearsedUnit(
      UnitStream stream, VirtualPort port, IntUnaryOperator course, double[] biasRadPerS) {
    this.stream = stream;
    this.port = port;
    this.course = course;
    this.biasRadPerS = biasRadPerS.clone();
    rateHz = stream.facts().nominalRateHz();
    hello =
        new UnitHello(
            "rehearsal",
            stream.facts().serialNumber(),
            rateHz,
            RANGE_G * StandardGravity.MPS2,
            Math.toRadians(RANGE_DEG_PER_S));
  }

  void begin(double atS) {
    startS = atS;
    Thread thread = new Thread(this, "rehearsed unit");
    thread.setDaemon(true);
    thread.start();
  }

  /** Moves it to and fro besides. */
  void shake(double lengthS, double part) {
    shake = part;
    shakenUntilS = HostTime.steadyS() + lengthS;
  }

  /** From now on it sits turned on the body by so much, about the axis away from the skin. */
  void slip(double rad) {
    slippedRad = rad;
  }

  /** Pulls its cable out for so long. */
  void pull(double lengthS) {
    gone = HostTime.steadyS() + lengthS;
  }

  @Override
  public void run() {
    int sent = 0;
    double nextHelloS = 0;
    try {
      while (!isStopped) {
        double nowS = HostTime.steadyS() - startS;
        port.setPlugged(HostTime.steadyS() >= gone);
        if (nowS >= nextHelloS) {
          port.send(encoder.hello(hello));
          nextHelloS = nowS + 1;
        }
        for (; sent < nowS * rateHz; sent++) {
          send(sent);
        }
        Thread.sleep(PAUSE_MS);
      }
    } catch (InterruptedException | IOException e) {
      isStopped = true;
    }
  }

  private void send(int tick) {
    int shown = course.applyAsInt(tick);
    int i = Math.min(Math.abs(shown) - 1, stream.size() - 1);
    double atS = startS + tick / rateHz;
    double wave =
        atS < shakenUntilS ? shake * SHAKE_RAD_PER_S * Math.sin(2 * Math.PI * SHAKE_HZ * atS) : 0;
    double[] accel = new double[3];
    double[] gyro = new double[3];
    for (int axis = 0; axis < 3; axis++) {
      double rate = stream.gyroRadPerS(axis, i);
      accel[axis] = stream.accelMps2(axis, i) + (axis == 0 ? 0.6 * wave : 0);
      gyro[axis] = (shown < 0 ? 2 * biasRadPerS[axis] - rate : rate) + (axis == 1 ? wave : 0);
    }
    turn(accel);
    turn(gyro);
    port.send(encoder.sample(tick, Math.round(1e6 * (10 + tick / rateHz)), accel, gyro));
  }

  private void turn(double[] v) {
    double x = v[0];
    v[0] = Math.cos(slippedRad) * x + Math.sin(slippedRad) * v[1];
    v[1] = Math.cos(slippedRad) * v[1] - Math.sin(slippedRad) * x;
  }

  void stop() throws IOException {
    isStopped = true;
    port.close();
  }
}
