package steadyturn.analysis.wrist;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.ingest.reason.Reason;

/** The wrist's angles at the key positions and what the release says of them. */
final class WristMeasures {

  private static final Reason CUT = Reason.of(MeasureReason.GYRO_CUT);
  private static final Reason GAP = Reason.of(MeasureReason.WRIST_GAP);
  // the cock is largest on the way down, or shortly before it: our assumption
  private static final double BEFORE_TOP_S = 0.2;
  private static final List<Measure> RELEASE =
      List.of(
          Measure.WRIST_RELEASE,
          Measure.WRIST_RELEASE_PART,
          Measure.WRIST_RATE,
          Measure.WRIST_RATE_TIME);
  private static final List<SwingEvent> KEPT_EVENTS =
      List.of(SwingEvent.LEAD_ARM_LEVEL_DOWN, SwingEvent.SHAFT_LEVEL_DOWN);

  private final WristMotion motion;
  private final Swing swing;
  private final boolean absolute;
  private final Optional<Release> release;

  WristMeasures(WristMotion motion, Swing swing) {
    this.motion = motion;
    this.swing = swing;
    this.absolute = motion.absolute();
    Optional<EventTime> top = swing.event(SwingEvent.TOP);
    Optional<EventTime> impact = swing.event(SwingEvent.IMPACT);
    this.release = top.flatMap(t -> impact.flatMap(i -> Release.of(motion, t, i)));
  }

  /** Every wrist measure withheld for one reason. */
  static List<MeasureValue> withheld(Reason why) {
    List<MeasureValue> out = new ArrayList<>();
    out.add(MeasureValue.withheld(Measure.WRIST_COCK, SwingEvent.TOP.word(), why));
    out.add(MeasureValue.withheld(Measure.WRIST_COCK_MAX, "", why));
    RELEASE.forEach(m -> out.add(MeasureValue.withheld(m, "", why)));
    KEPT_EVENTS.forEach(e -> out.add(MeasureValue.withheld(Measure.WRIST_KEPT, e.word(), why)));
    return out;
  }

  List<MeasureValue> all() {
    List<MeasureValue> out = new ArrayList<>();
    for (EventTime at : swing.events()) {
      boolean seen = at.timeS() >= motion.timeS(0) && at.timeS() <= motion.timeS(motion.size() - 1);
      // without a pose the cock at address is zero by definition
      if (seen && (absolute || at.event() != SwingEvent.ADDRESS)) {
        out.add(orWithheld(Measure.WRIST_COCK, at, this::cock));
        out.add(orWithheld(Measure.WRIST_FLEXION, at, this::flexion));
      }
    }
    out.add(cockMax());
    out.addAll(releaseMeasures());
    KEPT_EVENTS.forEach(e -> out.add(kept(e)));
    return out;
  }

  /** The value at an instant, where cuts and gaps let it be told. */
  private MeasureValue orWithheld(
      Measure measure, EventTime at, Function<EventTime, MeasureValue> value) {
    if (motion.cutBeyondRepairBefore(at.timeS())) {
      return MeasureValue.withheld(measure, at.event().word(), CUT);
    }
    return motion.gaps().hide(at.timeS())
        ? MeasureValue.withheld(measure, at.event().word(), GAP)
        : value.apply(at);
  }

  private MeasureValue cock(EventTime at) {
    int k = nearest(at.shownS());
    double value = motion.cockDegAt(at.shownS());
    double sd = motion.spreads().cockDeg(k);
    if (absolute) {
      value += motion.absoluteCockDeg(k) - motion.cockDeg(k);
      sd = motion.spreads().absoluteCockDeg(k);
    }
    return value(Measure.WRIST_COCK, at, value, cockSdDeg(k, at, sd));
  }

  private double cockSdDeg(int k, EventTime at, double sdDeg) {
    return switch (at.event()) {
      case LEAD_ARM_LEVEL_BACK, LEAD_ARM_LEVEL_DOWN, LEAD_ARM_LEVEL_THROUGH ->
          motion.spreads().cockAtLevelDeg(k, at, false);
      default ->
          at.event() == SwingEvent.SHAFT_LEVEL_DOWN && motion.fromShaft()
              ? motion.spreads().cockAtLevelDeg(k, at, true)
              : Math.hypot(sdDeg, motion.cockRateDegPerS(k) * at.sdS());
    };
  }

  private MeasureValue flexion(EventTime at) {
    int k = nearest(at.shownS());
    double value = absolute ? motion.absoluteFlexionDeg(k) : motion.flexionDeg(k);
    double sd = absolute ? motion.spreads().absoluteFlexionDeg(k) : motion.spreads().flexionDeg(k);
    return value(Measure.WRIST_FLEXION, at, value, sd);
  }

  private static MeasureValue value(Measure measure, EventTime at, double value, double sd) {
    return MeasureValue.of(measure, at.event().word(), value, sd, at.grade(), at.why());
  }

  private int nearest(double timeS) {
    int k = Math.max(1, Math.min(motion.size() - 1, motion.indexAt(timeS)));
    return timeS - motion.timeS(k - 1) < motion.timeS(k) - timeS ? k - 1 : k;
  }

  private MeasureValue cockMax() {
    int best = nearest(swing.timeS(SwingEvent.TAKEAWAY).orElseThrow());
    int end = nearest(swing.timeS(SwingEvent.IMPACT).orElseThrow());
    for (int k = best; k < end; k++) {
      best = motion.cockDeg(k) > motion.cockDeg(best) ? k : best;
    }
    if (motion.cutBeyondRepairBefore(motion.timeS(best))) {
      return MeasureValue.withheld(Measure.WRIST_COCK_MAX, "", CUT);
    }
    if (isHidden(Math.min(topS() - BEFORE_TOP_S, motion.timeS(best)))) {
      return MeasureValue.withheld(Measure.WRIST_COCK_MAX, "", GAP);
    }
    double value = absolute ? motion.absoluteCockDeg(best) : motion.cockDeg(best);
    double sd = absolute ? motion.spreads().absoluteCockDeg(best) : motion.spreads().cockDeg(best);
    return MeasureValue.of(Measure.WRIST_COCK_MAX, "", value, sd, Grade.MEASURED, Reason.NONE);
  }

  private List<MeasureValue> releaseMeasures() {
    if (!isHidden(topS()) && release.isPresent()) {
      return release.get().measures();
    }
    Reason why = isHidden(topS()) ? GAP : Reason.of(MeasureReason.NO_PLATEAU);
    return RELEASE.stream().map(m -> MeasureValue.withheld(m, "", why)).toList();
  }

  private double topS() {
    return swing.timeS(SwingEvent.TOP).orElseThrow();
  }

  /** Whether the wrist was not seen all the way from an instant to impact. */
  private boolean isHidden(double fromS) {
    double impactS = swing.timeS(SwingEvent.IMPACT).orElseThrow();
    return motion.gaps().touch(fromS, impactS) || motion.gaps().isBeyond(impactS);
  }

  private MeasureValue kept(SwingEvent event) {
    Optional<EventTime> at = swing.event(event);
    if (at.isEmpty()) {
      return MeasureValue.withheld(
          Measure.WRIST_KEPT, event.word(), MeasureReason.NO_POSITION, event.word());
    }
    if (isHidden(topS())) {
      return MeasureValue.withheld(Measure.WRIST_KEPT, event.word(), GAP);
    }
    if (release.isEmpty() || release.get().plateau().deg() < Release.LEAST_PLATEAU_DEG) {
      return MeasureValue.withheld(
          Measure.WRIST_KEPT, event.word(), MeasureReason.LITTLE_COCK, Release.LEAST_PLATEAU_DEG);
    }
    if (motion.cutBeyondRepairBefore(at.get().timeS())) {
      return MeasureValue.withheld(Measure.WRIST_KEPT, event.word(), CUT);
    }
    Plateau plateau = release.get().plateau();
    int k = nearest(at.get().shownS());
    double part = motion.cockDegAt(at.get().shownS()) / plateau.deg();
    double angleSd = plateau.againstSdDeg(motion, k, part);
    double movingSd = motion.cockRateDegPerS(k) * at.get().sdS();
    return value(
        Measure.WRIST_KEPT,
        at.get(),
        100 * part,
        100 * Math.hypot(angleSd, movingSd) / plateau.deg());
  }
}
