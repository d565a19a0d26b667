package steadyturn.ingest.live;

import java.time.LocalDateTime;
import java.util.Optional;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sensor.AdapterFeed;
import steadyturn.ingest.sensor.KnownUnit;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.serial.HostTime;
import steadyturn.ingest.serial.PortListener;

/**
 * One unit at one port: its bytes go through its adapter into the recording, and its {@link
 * LiveState} can be asked for by any thread. An adapter that throws costs the block it was given;
 * one that throws at every block is given up.
 */
public final class LiveUnit implements PortListener {

  /** So many blocks failed in a row, over so long: the adapter does not come back. */
  private static final int MOST_FAILURES = 20;

  private static final double LONGEST_FAILING_S = 1;

  /** A unit that says nothing at first is set up after so long all the same, s. */
  private static final double SILENT_S = 1;

  /** After the last command and its pause its samples are of before for so long, s: our choice. */
  private static final double SETTLE_S = 0.1;

  /** One that is told something without end is recorded all the same, s. */
  private static final double LONGEST_SETTING_S = 10;

  /** Bytes without a sample for so long are not understood, s. */
  private static final double MUTE_S = 2.5;

  private final LiveRecorder recorder;
  private final SensorAdapter adapter;
  private final UnitIntake intake;
  private final OtherUnits others;
  private final AdapterFeed feed;
  private final PortPlace place;
  private final PacedLink link = new PacedLink();
  private boolean isOpen;
  private boolean isGivenUp;
  private String portTrouble = "";
  private long unplugged;
  private long failures;
  private int failuresInARow;
  private double failingSinceS;
  private double rateFromS;
  private long rateFromSamples;
  private double rateHz;
  private double openedS;
  private long heardAtOpening;
  private double lastBytesS;
  private double lastHeardS;
  private boolean isConfigured;

  /**
   * A unit that writes into a recorder.
   *
   * @param given where it is worn; empty when its hello tells
   */
  public LiveUnit(LiveRecorder recorder, SensorAdapter adapter, Optional<BodyPoint> given) {
    this(recorder, adapter, given, PortPlace.ALONE, (point, timeS, accel, gyro) -> {});
  }

  /** A unit alone at its port to which someone listens besides. */
  public LiveUnit(
      LiveRecorder recorder,
      SensorAdapter adapter,
      Optional<BodyPoint> given,
      LiveListener listener) {
    this(recorder, adapter, given, PortPlace.ALONE, listener);
  }

  /** A unit to which someone listens besides. */
  public LiveUnit(
      LiveRecorder recorder,
      SensorAdapter adapter,
      Optional<BodyPoint> given,
      PortPlace place,
      LiveListener listener) {
    this.recorder = recorder;
    this.adapter = adapter;
    this.place = place;
    intake = new UnitIntake(recorder, given, place.number(), listener);
    others = intake.others;
    feed = new AdapterFeed(adapter, others.withoutNumber());
  }

  @Override
  public synchronized void tuned(int baud) {
    link.tune(baud);
  }

  @Override
  public synchronized void opened() {
    isOpen = true;
    portTrouble = "";
    feed.forgetRest();
    link.clear();
    isConfigured = false;
    intake.isWaiting = place.mayConfigure();
    openedS = 0;
    heardAtOpening = heard();
    try {
      adapter.opened();
    } catch (RuntimeException | Error e) { // as when it reads
      failed(e, HostTime.steadyS());
    }
  }

  /** A unit is set up once it speaks, or stays silent: at every opening anew. */
  @Override
  public synchronized byte[] toSend(double nowS) {
    if (isGivenUp || !place.mayConfigure()) {
      return NOTHING;
    }
    openedS = openedS == 0 ? nowS : openedS;
    if (!isConfigured && (heard() > heardAtOpening || nowS - openedS > SILENT_S)) {
      isConfigured = true;
      try {
        adapter.configure(link);
      } catch (RuntimeException | Error e) { // as when it reads
        failed(e, nowS);
      }
    }
    tellFailures();
    byte[] due = link.due(nowS);
    boolean isSet = link.isIdleSince(nowS - SETTLE_S) || nowS - openedS > LONGEST_SETTING_S;
    intake.isWaiting &= !(isConfigured && isSet);
    return due;
  }

  @Override
  public synchronized boolean isUnderstood(double nowS) {
    return heard() > heardAtOpening && lastBytesS - lastHeardS < MUTE_S;
  }

  @Override
  public synchronized void gone(String why) {
    unplugged += isOpen ? 1 : 0;
    isOpen = false;
    portTrouble = why;
    feed.dropRest();
    intake.cut();
  }

  @Override
  public synchronized void ended() {
    isOpen = false;
    intake.cut();
  }

  @Override
  public synchronized void bytes(byte[] block, int count, double atSteadyS, double atWallS) {
    if (isGivenUp) {
      return;
    }
    intake.at(atSteadyS, atWallS);
    rateFromS = rateFromS == 0 ? atSteadyS : rateFromS;
    lastBytesS = atSteadyS;
    long heardBefore = heard();
    try {
      feed.feed(block, count, atSteadyS);
      failuresInARow = 0;
    } catch (RuntimeException | Error e) { // whatever a unit's reader does, the others go on
      failed(e, atSteadyS);
    }
    tellFailures();
    lastHeardS = heard() > heardBefore ? atSteadyS : lastHeardS;
    intake.blockEnds();
    if (atSteadyS - rateFromS >= 1) {
      rateHz = (intake.samples - rateFromSamples) / (atSteadyS - rateFromS);
      rateFromS = atSteadyS;
      rateFromSamples = intake.samples;
    }
  }

  private void tellFailures() {
    link.newFailures().forEach(why -> recorder.tell(who() + " is not set up as wished: it " + why));
  }

  /** Samples of all units of the port: whether what comes makes sense. */
  private long heard() {
    return intake.heard + others.heard();
  }

  private void failed(Throwable e, double atS) {
    failures++;
    failingSinceS = failuresInARow == 0 ? atS : failingSinceS;
    failuresInARow++;
    String what = who() + ": its adapter " + adapter.name() + " failed (" + e + ")";
    if (failuresInARow >= MOST_FAILURES && atS - failingSinceS >= LONGEST_FAILING_S) {
      isGivenUp = true;
      recorder.tell(what + " at every block for a second: the unit is given up");
    } else if (failuresInARow == 1 && Long.bitCount(failures) == 1) { // not a line a block
      recorder.tell(what + "; its block of bytes was passed over");
    }
  }

  private String who() {
    return intake.point().map(BodyPoint::trackedPoint).orElse("a unit");
  }

  /** Whether its adapter failed so often that it is read no more. */
  public synchronized boolean isGivenUp() {
    return isGivenUp;
  }

  /** Tells the recording what the clock now knows of the unit's start. */
  public synchronized void betterStart() {
    intake.betterStart();
  }

  /** What is known of the unit; empty before its first sample. */
  public synchronized Optional<UnitFacts> facts() {
    return intake.factsOfTable();
  }

  /** Time of the latest sample since the unit's first, s; for its listener to ask. */
  public synchronized double latencyS() {
    return intake.clock.recordS();
  }

  /** The time of day at which its latest sample was taken. */
  public synchronized LocalDateTime takenAt() {
    return recorder.timeOfDay(intake.clock.hostS());
  }

  /** The time of day of a time since the unit's first sample, as far as its clock is known. */
  public synchronized LocalDateTime timeOfDay(double latencyS) {
    return intake.startedAt().plusNanos(Math.round(latencyS * 1e9));
  }

  /** The state of this moment. */
  public synchronized LiveState state() {
    boolean hasSamples = intake.samples > 0;
    return new LiveState(
        intake.point(),
        !intake.stated.now().equals(KnownUnit.NOTHING),
        intake.stated.now().serialNumber(),
        isOpen && !isGivenUp,
        trouble(),
        intake.samples,
        intake.kept(),
        failures,
        rateHz,
        intake.lost,
        intake.skippedBytes,
        unplugged,
        intake.clock.restarts(),
        hasSamples ? intake.clock.skewPpm() : 0,
        hasSamples ? intake.clockSpreadS() : 0);
  }

  private String trouble() {
    if (isGivenUp) {
      return "is given up: its adapter " + adapter.name() + " fails at every block";
    }
    if (portTrouble.isEmpty() && intake.heard == 0 && others.heard() > 0) {
      return place.number() == 0
          ? "several units speak at this port: write PORT#1, PORT#2 and so on"
          : "other units speak at this port, but not number " + place.number();
    }
    return portTrouble.isEmpty() ? intake.trouble : portTrouble;
  }
}
