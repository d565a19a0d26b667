package steadyturn.fusion.wear;

import java.util.List;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.EigenDecomposition_F64;
import steadyturn.fusion.rotation.Vector3;

/**
 * The axis that most of a movement turned about: the first of the rates' second moment.
 *
 * @param axis of length one, either sense
 * @param purityPct part of the turning (in squares) that was about it
 * @param rmsRadPerS size of the rates
 */
public record PrincipalAxis(Vector3 axis, double purityPct, double rmsRadPerS) {

  /** Of one rate at least, rad/s. */
  public static PrincipalAxis of(List<Vector3> rates) {
    DMatrixRMaj moment = new DMatrixRMaj(3, 3);
    for (Vector3 rate : rates) {
      for (int a = 0; a < 3; a++) {
        for (int b = 0; b < 3; b++) {
          moment.add(a, b, rate.get(a) * rate.get(b));
        }
      }
    }
    double whole = moment.get(0, 0) + moment.get(1, 1) + moment.get(2, 2);
    EigenDecomposition_F64<DMatrixRMaj> parts = DecompositionFactory_DDRM.eig(3, true, true);
    parts.decompose(moment);
    int best = 0;
    for (int i = 1; i < 3; i++) {
      best = parts.getEigenvalue(i).real > parts.getEigenvalue(best).real ? i : best;
    }
    return new PrincipalAxis(
        Vector3.of(parts.getEigenVector(best).data, 0),
        100 * parts.getEigenvalue(best).real / whole,
        Math.sqrt(whole / rates.size()));
  }
}
