package steadyturn.analysis.wrist;

import java.util.ArrayList;
import java.util.List;
import steadyturn.analysis.measure.Curve;
import steadyturn.analysis.measure.Measure;

/** The course of cock and flexion over a swing, thinned to at most 100 points a second. */
final class WristCurves {

  private static final double STEP_S = 0.01;

  private WristCurves() {}

  static List<Curve> of(WristMotion motion, double toS) {
    boolean absolute = motion.absolute();
    List<Double> time = new ArrayList<>();
    List<Double> cock = new ArrayList<>();
    List<Double> cockSd = new ArrayList<>();
    List<Double> flexion = new ArrayList<>();
    List<Double> flexionSd = new ArrayList<>();
    double nextS = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < motion.size() && motion.timeS(k) <= toS; k++) {
      if (motion.timeS(k) < nextS || motion.gaps().hide(motion.timeS(k))) {
        continue;
      }
      nextS = motion.timeS(k) + 0.9 * STEP_S;
      time.add(motion.timeS(k));
      cock.add(absolute ? motion.absoluteCockDeg(k) : motion.cockDeg(k));
      cockSd.add(absolute ? motion.spreads().absoluteCockDeg(k) : motion.spreads().cockDeg(k));
      flexion.add(absolute ? motion.absoluteFlexionDeg(k) : motion.flexionDeg(k));
      flexionSd.add(
          absolute ? motion.spreads().absoluteFlexionDeg(k) : motion.spreads().flexionDeg(k));
    }
    return List.of(
        new Curve(Measure.WRIST_COCK.id(), "deg", time, cock, cockSd),
        new Curve(Measure.WRIST_FLEXION.id(), "deg", time, flexion, flexionSd));
  }
}
