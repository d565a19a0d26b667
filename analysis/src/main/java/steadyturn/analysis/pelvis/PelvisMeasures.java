package steadyturn.analysis.pelvis;

import static steadyturn.analysis.measure.MeasureValue.Z95;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.ingest.reason.Reason;

/** The pelvis measures of one swing at every key position found, in degrees and millimetres. */
public final class PelvisMeasures {

  private static final double LEAST_TURN_FOR_RATIO_DEG = 15;
  private static final double LEAST_TURN_FOR_CENTRE_DEG = 20;
  private static final double LEAST_MOVE_FOR_SHARE_MM = 15;

  /** Keeps quotients finite where nothing turns or slides at all. */
  private static final double LEAST_RAD = 1e-9;

  private static final double LEAST_CM = 1e-6;

  private final PelvisTrack track;
  private final double hipHalfDistanceMm;
  private final SkinCourse skin;

  /**
   * Grade of everything here and its caveat: estimated where the swing had no true rest to start
   * from.
   */
  private final Grade grade;

  private final Reason caveat;

  private PelvisMeasures(
      PelvisTrack track, double hipHalfDistanceMm, SkinCourse skin, Grade grade, Reason caveat) {
    this.track = track;
    this.hipHalfDistanceMm = hipHalfDistanceMm;
    this.skin = skin;
    this.grade = grade;
    this.caveat = caveat;
  }

  /**
   * Measures one swing at all its key positions.
   *
   * @param hipHalfDistanceMm half the distance between the hip-joint centres, for the turn share
   * @param caveat none for a swing between two true rests, else why its values are estimated
   */
  public static List<MeasureValue> of(
      PelvisTrack track,
      List<EventTime> events,
      double hipHalfDistanceMm,
      SkinShift skin,
      Reason caveat) {
    PelvisMeasures measures =
        new PelvisMeasures(
            track,
            hipHalfDistanceMm,
            SkinCourse.of(skin, events),
            caveat.isNone() ? Grade.MEASURED : Grade.ESTIMATED,
            caveat);
    List<MeasureValue> out = new ArrayList<>();
    for (EventTime event : events) {
      out.addAll(measures.at(event));
    }
    out.add(measures.circle(events));
    return out;
  }

  private List<MeasureValue> at(EventTime event) {
    if (event.timeS() < track.timeS(0) - 0.02
        || event.timeS() > track.timeS(track.size() - 1) + 0.02) {
      return outside(event);
    }
    PoseSpread spread = PoseSpread.at(track, event.timeS(), event.sdS(), skin);
    List<MeasureValue> out = new ArrayList<>();
    String at = event.event().word();
    if (event.event() != SwingEvent.ADDRESS) {
      out.add(
          plain(
              Measure.PELVIS_TURN,
              event,
              Math.toDegrees(spread.pose().turnRad()),
              Math.toDegrees(spread.sd(0))));
      out.add(plain(Measure.PELVIS_SLIDE, event, 1e3 * spread.pose().slideM(), 1e3 * spread.sd(1)));
      out.add(
          plain(Measure.PELVIS_THRUST, event, 1e3 * spread.pose().thrustM(), 1e3 * spread.sd(2)));
      out.add(plain(Measure.PELVIS_LIFT, event, 1e3 * spread.pose().liftM(), 1e3 * spread.sd(3)));
    }
    out.add(
        plain(
            Measure.PELVIS_TILT,
            event,
            Math.toDegrees(spread.pose().tiltRad()),
            Math.toDegrees(spread.sd(4))));
    out.add(
        plain(
            Measure.PELVIS_SIDETILT,
            event,
            Math.toDegrees(spread.pose().sideTiltRad()),
            Math.toDegrees(spread.sd(5))));
    if (event.event() != SwingEvent.ADDRESS && event.event() != SwingEvent.TAKEAWAY) {
      out.add(slidePerTurn(event, spread));
      out.add(turnToSlide(event, spread));
      out.add(turnShare(at, event, spread));
      out.add(centre(Measure.PELVIS_CENTRE_ALONG, event, spread, TurnCentre::alongM));
      out.add(centre(Measure.PELVIS_CENTRE_ACROSS, event, spread, TurnCentre::acrossM));
    }
    return out;
  }

  private static List<MeasureValue> outside(EventTime event) {
    Reason why = Reason.of(MeasureReason.OUTSIDE_THE_RESTS);
    return List.of(
        MeasureValue.withheld(Measure.PELVIS_TURN, event.event().word(), why),
        MeasureValue.withheld(Measure.PELVIS_SLIDE, event.event().word(), why));
  }

  private MeasureValue plain(Measure measure, EventTime event, double value, double sd) {
    return MeasureValue.of(measure, event.event().word(), value, sd, gradeAt(event), whyAt(event));
  }

  private Grade gradeAt(EventTime event) {
    return event.grade() == Grade.MEASURED ? grade : Grade.ESTIMATED;
  }

  private Reason whyAt(EventTime event) {
    return caveat.isNone() ? event.why() : caveat;
  }

  private MeasureValue slidePerTurn(EventTime event, PoseSpread spread) {
    double turnDeg = Math.toDegrees(spread.pose().turnRad());
    String at = event.event().word();
    if (Math.abs(turnDeg) < LEAST_TURN_FOR_RATIO_DEG) {
      return MeasureValue.withheld(
          Measure.PELVIS_SLIDE_PER_TURN,
          at,
          Reason.of(MeasureReason.LITTLE_TURN_FOR_RATIO, LEAST_TURN_FOR_RATIO_DEG));
    }
    ToDoubleFunction<PelvisPose> ratio = p -> 1e3 * p.slideM() / Math.toDegrees(p.turnRad());
    return plain(
        Measure.PELVIS_SLIDE_PER_TURN, event, ratio.applyAsDouble(spread.pose()), spread.sd(ratio));
  }

  /** |turn| / |slide|; where the slide's interval holds zero only a lower bound is known. */
  private MeasureValue turnToSlide(EventTime event, PoseSpread spread) {
    double turnDeg = Math.abs(Math.toDegrees(spread.pose().turnRad()));
    double slideCm = Math.abs(100 * spread.pose().slideM());
    double reachCm = Math.max(LEAST_CM, Z95 * 100 * spread.sd(1));
    String at = event.event().word();
    double least = turnDeg / (slideCm + reachCm);
    if (slideCm <= reachCm) {
      return new MeasureValue(
          Measure.PELVIS_TURN_TO_SLIDE,
          at,
          least,
          least,
          Double.POSITIVE_INFINITY,
          gradeAt(event),
          Reason.of(MeasureReason.AT_LEAST));
    }
    return new MeasureValue(
        Measure.PELVIS_TURN_TO_SLIDE,
        at,
        turnDeg / slideCm,
        least,
        turnDeg / (slideCm - reachCm),
        gradeAt(event),
        whyAt(event));
  }

  /**
   * r|turn| / (r|turn| + |slide|); its interval is what it takes over all turns and slides within
   * 1.96 spreads, as both are folded at zero and no straight line follows them there.
   */
  private MeasureValue turnShare(String at, EventTime event, PoseSpread spread) {
    double turnRad = Math.max(LEAST_RAD, Math.abs(spread.pose().turnRad()));
    double turnMm = hipHalfDistanceMm * turnRad;
    double slideMm = 1e3 * Math.abs(spread.pose().slideM());
    if (turnMm < LEAST_MOVE_FOR_SHARE_MM && slideMm < LEAST_MOVE_FOR_SHARE_MM) {
      return MeasureValue.withheld(
          Measure.PELVIS_TURN_SHARE, at, Reason.of(MeasureReason.HARDLY_MOVED));
    }
    Range share = Range.of(spread, 0, 1, (turn, slide) -> share(Math.abs(turn), Math.abs(slide)));
    return new MeasureValue(
        Measure.PELVIS_TURN_SHARE,
        at,
        share(turnRad, spread.pose().slideM()),
        share.low(),
        share.high(),
        gradeAt(event),
        whyAt(event));
  }

  private double share(double turnRad, double slideM) {
    double turnMm = hipHalfDistanceMm * Math.max(LEAST_RAD, turnRad);
    return 100 * turnMm / (turnMm + 1e3 * Math.abs(slideM));
  }

  private MeasureValue centre(
      Measure measure, EventTime event, PoseSpread spread, ToDoubleFunction<PelvisPose> placeM) {
    String at = event.event().word();
    if (Math.abs(Math.toDegrees(spread.pose().turnRad())) < LEAST_TURN_FOR_CENTRE_DEG) {
      return MeasureValue.withheld(
          measure, at, Reason.of(MeasureReason.LITTLE_TURN_FOR_CENTRE, LEAST_TURN_FOR_CENTRE_DEG));
    }
    return plain(
        measure, event, 1e3 * placeM.applyAsDouble(spread.pose()), 1e3 * spread.sd(placeM));
  }

  private MeasureValue circle(List<EventTime> events) {
    Optional<EventTime> takeaway = EventTime.of(SwingEvent.TAKEAWAY, events);
    Optional<EventTime> impact = EventTime.of(SwingEvent.IMPACT, events);
    if (takeaway.isEmpty() || impact.isEmpty()) {
      return MeasureValue.withheld(
          Measure.PELVIS_CIRCLE, "", Reason.of(MeasureReason.NO_TAKEAWAY_OR_IMPACT));
    }
    return PelvisCircle.of(
        track, takeaway.get().timeS(), impact.get().timeS(), skin.full(), grade, caveat);
  }
}
