package steadyturn.ingest.lab;

import java.io.IOException;
import java.util.Random;
import steadyturn.ingest.sample.StandardGravity;
import steadyturn.ingest.sample.UnitStream;
import steadyturn.ingest.sensor.UnitHello;
import steadyturn.ingest.serial.HostTime;

/**
 * A unit without hardware: plays a stream into a {@link VirtualPort} at its own pace, with the
 * chosen faults. Like a real unit it does not wait for a reader: what nobody takes is lost.
 */
public final class VirtualUnit implements Runnable {

  private static final double HELLO_EVERY_S = 1;
  private static final long PAUSE_MS = 2;

  private final UnitStream stream;
  private final UnitEncoder encoder;
  private final UnitHello hello;
  private final VirtualPort port;
  private final UnitFaults faults;
  private final double speed;
  private final double zeroS;
  private final Random random;
  private volatile long sent;
  private volatile boolean isStopped;

  /**
   * A unit that plays a stream once.
   *
   * @param zeroS where on the stream's time axis the playing begins, s: the same for the units of
   *     one recording, so that their starts stay as far apart as they were
   * @param speed 1 for real pace, 10 for ten times as fast
   * @param seed of the faults
   */
  public VirtualUnit(
      UnitStream stream,
      UnitEncoder encoder,
      VirtualPort port,
      UnitFaults faults,
      double zeroS,
      double speed,
      long seed) {
    this.stream = stream;
    this.encoder = encoder;
    this.port = port;
    this.faults = faults;
    this.zeroS = zeroS;
    this.speed = speed;
    random = new Random(seed);
    hello =
        new UnitHello(
            stream.point().trackedPoint(),
            stream.facts().serialNumber(),
            stream.facts().nominalRateHz(),
            Math.min(stream.facts().accelFullScaleMps2(), 16 * StandardGravity.MPS2),
            Math.min(stream.facts().gyroFullScaleRadPerS(), Math.toRadians(2000)));
  }

  /** Number of the stream's samples whose time has come, sent or lost. */
  public long due() {
    return sent;
  }

  /** Ends the playing soon. */
  public void stop() {
    isStopped = true;
  }

  /** Plays the stream to its end. */
  @Override
  public void run() {
    run(HostTime.steadyS());
  }

  /** Plays it with the host's steady time at which the playing of all units began, s. */
  public void run(double startS) {
    double firstS = stream.size() == 0 ? 0 : stream.timeS(0) - zeroS;
    double nextHelloS = firstS;
    int next = 0;
    try {
      while (next < stream.size() && !isStopped) {
        double nowS = (HostTime.steadyS() - startS) * speed;
        plug(!faults.isUnpluggedAt(nowS));
        port.send(encoder.heard(port.received()));
        if (nowS >= nextHelloS) {
          port.send(encoder.hello(hello));
          nextHelloS += HELLO_EVERY_S;
        }
        while (next < stream.size() && stream.timeS(next) - zeroS <= nowS) {
          sample(next++);
        }
        sent = next;
        Thread.sleep(pauseMs());
      }
    } catch (InterruptedException | IOException e) {
      isStopped = true;
    }
  }

  private long pauseMs() {
    double longerS = faults.jitterS() * random.nextDouble();
    return PAUSE_MS + Math.round(1000 * longerS);
  }

  /** Without its cable it has no power. */
  private void plug(boolean isPlugged) throws IOException {
    if (!isPlugged) {
      encoder.powerOff();
    }
    port.setPlugged(isPlugged);
  }

  private void sample(int i) {
    if (!encoder.sends(i, stream.facts().nominalRateHz())) {
      return;
    }
    if (random.nextDouble() * 100 < faults.dropPct()) {
      return;
    }
    double deviceS = (stream.timeS(i) - stream.timeS(0)) / (1 + faults.skewPpm() * 1e-6) + 10;
    double[] accel = new double[3];
    double[] gyro = new double[3];
    for (int axis = 0; axis < 3; axis++) {
      accel[axis] = stream.accelMps2(axis, i);
      gyro[axis] = stream.gyroRadPerS(axis, i);
    }
    byte[] bytes = encoder.sample(i, Math.round(deviceS * 1e6), accel, gyro);
    if (random.nextDouble() * 100 < faults.damagePct()) {
      bytes[random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
    }
    port.send(bytes);
    if (random.nextDouble() * 100 < faults.noisePct()) {
      byte[] noise = new byte[1 + random.nextInt(20)];
      random.nextBytes(noise);
      port.send(noise);
    }
  }
}
