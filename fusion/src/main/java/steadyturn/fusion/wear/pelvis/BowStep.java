package steadyturn.fusion.wear.pelvis;

import java.util.List;
import java.util.stream.IntStream;
import steadyturn.fusion.rest.RestGate;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.PrincipalAxis;
import steadyturn.fusion.wear.StepReason;
import steadyturn.fusion.wear.StepResult;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.UnitStream;

/**
 * A bow turns the pelvis about the hip line: the principal axis of the rates is that line in unit
 * axes.
 *
 * @param axisUnit principal axis, either sense
 * @param purityPct part of the turning that was about it
 */
public record BowStep(Vector3 axisUnit, double purityPct, StepResult result) {

  private static final double LEAST_PURITY_PCT = 90;

  /**
   * The hip line is level while both feet stand: a turn about a steeper axis is none (our choice).
   */
  private static final double STEEPEST_SINE = 0.5;

  private static final double LEAST_RATE_RAD_PER_S = Math.toRadians(10);

  /** The axis from all samples of the step, rates about the bias. */
  public static BowStep of(UnitStream unit, Vector3 biasRadPerS, double fromS, double toS) {
    List<Vector3> rates =
        IntStream.range(unit.indexAt(fromS), unit.indexAt(toS))
            .filter(unit::hasRate)
            .mapToObj(i -> Vector3.each(axis -> unit.gyroRadPerS(axis, i)).minus(biasRadPerS))
            .toList();
    if (rates.size() < 3) {
      return little(0);
    }
    PrincipalAxis found = PrincipalAxis.of(rates);
    if (found.rmsRadPerS() < LEAST_RATE_RAD_PER_S) {
      return little(found.rmsRadPerS());
    }
    double purityPct = found.purityPct();
    Vector3 force = RestGate.meanAccelMps2(unit, fromS, toS);
    boolean isLevel = Math.abs(found.axis().dot(force)) < STEEPEST_SINE * force.norm();
    StepResult result =
        purityPct >= LEAST_PURITY_PCT && isLevel
            ? StepResult.good("bow", purityPct, LEAST_PURITY_PCT, "%")
            : StepResult.again(
                "bow", purityPct, LEAST_PURITY_PCT, "%", Reason.of(StepReason.BOW_SIDEWAYS));
    return new BowStep(found.axis(), purityPct, result);
  }

  private static BowStep little(double rmsRadPerS) {
    Reason why = Reason.of(StepReason.BOW_LITTLE);
    double rms = Math.toDegrees(rmsRadPerS);
    return new BowStep(Vector3.Y, 0, StepResult.again("bow", rms, 10, "deg/s", why));
  }
}
