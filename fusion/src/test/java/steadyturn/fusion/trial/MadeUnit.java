package steadyturn.fusion.trial;

import java.util.function.DoubleFunction;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** A unit's samples from functions of time. */
public final class MadeUnit {

  private MadeUnit() {}

  /** From 0 s on, for so long; the last instant is left out. */
  public static UnitStream of(
      UnitFacts facts,
      double lengthS,
      DoubleFunction<Vector3> rateRadPerS,
      DoubleFunction<Vector3> forceMps2) {
    int n = (int) Math.round(lengthS * facts.nominalRateHz());
    double[] time = new double[n];
    double[][] accel = new double[3][n];
    double[][] gyro = new double[3][n];
    for (int i = 0; i < n; i++) {
      time[i] = i / facts.nominalRateHz();
      Vector3 rate = rateRadPerS.apply(time[i]);
      Vector3 force = forceMps2.apply(time[i]);
      for (int axis = 0; axis < 3; axis++) {
        gyro[axis][i] = rate.get(axis);
        accel[axis][i] = force.get(axis);
      }
    }
    return new UnitStream(facts, time, accel, gyro);
  }
}
