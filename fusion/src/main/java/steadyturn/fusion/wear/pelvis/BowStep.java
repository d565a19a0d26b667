package steadyturn.fusion.wear.pelvis;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.EigenDecomposition_F64;
import steadyturn.fusion.rotation.Vector3;
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
  private static final double LEAST_RATE_RAD_PER_S = Math.toRadians(10);

  /** The axis from all samples of the step, rates about the bias. */
  public static BowStep of(UnitStream unit, Vector3 biasRadPerS, double fromS, double toS) {
    DMatrixRMaj scatter = new DMatrixRMaj(3, 3);
    int n = 0;
    for (int i = unit.indexAt(fromS), to = unit.indexAt(toS); i < to; i++) {
      if (!unit.hasRate(i)) {
        continue;
      }
      for (int a = 0; a < 3; a++) {
        for (int b = 0; b < 3; b++) {
          scatter.add(
              a,
              b,
              (unit.gyroRadPerS(a, i) - biasRadPerS.get(a))
                  * (unit.gyroRadPerS(b, i) - biasRadPerS.get(b)));
        }
      }
      n++;
    }
    return fromScatter(scatter, n);
  }

  private static BowStep fromScatter(DMatrixRMaj scatter, int n) {
    double total = scatter.get(0, 0) + scatter.get(1, 1) + scatter.get(2, 2);
    if (n < 3 || Math.sqrt(total / n) < LEAST_RATE_RAD_PER_S) {
      double rms = n == 0 ? 0 : Math.toDegrees(Math.sqrt(total / n));
      return new BowStep(
          Vector3.Y,
          0,
          StepResult.again("bow", rms, 10, "deg/s", Reason.of(StepReason.BOW_LITTLE)));
    }
    EigenDecomposition_F64<DMatrixRMaj> eigen = DecompositionFactory_DDRM.eig(3, true, true);
    eigen.decompose(scatter.copy());
    int best = 0;
    for (int i = 1; i < 3; i++) {
      if (eigen.getEigenvalue(i).getReal() > eigen.getEigenvalue(best).getReal()) {
        best = i;
      }
    }
    DMatrixRMaj v = eigen.getEigenVector(best);
    double purityPct = 100 * eigen.getEigenvalue(best).getReal() / total;
    Vector3 axis = new Vector3(v.get(0), v.get(1), v.get(2)).unit();
    StepResult result =
        purityPct >= LEAST_PURITY_PCT
            ? StepResult.good("bow", purityPct, LEAST_PURITY_PCT, "%")
            : StepResult.again(
                "bow", purityPct, LEAST_PURITY_PCT, "%", Reason.of(StepReason.BOW_SIDEWAYS));
    return new BowStep(axis, purityPct, result);
  }
}
