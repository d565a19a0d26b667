package steadyturn.analysis.pelvis;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.ingest.reason.Reason;

/**
 * The pelvis measures of one swing at every key position found, in degrees and millimetres.
 *
 * @param hipHalfDistanceMm half the distance between the hip-joint centres, for the turn share
 * @param grade of everything here; estimated where the swing had no true rest to start from
 * @param isCut whether the samples end at a gap
 */
public record PelvisMeasures(
    PelvisTrack track,
    double hipHalfDistanceMm,
    SkinCourse skin,
    Grade grade,
    Reason caveat,
    boolean isCut) {

  /** Inside a longer gap nothing is known of an instant (our choice), s. */
  private static final double LONGEST_INSIDE_S = 0.12;

  /** Behind a gap, an angle of a greater spread says nothing of a swing (our choice). */
  private static final double LOST_RAD = Math.toRadians(10);

  /** So far off, a place says nothing of a pelvis, which moves by 0.1 m (our choice). */
  private static final double LOST_M = 0.06;

  private static final Set<Measure> AT_ADDRESS =
      Set.of(Measure.PELVIS_TILT, Measure.PELVIS_SIDETILT);

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
    PoseSpread spread = PoseSpread.at(track, event.shownS(), event.sdS(), skin);
    Stream<MeasureValue> all = at(event, spread);
    return track.hasGapBefore(event.timeS())
        ? all.map(value -> isLost(value.measure(), spread) ? lost(value) : value).toList()
        : all.toList();
  }

  /** Whether a measure is an angle of the pelvis, which needs no place. */
  public static boolean isAngle(Measure measure) {
    int component = PelvisPose.MEASURES.indexOf(measure);
    return component >= 0 && PelvisPose.isAngle(component);
  }

  /** Whether what is left of a measure behind a gap is beyond use. */
  private static boolean isLost(Measure measure, PoseSpread spread) {
    if (isAngle(measure)) {
      return spread.sd(PelvisPose.MEASURES.indexOf(measure)) > LOST_RAD;
    }
    return losesPlace(spread)
        || (TurnAndSlide.MEASURES.contains(measure) && spread.sd(0) > LOST_RAD);
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
    return Stream.concat(ofPose(event), ofBoth(event)).toList();
  }

  private static Stream<Measure> ofPose(SwingEvent event) {
    return PelvisPose.MEASURES.stream()
        .filter(m -> event != SwingEvent.ADDRESS || AT_ADDRESS.contains(m));
  }

  private static Stream<Measure> ofBoth(SwingEvent event) {
    boolean isBefore = event == SwingEvent.ADDRESS || event == SwingEvent.TAKEAWAY;
    return isBefore ? Stream.empty() : TurnAndSlide.MEASURES.stream();
  }

  private Stream<MeasureValue> at(EventTime event, PoseSpread spread) {
    Grade gradeAt = gradeAt(event);
    Reason why = whyAt(event);
    String at = event.event().word();
    double[] pose = spread.pose().toArray();
    TurnAndSlide both = new TurnAndSlide(spread, at, gradeAt, why, hipHalfDistanceMm);
    return Stream.concat(
        ofPose(event.event())
            .map(
                m -> {
                  int i = PelvisPose.MEASURES.indexOf(m);
                  double value = PelvisPose.outward(i, pose[i]);
                  double sd = PelvisPose.outward(i, spread.sd(i));
                  return MeasureValue.of(m, at, value, sd, gradeAt, why);
                }),
        ofBoth(event.event()).map(both::of));
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
