package steadyturn.analysis.lesson;

import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.function.Supplier;
import steadyturn.analysis.swing.ClockSpread;
import steadyturn.analysis.swing.Faults;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.wrist.WristClocks;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.wear.pelvis.AimCarry;
import steadyturn.fusion.wear.pelvis.AimSight;
import steadyturn.fusion.wear.wrist.WristSteps;
import steadyturn.ingest.clock.AlignedRecording;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;

/**
 * A swing with what it needs, cut out of its recording, so that the recording itself can be let go.
 *
 * @param recording id of the recording it came from
 * @param pelvis the rests of the pelvis unit, and its samples between them
 * @param armRead what forearm and hand said, or will have said: it may be read on another core
 *     while the pelvis is estimated
 * @param steps what the wear steps before it said of the pelvis unit
 * @param aim the aim step as seen from this swing's address, where it could be carried so far
 */
record GatheredSwing(
    String recording,
    Swing swing,
    PelvisReading pelvis,
    CompletableFuture<ArmReading> armRead,
    PelvisSteps steps,
    Optional<AimSight> aim) {

  /** The middle of the stretch that counts as address, s. */
  private static final double BEFORE_TAKEAWAY_S = 0.14;

  /** What forearm and hand said, once that is known. */
  ArmReading arm() {
    return armRead.join();
  }

  /** The same swing with what was noted of it since. */
  GatheredSwing noted(Swing again) {
    return new GatheredSwing(recording, swing.noted(again), pelvis, armRead, steps, aim);
  }

  /** The blow, or the middle of a swing without one, s. */
  static double middleS(Swing swing) {
    return swing.timeS(SwingEvent.IMPACT).orElse((swing.startS() + swing.endS()) / 2);
  }

  /** A swing with what the wear steps before it said. */
  record Found(Swing swing, PelvisSteps steps, Optional<AimCarry> aim) {

    /** The aim as seen from the middle of the address. */
    Optional<AimSight> sight() {
      return aim.flatMap(
          carry ->
              swing
                  .event(SwingEvent.TAKEAWAY)
                  .flatMap(takeaway -> carry.at(takeaway.timeS() - BEFORE_TAKEAWAY_S)));
    }
  }

  /**
   * What swings are cut out of.
   *
   * @param isAlone whether the swing is the only one, so that another core is free for its arm
   */
  record Cut(
      String recording,
      AlignedRecording aligned,
      RestBiases biases,
      WristSteps worn,
      Refusals refusals,
      Faults faults,
      boolean withCurves,
      boolean isAlone) {

    GatheredSwing of(Found found) {
      Swing swing = found.swing;
      double middleS = middleS(swing);
      Recording whole = ClockSpread.tied(aligned, middleS);
      boolean isLoose = whole.units().size() < aligned.recording().units().size();
      Recording tied = refusals.unmoved(whole, LessonMarks.takeawayS(swing));
      Supplier<ArmReading> arm = () -> arm(tied, swing, middleS, isLoose);
      CompletableFuture<ArmReading> armRead =
          isAlone
              ? CompletableFuture.supplyAsync(arm)
              : CompletableFuture.completedFuture(arm.get());
      return new GatheredSwing(
          recording,
          ClockSpread.added(swing, aligned),
          pelvis(tied, found),
          armRead,
          found.steps,
          found.sight());
    }

    private PelvisReading pelvis(Recording tied, Found found) {
      return faults
          .keep(
              recording,
              PelvisReading.takeawayS(found.swing),
              () ->
                  ClockSpread.isTied(aligned, BodyPoint.PELVIS, middleS(found.swing))
                      ? PelvisReading.of(tied, found.swing, found.steps)
                      : PelvisReading.UNTIED)
          .orElse(PelvisReading.FAILED);
    }

    private ArmReading arm(Recording tied, Swing swing, double middleS, boolean isLoose) {
      ArmReading arm =
          faults
              .keep(
                  recording,
                  middleS,
                  () ->
                      ArmReading.of(
                          tied, biases, swing, worn, WristClocks.of(aligned, middleS), withCurves))
              .orElse(ArmReading.FAILED);
      return isLoose ? arm.flagged(ClockSpread.LOOSE) : arm;
    }
  }
}
