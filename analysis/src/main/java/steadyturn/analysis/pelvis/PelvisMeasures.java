package steadyturn.analysis.pelvis;

import static steadyturn.analysis.measure.MeasureValue.Z95;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
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

  /** Inside a longer gap nothing is known of an instant (our choice), s. */
  private static final double LONGEST_INSIDE_S = 0.12;

  /** Behind a gap, an angle of a greater spread says nothing of a swing (our choice). */
  private static final double LOST_RAD = Math.toRadians(10);

  /** So far off, a place says nothing of a pelvis, which moves by 0.1 m (our choice). */
  private static final double LOST_M = 0.06;

  private static final List<Measure> SINCE_ADDRESS =
      List.of(
          Measure.PELVIS_TURN, Measure.PELVIS_SLIDE, Measure.PELVIS_THRUST, Measure.PELVIS_LIFT);
  private static final List<Measure> ANGLES =
      List.of(Measure.PELVIS_TURN, Measure.PELVIS_TILT, Measure.PELVIS_SIDETILT);
  private static final int[] ANGLE_AT = {0, 4, 5};

  private static final List<Measure> OF_BOTH =
      List.of(
          Measure.PELVIS_SLIDE_PER_TURN,
          Measure.PELVIS_TURN_TO_SLIDE,
          Measure.PELVIS_TURN_SHARE,
          Measure.PELVIS_CENTRE_ALONG,
          Measure.PELVIS_CENTRE_ACROSS);

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

  /** Whether the samples end at a gap. */
  private final boolean isCut;

  private PelvisMeasures(
      PelvisTrack track,
      double hipHalfDistanceMm,
      SkinCourse skin,
      Grade grade,
      Reason caveat,
      boolean isCut) {
    this.isCut = isCut;
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
   * @param isCut whether the track ends at a gap that nothing can be told behind
   */
  public static List<MeasureValue> of(
      PelvisTrack track,
      List<EventTime> events,
      double hipHalfDistanceMm,
      SkinShift skin,
      Reason caveat,
      boolean isCut) {
    PelvisMeasures measures =
        new PelvisMeasures(
            track,
            hipHalfDistanceMm,
            SkinCourse.of(skin, events),
            caveat.isNone() ? Grade.MEASURED : Grade.ESTIMATED,
            caveat,
            isCut);
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
    if (track.gapAt(event.timeS()).filter(g -> g.lengthS() > LONGEST_INSIDE_S).isPresent()) {
      return withheld(event, MeasureReason.GAP_AT);
    }
    PoseSpread spread = PoseSpread.at(track, event.timeS(), event.sdS(), skin);
    List<MeasureValue> out = at(event, spread);
    if (track.hasGapBefore(event.timeS())) {
      out.replaceAll(value -> isLost(value.measure(), spread) ? lost(value) : value);
    }
    return out;
  }

  /** Whether what is left of a measure behind a gap is beyond use. */
  private static boolean isLost(Measure measure, PoseSpread spread) {
    int angle = ANGLES.indexOf(measure);
    if (angle >= 0) {
      return spread.sd(ANGLE_AT[angle]) > LOST_RAD;
    }
    boolean needsTurn = OF_BOTH.contains(measure);
    return losesPlace(spread) || (needsTurn && spread.sd(0) > LOST_RAD);
  }

  private static boolean losesPlace(PoseSpread spread) {
    return IntStream.rangeClosed(1, 3).anyMatch(i -> spread.sd(i) > LOST_M);
  }

  private static MeasureValue lost(MeasureValue value) {
    return MeasureValue.withheld(value.measure(), value.at(), Reason.of(MeasureReason.GAP_BEFORE));
  }

  /** The measures of a key position, each withheld for one reason. */
  private static List<MeasureValue> withheld(EventTime event, MeasureReason why) {
    String at = event.event().word();
    return measuresAt(event.event()).stream()
        .map(m -> MeasureValue.withheld(m, at, Reason.of(why)))
        .toList();
  }

  private static List<Measure> measuresAt(SwingEvent event) {
    List<Measure> out = new ArrayList<>();
    if (event != SwingEvent.ADDRESS) {
      out.addAll(SINCE_ADDRESS);
    }
    out.add(Measure.PELVIS_TILT);
    out.add(Measure.PELVIS_SIDETILT);
    if (event != SwingEvent.ADDRESS && event != SwingEvent.TAKEAWAY) {
      out.addAll(OF_BOTH);
    }
    return out;
  }

  private List<MeasureValue> at(EventTime event, PoseSpread spread) {
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

  private List<MeasureValue> outside(EventTime event) {
    if (isCut) {
      return withheld(event, MeasureReason.GAP_BEFORE);
    }
    Reason why = Reason.of(MeasureReason.OUTSIDE_THE_RESTS);
    return List.of(
        MeasureValue.withheld(Measure.PELVIS_TURN, event.event().word(), why),
        MeasureValue.withheld(Measure.PELVIS_SLIDE, event.event().word(), why));
  }

  private MeasureValue plain(Measure measure, EventTime event, double value, double sd) {
    return MeasureValue.of(measure, event.event().word(), value, sd, gradeAt(event), whyAt(event));
  }

  private Grade gradeAt(EventTime event) {
    return event.grade() == Grade.MEASURED && !track.hasGapBefore(event.timeS())
        ? grade
        : Grade.ESTIMATED;
  }

  private Reason whyAt(EventTime event) {
    if (!caveat.isNone()) {
      return caveat;
    }
    return track.hasGapBefore(event.timeS()) ? Reason.of(MeasureReason.PELVIS_GAP) : event.why();
  }

  private MeasureValue slidePerTurn(EventTime event, PoseSpread spread) {
    double turnDeg = Math.toDegrees(spread.pose().turnRad());
    String at = event.event().word();
    if (Math.abs(turnDeg) < LEAST_TURN_FOR_RATIO_DEG) {
      return MeasureValue.withheld(
          Measure.PELVIS_SLIDE_PER_TURN,
          at,
          MeasureReason.LITTLE_TURN_FOR_RATIO,
          LEAST_TURN_FOR_RATIO_DEG);
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
      return MeasureValue.withheld(Measure.PELVIS_TURN_SHARE, at, MeasureReason.HARDLY_MOVED);
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
          measure, at, MeasureReason.LITTLE_TURN_FOR_CENTRE, LEAST_TURN_FOR_CENTRE_DEG);
    }
    return plain(
        measure, event, 1e3 * placeM.applyAsDouble(spread.pose()), 1e3 * spread.sd(placeM));
  }

  private MeasureValue circle(List<EventTime> events) {
    Optional<EventTime> takeaway = EventTime.of(SwingEvent.TAKEAWAY, events);
    Optional<EventTime> impact = EventTime.of(SwingEvent.IMPACT, events);
    if (takeaway.isEmpty() || impact.isEmpty()) {
      return MeasureValue.withheld(Measure.PELVIS_CIRCLE, "", MeasureReason.NO_TAKEAWAY_OR_IMPACT);
    }
    double fromS = takeaway.get().timeS();
    double toS = impact.get().timeS();
    boolean hasGap = track.hasGapBefore(toS);
    if (toS > track.timeS(track.size() - 1) + 0.02
        || track.longestStepS(fromS, toS) > LONGEST_INSIDE_S
        || (hasGap && losesPlace(PoseSpread.at(track, toS, impact.get().sdS(), skin)))) {
      return MeasureValue.withheld(Measure.PELVIS_CIRCLE, "", MeasureReason.GAP_BEFORE);
    }
    return PelvisCircle.of(
        track,
        fromS,
        toS,
        skin.full(),
        hasGap ? Grade.ESTIMATED : grade,
        hasGap && caveat.isNone() ? Reason.of(MeasureReason.PELVIS_GAP) : caveat);
  }
}
