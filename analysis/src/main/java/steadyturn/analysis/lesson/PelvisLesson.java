package steadyturn.analysis.lesson;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.fusion.displace.Anchor;
import steadyturn.fusion.displace.LessonEstimate;
import steadyturn.fusion.displace.LessonFit;
import steadyturn.fusion.displace.SwingFit;
import steadyturn.fusion.displace.SwingSpan;
import steadyturn.fusion.displace.UnitPriors;
import steadyturn.fusion.rest.Rest;
import steadyturn.fusion.rest.RestGate;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.pelvis.PelvisGeometry;
import steadyturn.fusion.wear.pelvis.TurnOnSpot;
import steadyturn.fusion.wear.pelvis.TurnStep;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.UnitStream;

/**
 * The pelvis over all swings that share one wearing of the unit: rests, one estimate, one geometry.
 */
final class PelvisLesson {

  /** Twice the log of how much better a drifting address must explain a swing than a still one. */
  private static final double DRIFT_EVIDENCE = 60;

  /** A slow turn passes for still while it begins and ends: that much is not counted as rest, s. */
  private static final double SLOW_START_S = 0.25;

  private final AnalysisSettings settings;
  private final PelvisSteps steps;
  private final Vector3 bias;
  private final PelvisGeometry worn;

  private PelvisLesson(Player player, AnalysisSettings settings, PelvisSteps steps) {
    this.settings = settings;
    this.steps = steps;
    this.bias = steps.tableBias().orElse(Vector3.ZERO);
    this.worn = steps.geometry(player);
  }

  /** What was found of the pelvis in one swing. */
  record PelvisSwing(SwingFit fit, PelvisGeometry geometry, Aim aim, List<String> flags) {}

  /** Estimates of all swings that have a pelvis window, by swing. */
  static Map<GatheredSwing, PelvisSwing> estimate(
      Player player, AnalysisSettings settings, List<GatheredSwing> swings) {
    Map<PelvisSteps, List<GatheredSwing>> wearings = new HashMap<>();
    for (GatheredSwing swing : swings) {
      if (swing.pelvis().filter(w -> w.size() > 50).isPresent()) {
        wearings.computeIfAbsent(swing.steps(), s -> new ArrayList<>()).add(swing);
      }
    }
    Map<GatheredSwing, PelvisSwing> out = new HashMap<>();
    wearings.forEach(
        (steps, worn) -> {
          PelvisLesson lesson = new PelvisLesson(player, settings, steps);
          if (settings.together()) {
            out.putAll(lesson.estimate(worn));
          } else {
            worn.forEach(swing -> out.putAll(lesson.estimate(List.of(swing))));
          }
        });
    return out;
  }

  private Map<GatheredSwing, PelvisSwing> estimate(List<GatheredSwing> swings) {
    List<SwingRests> rests = new ArrayList<>();
    for (GatheredSwing swing : swings) {
      UnitStream window = pelvis(swing);
      rests.add(
          SwingRests.of(swing.swing(), window, restBias(swing, window), worn.leverArmUnitM()));
    }
    LessonEstimate estimate = new LessonEstimate(priors(swings.get(0)), settings.gravityMps2());
    rests = withDriftsNamed(estimate, swings, rests);
    List<SwingSpan> spans = new ArrayList<>();
    rests.forEach(r -> spans.add(r.span()));
    Optional<SwingSpan> turn = turnSpan();
    turn.ifPresent(spans::add);
    LessonFit fit = estimate.fit(spans, bias);
    PelvisGeometry geometry =
        turn.isPresent()
            ? TurnOnSpot.fold(worn, fit.swings().get(spans.size() - 1).motion())
            : worn;
    List<Aim> aims =
        new TargetLine(settings.aimSdRad(), priors(swings.get(0)).gyroMatrix())
            .of(swings.stream().map(GatheredSwing::aim).toList(), geometry.qUnitPelvis());
    Map<GatheredSwing, PelvisSwing> out = new HashMap<>();
    for (int i = 0; i < swings.size(); i++) {
      out.put(
          swings.get(i),
          new PelvisSwing(
              fit.swings().get(i),
              geometry,
              aims.get(i),
              flags(rests.get(i), fit.swings().get(i))));
    }
    return out;
  }

  private static List<String> flags(SwingRests rests, SwingFit fit) {
    List<String> flags = new ArrayList<>(rests.flags());
    if (!fit.taught()) {
      flags.add("off-the-lesson");
    }
    return flags;
  }

  private UnitPriors priors(GatheredSwing any) {
    boolean calibrated = pelvis(any).facts().calibrated();
    UnitPriors priors = calibrated ? UnitPriors.calibrated() : UnitPriors.raw();
    return steps.tableBias().isPresent()
        ? priors.withGyroBias(Math.toRadians(calibrated ? 0.03 : 0.08))
        : priors;
  }

  private static UnitStream pelvis(GatheredSwing swing) {
    return swing.pelvis().orElseThrow();
  }

  /** Bias for the rest gate: from the table, else the mean rate just before the takeaway. */
  private Vector3 restBias(GatheredSwing swing, UnitStream window) {
    if (steps.tableBias().isPresent()) {
      return bias;
    }
    double takeawayS =
        swing
            .swing()
            .event(SwingEvent.TAKEAWAY)
            .map(EventTime::timeS)
            .orElse(swing.swing().startS() + 1);
    return RestGate.meanRateRadPerS(window, takeawayS - 0.6, takeawayS - 0.05);
  }

  /**
   * An accelerometer cannot tell a still address from one that drifts at constant speed; the
   * finish, the other swings and the feet can. A swing that a drift explains much better is taken
   * as drifting.
   */
  private List<SwingRests> withDriftsNamed(
      LessonEstimate estimate, List<GatheredSwing> swings, List<SwingRests> rests) {
    List<SwingSpan> still = new ArrayList<>();
    List<SwingSpan> drifting = new ArrayList<>();
    List<SwingRests> asDrifting = new ArrayList<>();
    for (int i = 0; i < swings.size(); i++) {
      Swing swing = swings.get(i).swing();
      SwingRests r = rests.get(i);
      SwingRests drift = r.asDrifting(swing, worn.leverArmUnitM());
      asDrifting.add(drift);
      still.add(r.withWitnesses(swing, worn.leverArmUnitM()).span());
      drifting.add(drift.span());
    }
    LessonFit asStill = estimate.fit(still, bias);
    LessonFit asMoving = estimate.fit(drifting, bias);
    List<SwingRests> out = new ArrayList<>();
    for (int i = 0; i < swings.size(); i++) {
      double gain = asStill.swings().get(i).cost() - asMoving.swings().get(i).cost();
      boolean known = rests.get(i).flags().contains(SwingRests.ADDRESS_NOT_STILL);
      out.add(known || gain > DRIFT_EVIDENCE ? asDrifting.get(i) : rests.get(i));
    }
    return out;
  }

  /** The turn on the spot between the two rests around it; none when it was not good enough. */
  private Optional<SwingSpan> turnSpan() {
    return steps.turnOnSpot().map(PelvisLesson::span);
  }

  private static SwingSpan span(TurnStep turn) {
    Rest before = turn.before().orElseThrow();
    Rest after = turn.after().orElseThrow();
    return SwingSpan.of(
        turn.samples().between(before.startS() - 0.01, after.endS() + 0.01),
        List.of(
            Anchor.address(before.startS(), before.endS() - SLOW_START_S),
            Anchor.address(after.startS() + SLOW_START_S, after.endS())),
        List.of());
  }
}
