package steadyturn.ingest.clock;

/**
 * Follows one unit's clock against the host's while its samples arrive, and lays them on one axis
 * of record time: the unit's own seconds since its first sample. A unit that starts again, or whose
 * clock jumps, goes on where the host's clock says it is; a host that slept changes nothing.
 * Latency is never negative, so the host time of a sample is read from the lower envelope of the
 * delays.
 */
public final class DeviceClock {

  /** What a sample told about the clocks. */
  public enum Event {
    FIRST,
    STEADY,
    /** Not later than the one before: to be dropped. */
    REPEATED,
    /** The unit's clock began anew, or jumped. */
    RESTARTED,
    /** The host slept meanwhile; the unit did not. */
    HOST_SLEPT
  }

  /** A unit's clock may be so far ahead of the host's by latency alone, s. */
  private static final double MOST_AHEAD_S = 2;

  /** Bytes wait at most so long in drivers and cables, s. */
  private static final double MOST_LATE_S = 5;

  private static final double SMALL_STEP_BACK_S = 0.5;
  private static final double SLEPT_S = 1;

  /** Under so much time a slope is noise, s. */
  private static final double SHORTEST_FOR_SKEW_S = 20;

  /** No clock is so far off; what looks like it is played at another pace. */
  private static final double WORST_SKEW = 0.02;

  /** Of each such stretch the least delay is kept, s. */
  private static final double STRETCH_S = 1;

  private static final double LEAST_STEP_S = 1e-6;

  private LowerEnvelope envelope = new LowerEnvelope(STRETCH_S);
  private double firstHostS;
  private boolean hasFirstFit;
  private boolean hasBegun;
  private double toRecordS;
  private double lastDeviceS;
  private double lastHostS;
  private double lastWallS;
  private double lastRecordS;
  private int restarts;

  /**
   * Takes one sample's times.
   *
   * @param deviceS the unit's clock, s
   * @param hostS the host's steady clock on arrival, s; it may stand still while the host sleeps
   * @param wallS the host's time of day on arrival, s
   */
  public Event arrived(double deviceS, double hostS, double wallS) {
    Event event = hasBegun ? judge(deviceS, hostS, wallS) : Event.FIRST;
    if (event == Event.REPEATED) {
      return event;
    }
    if (event == Event.FIRST) {
      hasBegun = true;
      toRecordS = -deviceS;
    } else if (event == Event.RESTARTED) {
      restart(deviceS, hostS);
    } else if (event == Event.HOST_SLEPT) {
      keepFirstFit();
      envelope = new LowerEnvelope(STRETCH_S);
    }
    lastDeviceS = deviceS;
    lastHostS = hostS;
    lastWallS = wallS;
    lastRecordS = deviceS + toRecordS;
    envelope.add(lastRecordS, hostS - lastRecordS);
    return event;
  }

  private Event judge(double deviceS, double hostS, double wallS) {
    double deviceStepS = deviceS - lastDeviceS;
    double hostStepS = hostS - lastHostS;
    double sleptS = wallS - lastWallS - hostStepS;
    if (deviceStepS <= 0) {
      return deviceStepS > -SMALL_STEP_BACK_S ? Event.REPEATED : Event.RESTARTED;
    }
    if (sleptS > SLEPT_S && Math.abs(deviceStepS - hostStepS - sleptS) < MOST_LATE_S) {
      return Event.HOST_SLEPT;
    }
    boolean isAhead = deviceStepS - hostStepS > MOST_AHEAD_S + lastLatencyS();
    boolean isBehind = hostStepS - deviceStepS > MOST_LATE_S;
    return isAhead || isBehind ? Event.RESTARTED : Event.STEADY;
  }

  /** How late the last sample came above the envelope: so much may be caught up at once, s. */
  private double lastLatencyS() {
    return Math.max(0, lastHostS - lastRecordS - envelope.least(0));
  }

  private void restart(double deviceS, double hostS) {
    double zeroS = recordZeroHostS();
    keepFirstFit();
    restarts++;
    double recordS = Math.max(hostS - zeroS, lastRecordS + LEAST_STEP_S);
    toRecordS = recordS - deviceS;
    envelope = new LowerEnvelope(STRETCH_S);
  }

  private void keepFirstFit() {
    if (!hasFirstFit) {
      firstHostS = recordZeroHostS();
      hasFirstFit = true;
    }
  }

  /** The last sample's record time: seconds of the unit's clock since its first sample. */
  public double recordS() {
    return lastRecordS;
  }

  /** Host time at which the last sample was taken, by all that is known of this run, s. */
  public double hostS() {
    double[] line = fit();
    boolean isClock = Math.abs(line[1]) < WORST_SKEW;
    return isClock
        ? lastRecordS + line[0] + lastRecordS * line[1]
        : recordZeroHostS() + lastRecordS;
  }

  /** Host time at which record time was 0, from the envelope of the unit's first run, s. */
  public double recordZeroHostS() {
    return hasFirstFit ? firstHostS : fit()[0];
  }

  /** How much too slow the unit's clock runs against the host's, millionths; 0 while unknown. */
  public double skewPpm() {
    return 1e6 * fit()[1];
  }

  /** How far the least delays scatter above their line, s: what the fit is worth. */
  public double spreadS() {
    return envelope.medianAboveS(fit());
  }

  /** How often the unit's clock began anew. */
  public int restarts() {
    return restarts;
  }

  private double[] fit() {
    return envelope.spanS() < SHORTEST_FOR_SKEW_S
        ? new double[] {envelope.least(0), 0}
        : envelope.line();
  }
}
