package steadyturn.analysis.synthetic;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.analysis.synthetic.body.BodyMotion;
import steadyturn.analysis.synthetic.body.Joint;
import steadyturn.analysis.synthetic.unit.UnitClock;

/**
 * The truth of one swing. All instants are on the recording's common time axis (the pelvis unit's
 * clock), all values free of handedness.
 */
public final class SwingTruth {

  private final int number;
  private final SwingKind kind;
  private final String club;
  private final Map<SwingEvent, Double> eventsS;
  private final BodyMotion body;
  private final UnitClock clock;
  private final PelvisTruth reference;

  SwingTruth(
      int number,
      SwingKind kind,
      String club,
      Map<SwingEvent, Double> trueEventsS,
      BodyMotion body,
      UnitClock clock) {
    this.number = number;
    this.kind = kind;
    this.club = club;
    this.body = body;
    this.clock = clock;
    this.eventsS = new EnumMap<>(SwingEvent.class);
    trueEventsS.forEach((event, timeS) -> this.eventsS.put(event, clock.shownS(timeS)));
    this.reference = reference(takeawayS());
  }

  /** 1 for the first full swing of the lesson. */
  public int number() {
    return number;
  }

  public SwingKind kind() {
    return kind;
  }

  public String club() {
    return club;
  }

  /** When a key position was reached, s; empty where the swing has none. */
  public Optional<Double> eventS(SwingEvent event) {
    return Optional.ofNullable(eventsS.get(event));
  }

  /** All key positions the swing has, s. */
  public Map<SwingEvent, Double> eventsS() {
    return new EnumMap<>(eventsS);
  }

  private double takeawayS() {
    Double at = eventsS.get(SwingEvent.TAKEAWAY);
    if (at == null) {
      throw new IllegalStateException("swing " + number + " has no takeaway");
    }
    return at;
  }

  /** Mean over 250..30 ms before the takeaway. */
  private PelvisTruth reference(double takeawayS) {
    double[] sum = new double[6];
    int n = 221;
    for (int i = 0; i < n; i++) {
      double trueS = clock.trueS(takeawayS - 0.25 + 0.001 * i);
      PelvisTruth p = absolute(trueS);
      sum[0] += p.turnRad();
      sum[1] += p.slideM();
      sum[2] += p.thrustM();
      sum[3] += p.liftM();
      sum[4] += p.tiltRad();
      sum[5] += p.sideTiltRad();
    }
    return new PelvisTruth(sum[0] / n, sum[1] / n, sum[2] / n, sum[3] / n, sum[4] / n, sum[5] / n);
  }

  private PelvisTruth absolute(double trueS) {
    return new PelvisTruth(
        body.joint(Joint.TURN).at(trueS) + body.joint(Joint.HEADING).at(trueS),
        body.joint(Joint.PLACE_X).at(trueS),
        -body.joint(Joint.PLACE_Y).at(trueS),
        body.joint(Joint.PLACE_Z).at(trueS),
        body.joint(Joint.TILT).at(trueS),
        body.joint(Joint.SIDE_TILT).at(trueS));
  }

  /** The pelvis at an instant, since address. */
  public PelvisTruth at(double timeS) {
    return absolute(clock.trueS(timeS)).minus(reference);
  }

  /** The pelvis at address itself: turn against square, tilt from level anatomical axes. */
  public PelvisTruth address() {
    return reference;
  }

  /** Wrist towards the thumb, rad, from straight. */
  public double cockRad(double timeS) {
    return body.joint(Joint.COCK).at(clock.trueS(timeS));
  }

  /** Wrist towards the palm, rad, from straight. */
  public double flexionRad(double timeS) {
    return body.joint(Joint.FLEXION).at(clock.trueS(timeS));
  }

  /** Rate of the wrist towards the thumb, rad/s. */
  public double cockRateRadPerS(double timeS) {
    return body.joint(Joint.COCK).rateAt(clock.trueS(timeS));
  }

  /** Rate of the lead arm in its plane, rad/s; positive down and through. */
  public double armRateRadPerS(double timeS) {
    return body.joint(Joint.ARM).rateAt(clock.trueS(timeS));
  }

  /** Rate of the pelvis about the vertical, rad/s; positive towards the target. */
  public double turnRateRadPerS(double timeS) {
    double trueS = clock.trueS(timeS);
    return body.joint(Joint.TURN).rateAt(trueS) + body.joint(Joint.HEADING).rateAt(trueS);
  }
}
