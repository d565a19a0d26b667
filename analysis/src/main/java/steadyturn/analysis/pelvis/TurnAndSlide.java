package steadyturn.analysis.pelvis;

import static steadyturn.analysis.measure.MeasureValue.Z95;

import java.util.List;
import java.util.function.ToDoubleFunction;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.ingest.reason.Reason;

/**
 * What turn and slide say together at one key position: their quotients, and the point turned
 * about.
 */
record TurnAndSlide(
    PoseSpread spread, String at, Grade grade, Reason why, double hipHalfDistanceMm) {

  static final List<Measure> MEASURES =
      List.of(
          Measure.PELVIS_SLIDE_PER_TURN,
          Measure.PELVIS_TURN_TO_SLIDE,
          Measure.PELVIS_TURN_SHARE,
          Measure.PELVIS_CENTRE_ALONG,
          Measure.PELVIS_CENTRE_ACROSS,
          Measure.PELVIS_CENTRE_DISTANCE);

  private static final double LEAST_TURN_FOR_RATIO_DEG = 15;
  private static final double LEAST_TURN_FOR_CENTRE_DEG = 20;
  private static final double LEAST_MOVE_FOR_SHARE_MM = 15;

  /** A distance this many spreads from zero may still be zero: 95 % of a round cloud of two. */
  private static final double Z95_OF_TWO = Math.sqrt(-2 * Math.log(0.05));

  /** Keeps quotients finite where nothing turns or slides at all. */
  private static final double LEAST_RAD = 1e-9;

  private static final double LEAST_CM = 1e-6;

  /** One of the {@link #MEASURES}. */
  MeasureValue of(Measure measure) {
    return switch (measure) {
      case PELVIS_SLIDE_PER_TURN ->
          turnDeg() < LEAST_TURN_FOR_RATIO_DEG
              ? little(measure, MeasureReason.LITTLE_TURN_FOR_RATIO, LEAST_TURN_FOR_RATIO_DEG)
              : scaled(measure, p -> p.slideM() / Math.toDegrees(p.turnRad()));
      case PELVIS_TURN_TO_SLIDE -> turnToSlide();
      case PELVIS_TURN_SHARE -> turnShare();
      case PELVIS_CENTRE_ALONG -> centre(measure, TurnCentre::alongM);
      case PELVIS_CENTRE_ACROSS -> centre(measure, TurnCentre::acrossM);
      case PELVIS_CENTRE_DISTANCE -> centreDistance();
      default -> throw new IllegalArgumentException(measure.id() + " is not of turn and slide");
    };
  }

  private double turnDeg() {
    return Math.abs(Math.toDegrees(spread.pose().turnRad()));
  }

  private MeasureValue little(Measure measure, MeasureReason why, double leastDeg) {
    return MeasureValue.withheld(measure, at, why, leastDeg);
  }

  private MeasureValue scaled(Measure measure, ToDoubleFunction<PelvisPose> inM) {
    double value = 1e3 * inM.applyAsDouble(spread.pose());
    return MeasureValue.of(measure, at, value, 1e3 * spread.sd(inM), grade, why);
  }

  /**
   * |turn| / |slide|; its interval is what it takes over all turns and slides within 1.96 spreads.
   * Where the slide's interval holds zero only a lower bound is known.
   */
  private MeasureValue turnToSlide() {
    double slideCm = Math.abs(100 * spread.pose().slideM());
    boolean isBound = slideCm <= Math.max(LEAST_CM, Z95 * 100 * spread.sd(1));
    Range range = Range.of(spread, 0, 1, TurnAndSlide::degPerCm);
    return new MeasureValue(
        Measure.PELVIS_TURN_TO_SLIDE,
        at,
        isBound ? range.low() : degPerCm(spread.pose().turnRad(), spread.pose().slideM()),
        range.low(),
        isBound ? Double.POSITIVE_INFINITY : range.high(),
        grade,
        isBound ? Reason.of(MeasureReason.AT_LEAST) : why);
  }

  private static double degPerCm(double turnRad, double slideM) {
    return Math.abs(Math.toDegrees(turnRad)) / Math.max(LEAST_CM, Math.abs(100 * slideM));
  }

  /**
   * r|turn| / (r|turn| + |slide|); its interval is what it takes over all turns and slides within
   * 1.96 spreads, as both are folded at zero and no straight line follows them there.
   */
  private MeasureValue turnShare() {
    double turnRad = spread.pose().turnRad();
    double slideM = spread.pose().slideM();
    if (turnMm(turnRad) < LEAST_MOVE_FOR_SHARE_MM
        && 1e3 * Math.abs(slideM) < LEAST_MOVE_FOR_SHARE_MM) {
      return MeasureValue.withheld(Measure.PELVIS_TURN_SHARE, at, MeasureReason.HARDLY_MOVED);
    }
    Range share = Range.of(spread, 0, 1, this::share);
    return new MeasureValue(
        Measure.PELVIS_TURN_SHARE,
        at,
        share(turnRad, slideM),
        share.low(),
        share.high(),
        grade,
        why);
  }

  private double turnMm(double turnRad) {
    return hipHalfDistanceMm * Math.max(LEAST_RAD, Math.abs(turnRad));
  }

  private double share(double turnRad, double slideM) {
    return 100 * turnMm(turnRad) / (turnMm(turnRad) + 1e3 * Math.abs(slideM));
  }

  private MeasureValue centre(Measure measure, ToDoubleFunction<PelvisPose> placeM) {
    return turnDeg() < LEAST_TURN_FOR_CENTRE_DEG
        ? little(measure, MeasureReason.LITTLE_TURN_FOR_CENTRE, LEAST_TURN_FOR_CENTRE_DEG)
        : scaled(measure, placeM);
  }

  /**
   * How far the point lies from mid-hip at address; its spread is that along the line to it. A
   * distance that the spread alone may make reaches down to zero.
   */
  private MeasureValue centreDistance() {
    MeasureValue along = centre(Measure.PELVIS_CENTRE_ALONG, TurnCentre::alongM);
    MeasureValue across = centre(Measure.PELVIS_CENTRE_ACROSS, TurnCentre::acrossM);
    if (!along.given()) {
      return along.as(Measure.PELVIS_CENTRE_DISTANCE);
    }
    double mm = Math.hypot(along.value(), across.value());
    double direction = Math.atan2(across.value(), along.value());
    double sdMm =
        1e3
            * spread.sd(
                p ->
                    Math.cos(direction) * TurnCentre.alongM(p)
                        + Math.sin(direction) * TurnCentre.acrossM(p));
    double low = mm < Z95_OF_TWO * sdMm ? 0 : mm - Z95 * sdMm;
    return new MeasureValue(
        Measure.PELVIS_CENTRE_DISTANCE, at, mm, low, mm + Z95 * sdMm, grade, why);
  }
}
