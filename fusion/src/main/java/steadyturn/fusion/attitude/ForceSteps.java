package steadyturn.fusion.attitude;

import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.StandardGravity;

/** How suddenly the force on a unit changes, sample by sample. */
public final class ForceSteps {

  private static final double STEP_S = 0.002;
  // a force that was cut off shows no calm to compare with
  private static final double NEAR_FULL = 0.999;
  private static final double NEAR = 2 * StandardGravity.MPS2;

  private ForceSteps() {}

  /**
   * Change of the specific force from 2 ms (at least one sample) before each sample to it.
   *
   * @param bend the change of that change instead, which a swaying trunk hides less
   */
  public static double[] of(GyroTrack track, int from, int to, boolean bend) {
    double[] steps = new double[Math.max(0, to - from)];
    for (int i = from; i < to; i++) {
      int before = earlier(track, i);
      Vector3 step = track.forceUnitMps2(i).minus(track.forceUnitMps2(before));
      if (bend) {
        int first = earlier(track, before);
        Vector3 last = track.forceUnitMps2(before).minus(track.forceUnitMps2(first));
        double spanS = track.timeS(i) - track.timeS(before);
        double lastS = track.timeS(before) - track.timeS(first);
        // a lost sample makes one step longer than the other
        step =
            lastS > 0 ? step.times(STEP_S / spanS).minus(last.times(STEP_S / lastS)) : Vector3.ZERO;
        step = uncut(track, first, before, i, step);
      }
      steps[i - from] = step.norm();
    }
    return steps;
  }

  /**
   * Without the axes on which the accelerometer was cut off at its full scale: where a fast swing
   * leaves it, the force has a kink that is no blow. A blow that reaches it at once counts.
   */
  private static Vector3 uncut(GyroTrack track, int first, int before, int now, Vector3 bend) {
    double[] kept = new double[3];
    for (int axis = 0; axis < 3; axis++) {
      double full = NEAR_FULL * track.accelFullScaleMps2();
      double last = Math.abs(track.forceUnitMps2(before).get(axis));
      boolean leaves = last >= full || Math.abs(track.forceUnitMps2(first).get(axis)) >= full;
      boolean creeps = Math.abs(track.forceUnitMps2(now).get(axis)) >= full && last > full - NEAR;
      kept[axis] = leaves || creeps ? 0 : bend.get(axis);
    }
    return new Vector3(kept[0], kept[1], kept[2]);
  }

  /** The sample 2 ms before, or the one before where the rate is lower. */
  private static int earlier(GyroTrack track, int i) {
    int before = Math.max(0, i - 1);
    while (before > 0 && track.timeS(i) - track.timeS(before) < 0.9 * STEP_S) {
      before--;
    }
    return before;
  }
}
