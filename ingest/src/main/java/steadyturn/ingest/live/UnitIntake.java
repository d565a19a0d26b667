package steadyturn.ingest.live;

import java.time.LocalDateTime;
import java.util.Optional;
import steadyturn.ingest.clock.DeviceClock;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sensor.KnownUnit;
import steadyturn.ingest.sensor.SampleSink;
import steadyturn.ingest.sensor.UnitHello;

/**
 * What an adapter reads at one port becomes samples of a {@link LiveTrack}, on the unit's own
 * clock. Used under the lock of its {@link LiveUnit}.
 */
final class UnitIntake implements SampleSink {

  /** Until it tells its rate, a unit is taken to run at this rate. */
  private static final double UNKNOWN_RATE_HZ = 500;

  /**
   * A first start time is bettered when so much of the clock is known, then each time doubled, s.
   */
  private static final double BETTER_START_S = 3;

  private static final double PATIENCE_S = 2.5;
  private static final double LOOK_UP_S = 1;

  /** What is longer between two samples tells nothing of the rate, s; nor do steps of no length. */
  private static final double OUTAGE_S = 0.2;

  private static final double LEAST_STEPS_S = 1e-3;

  final OtherUnits others;
  final DeviceClock clock = new DeviceClock();
  final double[] accelMps2 = new double[3];
  final double[] gyroRadPerS = new double[3];
  final StatedUnit stated = new StatedUnit();
  String trouble = "";
  boolean isWaiting; // to be set up: what it sends until then has another rate, or no time
  long heard;
  long samples;
  long lost;
  long skippedBytes;

  private final LiveRecorder recorder;
  private final Optional<BodyPoint> given;
  private final LiveListener listener;
  private final ClocklessSamples clockless =
      new ClocklessSamples((timeS, values) -> take(timeS, timeS, values));
  private boolean isHeard = true;
  private Optional<LiveTrack> track = Optional.empty();
  private String serialNumber = "";
  private double lastRecordS;
  private double stepsS;
  private long steps;
  private double steadyS;
  private double wallS;
  private double nextBetterS = BETTER_START_S;
  private double recordZeroS;
  private double zeroLookedUpS;
  private double namelessSinceS;

  UnitIntake(LiveRecorder recorder, Optional<BodyPoint> given, int number, LiveListener listener) {
    others = new OtherUnits(this, number);
    this.recorder = recorder;
    this.given = given;
    this.listener = listener;
  }

  /** When the bytes came that are read next. */
  void at(double atSteadyS, double atWallS) {
    steadyS = atSteadyS;
    wallS = atWallS;
  }

  @Override
  public void hello(UnitHello said) {
    if (stated.isNews(said, isWaiting)) {
      knowMore();
    }
  }

  @Override
  public void known(KnownUnit told) {
    if (stated.isNews(told, isWaiting)) {
      knowMore();
    }
  }

  private void knowMore() {
    if (isTheUnitOfTheTable() && track.isPresent()) {
      stated.holdForTable();
      BodyPoint at = track.get().point();
      track.get().setFacts(facts(at));
      if (stated.isMoreThanTable()) {
        String now = at.trackedPoint() + " runs at " + stated.now().setting();
        recorder.tell(now + " now; its files keep " + stated.ofTable().setting() + ", said first");
      }
    }
  }

  /** A table is of one unit at one point; what another one sends has no place in it. */
  private boolean isTheUnitOfTheTable() {
    String says = stated.now().serialNumber();
    if (!serialNumber.isEmpty() && !says.isEmpty() && !says.equals(serialNumber)) {
      trouble =
          "is unit " + says + " now, not " + serialNumber + ": left out; end and record again";
      return false;
    }
    if (track.isPresent() && point().filter(p -> p != track.get().point()).isPresent()) {
      trouble =
          "says it is worn at another point now: left out; end and record again, or write"
              + " POINT=PORT";
      return false;
    }
    serialNumber = says.isEmpty() ? serialNumber : says;
    if (!isWaiting && stated.isLessThanTable()) {
      trouble =
          ("runs at " + stated.now().setting() + " now, not at " + stated.ofTable().setting())
              + ": left out; set it up again (--configure), or end and record again";
      return false;
    }
    return true;
  }

  @Override
  public void sample(
      double timeS, double ax, double ay, double az, double gx, double gy, double gz) {
    heard++;
    if (isWaiting) {
      return;
    }
    if (Double.isNaN(timeS)) {
      clockless.add(ax, ay, az, gx, gy, gz);
    } else {
      take(timeS, steadyS, ax, ay, az, gx, gy, gz);
    }
  }

  /**
   * Takes a sample of the unit's clock that came at a time of the host's, acceleration and rate.
   */
  private void take(double timeS, double cameS, double... values) {
    Optional<BodyPoint> at = point();
    if (at.isEmpty()) {
      nameless();
      return;
    }
    if (!isTheUnitOfTheTable()
        || clock.arrived(timeS, cameS, wallS - (steadyS - cameS)) == DeviceClock.Event.REPEATED) {
      return;
    }
    if (track.isEmpty()) {
      stated.holdForTable();
      track = recorder.unit(facts(at.get()), startedAt());
    }
    if (track.isEmpty()) {
      trouble = "names a body point where another unit is worn: left out; write POINT=PORT";
      return;
    }
    trouble = "";
    System.arraycopy(values, 0, accelMps2, 0, 3);
    System.arraycopy(values, 3, gyroRadPerS, 0, 3);
    keep(track.get());
  }

  private void keep(LiveTrack kept) {
    double stepS = clock.recordS() - lastRecordS;
    if (samples > 0 && stepS < OUTAGE_S) {
      stepsS += stepS;
      steps++;
    }
    lastRecordS = clock.recordS();
    kept.sample(clock.recordS(), accelMps2, gyroRadPerS);
    samples++;
    if (steadyS - zeroLookedUpS > LOOK_UP_S) {
      zeroLookedUpS = steadyS;
      recordZeroS = clock.recordZeroHostS();
    }
    hear(kept.point());
    if (clock.recordS() > nextBetterS) {
      nextBetterS *= 2;
      betterStart();
      betterRate(kept);
    }
  }

  /** A listener that fails is left alone from then on; the recording is worth more. */
  private void hear(BodyPoint point) {
    if (!isHeard) {
      return;
    }
    try {
      listener.sample(point, recordZeroS + clock.recordS(), accelMps2, gyroRadPerS);
    } catch (RuntimeException | StackOverflowError e) {
      isHeard = false;
      recorder.tell("what listened to " + point.trackedPoint() + " failed (" + e + ") and ended");
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
  public SampleSink unit(int which) {
    return others.unit(which);
  }

  @Override
  public void skipped(int bytes) {
    skippedBytes += bytes;
  }

  @Override
  public void lost(int count) {
    lost += count;
    clockless.lost(count);
  }

  /** All of a block was read. */
  void blockEnds() {
    clockless.blockEnds(steadyS);
  }

  /** The port is gone, or read no more. */
  void cut() {
    clockless.cut();
  }

  /** What is known of its clock, s; where it has none, how far its arrivals scatter. */
  double clockSpreadS() {
    return Math.max(clock.spreadS(), clockless.spreadS());
  }

  /** Tells the track what the clock now knows of its start. */
  void betterStart() {
    track.ifPresent(t -> t.setStartedAt(startedAt()));
  }

  /** A unit that does not tell its rate, or has no clock, shows it by running. */
  private void betterRate(LiveTrack kept) {
    if (clockless.rateHz().isPresent() || stated.ofTable().rateHz().isEmpty()) {
      kept.setFacts(facts(kept.point()));
    }
  }

  /** The facts of its table; empty before its first sample. */
  Optional<UnitFacts> factsOfTable() {
    return track.map(LiveTrack::facts);
  }

  /** Samples in the file. */
  long kept() {
    return track.map(LiveTrack::kept).orElse(0L);
  }

  Optional<BodyPoint> point() {
    return given.or(() -> stated.hello().flatMap(h -> BodyPoint.ofTrackedPoint(h.name())));
  }

  private UnitFacts facts(BodyPoint at) {
    double measuredHz = Math.max(1, Math.rint(steps / Math.max(stepsS, LEAST_STEPS_S)));
    UnitFacts said = stated.ofTable().facts(at, steps > 0 ? measuredHz : UNKNOWN_RATE_HZ);
    return clockless.rateHz().map(said::withNominalRateHz).orElse(said);
  }

  /** Time of day of the unit's first sample. */
  LocalDateTime startedAt() {
    return recorder.timeOfDay(clock.recordZeroHostS());
  }
}
