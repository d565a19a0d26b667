package steadyturn.analysis.lab.truth;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;
import steadyturn.analysis.lab.body.BodyMotion;
import steadyturn.analysis.lab.body.Joint;
import steadyturn.analysis.lab.unit.UnitClock;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.fusion.rotation.MovingFrame;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;

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
  private final boolean absoluteWrist;
  private final PelvisTruth reference;
  private final double addressCockRad;
  private final double addressFlexionRad;
  private final double hipHalfDistanceMm;

  /** Made at the first question: a study asks for a hundred values of a swing, one by one. */
  private volatile @Nullable List<TrueMeasure> measures;

  public SwingTruth(
      int number,
      SwingKind kind,
      String club,
      Map<SwingEvent, Double> trueEventsS,
      BodyMotion body,
      UnitClock clock,
      boolean absoluteWrist) {
    this.number = number;
    this.kind = kind;
    this.club = club;
    this.body = body;
    this.clock = clock;
    this.absoluteWrist = absoluteWrist;
    this.eventsS = new EnumMap<>(SwingEvent.class);
    trueEventsS.forEach((event, timeS) -> this.eventsS.put(event, clock.shownS(timeS)));
    this.hipHalfDistanceMm = body.sizes().hipHalfDistanceMm();
    this.reference = reference();
    this.addressCockRad = meanAtAddress(this::cockRad);
    this.addressFlexionRad = meanAtAddress(this::flexionRad);
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
  private PelvisTruth reference() {
    return new PelvisTruth(
        meanAtAddress(t -> absolute(clock.trueS(t)).turnRad()),
        meanAtAddress(t -> absolute(clock.trueS(t)).slideM()),
        meanAtAddress(t -> absolute(clock.trueS(t)).thrustM()),
        meanAtAddress(t -> absolute(clock.trueS(t)).liftM()),
        meanAtAddress(t -> absolute(clock.trueS(t)).tiltRad()),
        meanAtAddress(t -> absolute(clock.trueS(t)).sideTiltRad()));
  }

  private double meanAtAddress(DoubleUnaryOperator value) {
    double sum = 0;
    int n = 111;
    for (int i = 0; i < n; i++) {
      sum += value.applyAsDouble(takeawayS() - 0.25 + 0.002 * i);
    }
    return sum / n;
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

  /**
   * Wrist towards the thumb, rad, from straight: where the hand's length points in the forearm's
   * axes, whatever joint axes took it there.
   */
  public double cockRad(double timeS) {
    double cock = -Math.asin(Math.max(-1, Math.min(1, handInForearm(timeS, Vector3.X).y())));
    return isBeyondSquare(timeS) ? Math.PI - cock : cock;
  }

  /**
   * Wrist towards the palm, rad, from straight: how far what stands out of the back of the hand
   * leans along the forearm. Unlike the hand's length it tells that at any cock.
   */
  public double flexionRad(double timeS) {
    Vector3 back = handInForearm(timeS, Vector3.Z);
    return Math.atan2(back.x(), back.z());
  }

  /** Past a right angle of cock the same direction has two names: that of the joint is meant. */
  private boolean isBeyondSquare(double timeS) {
    return body.joint(Joint.COCK).at(clock.trueS(timeS)) > Math.PI / 2;
  }

  /** An axis of the hand in forearm axes. */
  private Vector3 handInForearm(double timeS, Vector3 axisHand) {
    return frame(BodyPoint.LEAD_FOREARM, timeS)
        .qGroundFrame()
        .conjugate()
        .rotate(frame(BodyPoint.LEAD_HAND, timeS).qGroundFrame().rotate(axisHand));
  }

  /** A frame without its place. */
  private MovingFrame frame(BodyPoint point, double timeS) {
    MovingFrame frame = new MovingFrame();
    body.walker().attitude(point, clock.trueS(timeS), frame);
    return frame;
  }

  /** Rate of the wrist towards the thumb, rad/s, by a difference over 1 ms. */
  public double cockRateRadPerS(double timeS) {
    return (cockRad(timeS + 0.0005) - cockRad(timeS - 0.0005)) / 0.001;
  }

  /** Rate of the lead forearm across its length, rad/s. */
  public double armRateRadPerS(double timeS) {
    return across(BodyPoint.LEAD_FOREARM, timeS);
  }

  /** Rate of the pelvis about the vertical, rad/s; positive towards the target. */
  public double turnRateRadPerS(double timeS) {
    double trueS = clock.trueS(timeS);
    return body.joint(Joint.TURN).rateAt(trueS) + body.joint(Joint.HEADING).rateAt(trueS);
  }

  /**
   * Rate of the lead hand across its length, rad/s: arm, roll and wrist together, so that turning
   * the hand about the shaft does not count.
   */
  public double handRateRadPerS(double timeS) {
    return across(BodyPoint.LEAD_HAND, timeS);
  }

  private double across(BodyPoint point, double timeS) {
    double[] rate = new double[3];
    frame(point, timeS).rateRadPerS(rate);
    return Math.hypot(rate[1], rate[2]);
  }

  /** Whether the lesson has a neutral pose, so that wrist angles count from the straight wrist. */
  public boolean absoluteWrist() {
    return absoluteWrist;
  }

  /** Cock at address, rad: the mean over 250..30 ms before the takeaway. */
  public double addressCockRad() {
    return addressCockRad;
  }

  /** Flexion at address, rad: the mean over 250..30 ms before the takeaway. */
  public double addressFlexionRad() {
    return addressFlexionRad;
  }

  /**
   * The true value of every measure this swing has, at every key position. Wrist angles are
   * absolute where the lesson has a neutral pose, else changes since address; times before impact
   * positive.
   */
  public List<TrueMeasure> truthMeasures() {
    List<TrueMeasure> known = measures;
    if (known == null) {
      known = TruthMeasures.of(this, hipHalfDistanceMm);
      measures = known;
    }
    return known;
  }

  /** One true value by the words of the contract; empty where it is not defined. */
  public Optional<TrueMeasure> truth(Measure measure, String at) {
    return truthMeasures().stream()
        .filter(m -> m.measure() == measure && m.at().equals(at))
        .findFirst();
  }
}
