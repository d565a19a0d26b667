package steadyturn.analysis.lesson;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.limits.ScaleDoubt;
import steadyturn.analysis.limits.SwingLimits;
import steadyturn.analysis.measure.Curve;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.pelvis.PelvisCurves;
import steadyturn.analysis.pelvis.PelvisMeasures;
import steadyturn.analysis.pelvis.PelvisTrack;
import steadyturn.analysis.swing.Faults;
import steadyturn.analysis.swing.Swing;
import steadyturn.fusion.wear.pelvis.LeverArm;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.Player;

/** Puts the results of one swing together. */
record SwingReport(Player player, AnalysisSettings settings, Refusals refusals) {

  /** Flag of a swing of which values are withheld as no body moves so. */
  private static final String NO_BODY_MOVES_SO = "no-body-moves-so";

  /** The results; of a swing that meets a mistake of the program its key positions only. */
  SwingResult kept(
      GatheredSwing gathered,
      Optional<PelvisLesson.PelvisSwing> pelvis,
      int number,
      Faults faults) {
    return faults
        .keep(gathered.recording(), gathered.swing().startS(), () -> of(gathered, pelvis, number))
        .orElseGet(() -> failed(gathered, number));
  }

  private SwingResult of(
      GatheredSwing gathered, Optional<PelvisLesson.PelvisSwing> pelvis, int number) {
    Swing swing = gathered.swing();
    List<String> flags = new ArrayList<>(swing.flags());
    List<MeasureValue> measures = new ArrayList<>();
    List<Curve> curves = new ArrayList<>();
    if (pelvis.isPresent()) {
      pelvis.get().flags().stream().filter(f -> !flags.contains(f)).forEach(flags::add);
      addPelvis(swing, pelvis.get(), measures, curves);
    } else {
      measures.addAll(noPelvis(gathered.pelvis().missing()));
    }
    measures.addAll(gathered.arm().measures());
    curves.addAll(gathered.arm().curves());
    gathered.arm().flags().stream().filter(f -> !flags.contains(f)).forEach(flags::add);
    ScaleDoubt scale = refusals.scaleDoubt();
    List<MeasureValue> kept =
        SwingLimits.kept(
            number,
            measures.stream()
                .map(value -> scale.in(refusals.of(gathered.recording(), value)))
                .toList(),
            swing.events());
    if (kept.stream().anyMatch(value -> SwingLimits.whyOf(value).isPresent())) {
      flags.add(NO_BODY_MOVES_SO);
    }
    return new SwingResult(
        number, swing.club(), swing.kind(), flags, swing.events(), kept, curves, swing.note());
  }

  private static SwingResult failed(GatheredSwing gathered, int number) {
    Swing swing = gathered.swing();
    List<String> flags = new ArrayList<>(swing.flags());
    flags.add(ArmReading.FAULT);
    return new SwingResult(
        number,
        swing.club(),
        swing.kind(),
        flags,
        swing.events(),
        noPelvis(MeasureReason.SWING_FAILED),
        List.of(),
        swing.note());
  }

  private void addPelvis(
      Swing swing,
      PelvisLesson.PelvisSwing pelvis,
      List<MeasureValue> measures,
      List<Curve> curves) {
    PelvisTrack track =
        PelvisTrack.of(
            pelvis.fit().motion(),
            pelvis.geometry(),
            player.handed(),
            pelvis.aim().targetFromHipsRad(),
            pelvis.aim().sdRad(),
            PelvisReading.takeawayS(swing));
    boolean isExplained = isExplained(pelvis.flags());
    PelvisMeasures.of(
            track,
            swing.events(),
            LeverArm.hipHalfDistanceMm(LeverArm.pelvisWidthMm(player)),
            settings.skin(),
            caveat(pelvis.flags()),
            pelvis.flags().contains(SwingRests.FINISH_NOT_SEEN))
        .stream()
        .map(v -> isExplained || PelvisMeasures.isAngle(v.measure()) ? v : unexplained(v))
        .forEach(measures::add);
    if (settings.curves()) {
      PelvisCurves.of(track, swing.events(), settings.skin()).stream()
          .filter(curve -> isExplained || curve.unit().equals("deg"))
          .forEach(curves::add);
    }
  }

  /**
   * Where neither standing still nor drifting agrees with the rest of a swing, how fast the pelvis
   * was at address is not known, and no place follows from it.
   */
  private static boolean isExplained(List<String> flags) {
    return !flags.containsAll(List.of(SwingRests.ADDRESS_NOT_STILL, PelvisLesson.OFF_THE_LESSON));
  }

  private static MeasureValue unexplained(MeasureValue value) {
    return MeasureValue.withheld(value.measure(), value.at(), MeasureReason.ADDRESS_UNEXPLAINED);
  }

  private static Reason caveat(List<String> flags) {
    if (flags.contains(SwingRests.ADDRESS_NOT_STILL)) {
      return Reason.of(MeasureReason.ADDRESS_NOT_STILL);
    }
    if (flags.contains(SwingRests.FINISH_NOT_HELD)) {
      return Reason.of(MeasureReason.FINISH_NOT_HELD);
    }
    if (flags.contains(SwingRests.FINISH_NOT_SEEN)) {
      return Reason.of(MeasureReason.FINISH_NOT_SEEN);
    }
    if (flags.contains(SwingRests.ADDRESS_SHORT)) {
      return Reason.of(MeasureReason.ADDRESS_SHORT);
    }
    return Reason.NONE;
  }

  private static List<MeasureValue> noPelvis(MeasureReason why) {
    return List.of(
        MeasureValue.withheld(Measure.PELVIS_TURN, "", why),
        MeasureValue.withheld(Measure.PELVIS_SLIDE, "", why));
  }
}
