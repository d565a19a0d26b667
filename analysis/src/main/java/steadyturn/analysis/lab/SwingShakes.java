package steadyturn.analysis.lab;

import java.util.Map;
import org.apache.commons.math3.random.RandomGenerator;
import steadyturn.analysis.lab.body.Joint;
import steadyturn.analysis.lab.curve.Bursts;
import steadyturn.analysis.lab.unit.UnitErrors;
import steadyturn.ingest.sample.BodyPoint;

/**
 * What shakes in one full swing: the wobble of the pelvis (real movement), the skin under the
 * units, the blow of the ball. Times are true, s.
 */
record SwingShakes(
    Stage stage, double startS, double topS, double impactS, double endS, RandomGenerator random) {

  /**
   * Lays them on the stage.
   *
   * @param skinHabit each unit's usual skin shift of this player, in units of the spread: six at
   *     the top, six at impact, six at the finish
   * @param hit whether a ball is struck
   */
  void lay(Map<BodyPoint, double[]> skinHabit, boolean hit) {
    wobble();
    skin(skinHabit);
    if (hit) {
      shock();
    }
  }

  /** A burst of 5-8 Hz from the transition past impact, real movement of the pelvis. */
  private void wobble() {
    double from = topS - 0.25;
    double length = impactS + 0.35 - from;
    for (Joint joint : new Joint[] {Joint.TURN, Joint.TILT, Joint.SIDE_TILT}) {
      double size = Math.toRadians(stage.errors.wobbleDeg()) * (0.5 + 0.5 * random.nextDouble());
      wobble(joint, from, length, size);
    }
    for (Joint joint : new Joint[] {Joint.PLACE_X, Joint.PLACE_Y, Joint.PLACE_Z}) {
      double size = stage.errors.wobbleMm() / 1000 * (0.5 + 0.5 * random.nextDouble());
      wobble(joint, from, length, size);
    }
  }

  private void wobble(Joint joint, double fromS, double lengthS, double size) {
    double frequencyHz = 5 + 3 * random.nextDouble();
    double phase = 2 * Math.PI * random.nextDouble();
    if (size > 0) {
      stage.burst(joint).add(fromS, lengthS, size, frequencyHz, phase, Bursts.Window.SMOOTH);
    }
  }

  private void skin(Map<BodyPoint, double[]> skinHabit) {
    for (BodyPoint point : BodyPoint.values()) {
      double[] habit = skinHabit.getOrDefault(point, new double[18]);
      for (int i = 0; i < Stage.SHIFTS; i++) {
        double size = shiftSize(point, i);
        double top = size * (0.8 * habit[i] + 0.6 * random.nextGaussian());
        double impact = size * (0.8 * habit[6 + i] + 0.6 * random.nextGaussian());
        double finish = size * (0.8 * habit[12 + i] + 0.6 * random.nextGaussian());
        if (size > 0) {
          stage
              .skin(point)[i]
              .to(startS, topS - 0.03, top)
              .to(topS - 0.03, impactS, impact)
              .to(impactS, endS, finish);
        }
      }
    }
  }

  /** Skin under a strapped unit, m or rad; the shaft turns in the grip but keeps its place. */
  private double shiftSize(BodyPoint point, int shift) {
    if (point == BodyPoint.CLUB_SHAFT) {
      return shift < 3 ? 0 : Math.toRadians(stage.errors.gripDeg());
    }
    return shift < 3 ? stage.errors.skinMm() / 1000 : Math.toRadians(stage.errors.skinDeg());
  }

  /**
   * 50-100 g at the hand, a third at the forearm, about 1 g at the pelvis, which feels it later;
   * 10-20 ms.
   */
  private void shock() {
    double hand = (50 + 50 * random.nextDouble()) * UnitErrors.G_MPS2;
    ring(BodyPoint.CLUB_SHAFT, 1.5 * hand);
    ring(BodyPoint.LEAD_HAND, hand);
    ring(BodyPoint.LEAD_FOREARM, hand / 3);
    ring(BodyPoint.THORAX, hand / 60);
    ring(BodyPoint.PELVIS, hand / 75);
  }

  private void ring(BodyPoint point, double peakMps2) {
    double lengthS = 0.010 + 0.010 * random.nextDouble();
    double frequencyHz = 90 + 60 * random.nextDouble();
    double angle = 2 * Math.PI * random.nextDouble();
    double lift = 0.6 * (2 * random.nextDouble() - 1);
    double flat = Math.sqrt(1 - lift * lift);
    double[] along = {flat * Math.cos(angle), flat * Math.sin(angle), lift};
    for (int i = 0; i < 3; i++) {
      stage.rings(point)[i].addRing(
          impactS + delayS(point), lengthS, peakMps2 * along[i], frequencyHz);
    }
  }

  private double delayS(BodyPoint point) {
    boolean isTrunk = point == BodyPoint.PELVIS || point == BodyPoint.THORAX;
    return isTrunk ? stage.blowDelayS : 0;
  }
}
