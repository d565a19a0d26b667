package steadyturn.ingest.live;

import java.time.LocalDateTime;
import java.util.Optional;
import steadyturn.ingest.clock.DeviceClock;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sensor.AdapterFeed;
import steadyturn.ingest.sensor.SampleSink;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.sensor.UnitHello;
import steadyturn.ingest.serial.PortListener;

/**
 * One unit at one port: its bytes become samples of a {@link LiveTrack}, its clock is followed, and
 * its {@link LiveState} can be asked for by any thread.
 */
public final class LiveUnit implements PortListener, SampleSink {

  /** Until its hello comes, a unit is taken to run at this rate. */
  private static final double UNKNOWN_RATE_HZ = 500;

  /**
   * A first start time is bettered when so much of the clock is known, then each time doubled, s.
   */
  private static final double BETTER_START_S = 3;

  private static final double PATIENCE_S = 2.5;
  private static final double LOOK_UP_S = 1;

  private final LiveRecorder recorder;
  private final Optional<BodyPoint> given;
  private final LiveListener listener;
  private final AdapterFeed feed;
  private final DeviceClock clock = new DeviceClock();
  private final double[] accelMps2 = new double[3];
  private final double[] gyroRadPerS = new double[3];
  private Optional<UnitHello> hello = Optional.empty();
  private Optional<LiveTrack> track = Optional.empty();
  private double steadyS;
  private double wallS;
  private double nextBetterS = BETTER_START_S;
  private boolean isThere;
  private String trouble = "";
  private long samples;
  private long lost;
  private long skippedBytes;
  private long unplugged;
  private double recordZeroS;
  private double zeroLookedUpS;
  private double namelessSinceS;
  private double rateFromS;
  private long rateFromSamples;
  private double rateHz;

  /**
   * A unit that writes into a recorder.
   *
   * @param given where it is worn; empty when its hello tells
   */
  public LiveUnit(LiveRecorder recorder, SensorAdapter adapter, Optional<BodyPoint> given) {
    this(recorder, adapter, given, (point, timeS, accel, gyro) -> {});
  }

  /** A unit to which someone listens besides. */
  public LiveUnit(
      LiveRecorder recorder,
      SensorAdapter adapter,
      Optional<BodyPoint> given,
      LiveListener listener) {
    this.recorder = recorder;
    this.given = given;
    this.listener = listener;
    feed = new AdapterFeed(adapter, this);
  }

  @Override
  public synchronized void opened() {
    isThere = true;
    trouble = "";
  }

  @Override
  public synchronized void gone(String why) {
    unplugged += isThere ? 1 : 0;
    isThere = false;
    trouble = why;
    feed.forgetRest();
  }

  @Override
  public synchronized void bytes(byte[] block, int count, double atSteadyS, double atWallS) {
    steadyS = atSteadyS;
    wallS = atWallS;
    rateFromS = rateFromS == 0 ? steadyS : rateFromS;
    feed.feed(block, count);
    if (steadyS - rateFromS >= 1) {
      rateHz = (samples - rateFromSamples) / (steadyS - rateFromS);
      rateFromS = steadyS;
      rateFromSamples = samples;
    }
  }

  @Override
  public void hello(UnitHello said) {
    if (hello.filter(said::equals).isPresent()) {
      return;
    }
    hello = Optional.of(said);
    point().ifPresent(at -> track.ifPresent(t -> t.setFacts(facts(at))));
  }

  @Override
  public void sample(
      double timeS, double ax, double ay, double az, double gx, double gy, double gz) {
    Optional<BodyPoint> at = point();
    if (at.isEmpty()) {
      nameless();
      return;
    }
    if (track.isEmpty() && !recorder.isFree(at.get())) {
      trouble = "names a body point where another unit is worn: write POINT=PORT";
      return;
    }
    if (clock.arrived(timeS, steadyS, wallS) == DeviceClock.Event.REPEATED) {
      return;
    }
    trouble = "";
    samples++;
    accelMps2[0] = ax;
    accelMps2[1] = ay;
    accelMps2[2] = az;
    gyroRadPerS[0] = gx;
    gyroRadPerS[1] = gy;
    gyroRadPerS[2] = gz;
    if (track.isEmpty()) {
      track = Optional.of(recorder.unit(facts(at.get()), startedAt()));
    }
    track.get().sample(clock.recordS(), accelMps2, gyroRadPerS);
    if (steadyS - zeroLookedUpS > LOOK_UP_S) {
      zeroLookedUpS = steadyS;
      recordZeroS = clock.recordZeroHostS();
    }
    listener.sample(at.get(), recordZeroS + clock.recordS(), accelMps2, gyroRadPerS);
    if (clock.recordS() > nextBetterS) {
      nextBetterS *= 2;
      betterStart();
      betterRate(at.get());
    }
  }

  /** A hello may take a second to come; only then is it missed. */
  private void nameless() {
    namelessSinceS = namelessSinceS == 0 ? steadyS : namelessSinceS;
    if (steadyS - namelessSinceS > PATIENCE_S) {
      trouble = "does not say where it is worn: write POINT=PORT";
    }
  }

  @Override
  public void skipped(int bytes) {
    skippedBytes += bytes;
  }

  @Override
  public void lost(int count) {
    lost += count;
  }

  /** Tells the track what the clock now knows of its start. */
  public synchronized void betterStart() {
    track.ifPresent(t -> t.setStartedAt(startedAt()));
  }

  /** Time of the latest sample since the unit's first, s; for its listener to ask. */
  public synchronized double latencyS() {
    return clock.recordS();
  }

  /** The time of day of a time since the unit's first sample, as far as its clock is known. */
  public synchronized LocalDateTime timeOfDay(double latencyS) {
    return startedAt().plusNanos(Math.round(latencyS * 1e9));
  }

  /** A unit that says no hello shows its rate by running. */
  private void betterRate(BodyPoint at) {
    if (hello.isEmpty()) {
      double measuredHz = Math.rint((samples - 1) / clock.recordS());
      track.ifPresent(t -> t.setFacts(UnitFacts.plain(at, Math.max(1, measuredHz))));
    }
  }

  private Optional<BodyPoint> point() {
    return given.or(() -> hello.flatMap(h -> BodyPoint.ofTrackedPoint(h.name())));
  }

  private UnitFacts facts(BodyPoint at) {
    return hello
        .map(
            h ->
                new UnitFacts(
                    at,
                    h.serialNumber(),
                    h.rateHz(),
                    h.accelFullScaleMps2(),
                    h.gyroFullScaleRadPerS(),
                    false))
        .orElseGet(() -> UnitFacts.plain(at, UNKNOWN_RATE_HZ));
  }

  /** Time of day of the unit's first sample. */
  private LocalDateTime startedAt() {
    return recorder.timeOfDay(clock.recordZeroHostS());
  }

  /** The state of this moment. */
  public synchronized LiveState state() {
    return new LiveState(
        point(),
        hello,
        isThere,
        trouble,
        samples,
        rateHz,
        lost,
        skippedBytes,
        unplugged,
        clock.restarts(),
        samples == 0 ? 0 : clock.skewPpm(),
        samples == 0 ? 0 : clock.spreadS(),
        norm(accelMps2),
        norm(gyroRadPerS));
  }

  private static double norm(double[] v) {
    return Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
  }
}
