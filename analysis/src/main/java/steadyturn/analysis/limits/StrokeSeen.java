package steadyturn.analysis.limits;

import java.util.Optional;
import java.util.stream.IntStream;
import steadyturn.fusion.rest.RestGate;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.UnitStream;

/**
 * What one swing tells of how a unit is worn, unit axes: the direction up at address, and in the
 * downswing the turn about the vertical and the pull towards the point turned about.
 *
 * @param up direction up at address
 * @param turnDownRad turn about the vertical from top to impact, seen from above against the clock
 * @param pull mean specific force without gravity from 80 to 10 ms before impact, m/s^2
 * @param reachM how far along the unit's x axis it lies from what it turns about then, m
 * @param fastestRadPerS greatest rate in that time
 */
record StrokeSeen(
    Vector3 up, double turnDownRad, Vector3 pull, double reachM, double fastestRadPerS) {

  private static final double ADDRESS_FROM_S = 0.5;
  private static final double ADDRESS_TO_S = 0.03;
  private static final double BLOW_S = 0.005;
  private static final double AFTER_S = 0.2;
  private static final double PULL_FROM_S = 0.08;
  private static final double PULL_TO_S = 0.01;

  private static final double LEAST_GRAVITY_MPS2 = 1;

  /** Longest way from address to impact: of a slow swing with a pause. */
  private static final double LONGEST_S = 4;

  /** None where the unit did not see the stroke. */
  static Optional<StrokeSeen> of(UnitStream unit, Stroke stroke) {
    double fromS = stroke.takeawayS() - ADDRESS_FROM_S;
    UnitStream part = unit.between(fromS, stroke.impactS() + AFTER_S);
    double expected = (stroke.impactS() + AFTER_S - fromS) / part.usualStepS();
    long whole = IntStream.range(0, part.size()).filter(part::isWhole).count();
    boolean isSeen = whole > 0.9 * expected && stroke.impactS() - fromS < LONGEST_S;
    return isSeen
        ? Optional.of(new Follower(part, stroke)).filter(Follower::feelsGravity).map(Follower::read)
        : Optional.empty();
  }

  /** Follows the direction up by the rates, from address to impact. */
  private static final class Follower {
    private final UnitStream unit;
    private final Stroke stroke;
    private final Vector3 bias;
    private final Vector3 gravity;
    private double turn;
    private Vector3 pull = Vector3.ZERO;
    private int pulls;
    private double fastest;
    private double alongPull;

    Follower(UnitStream unit, Stroke stroke) {
      this.unit = unit;
      this.stroke = stroke;
      double fromS = stroke.takeawayS() - ADDRESS_FROM_S;
      double toS = stroke.takeawayS() - ADDRESS_TO_S;
      this.bias = RestGate.meanRateRadPerS(unit, fromS, toS);
      this.gravity = RestGate.meanAccelMps2(unit, fromS, toS);
    }

    boolean feelsGravity() {
      return gravity.norm() > LEAST_GRAVITY_MPS2;
    }

    StrokeSeen read() {
      Vector3 now = gravity;
      for (int i = 0; i + 1 < unit.size(); i++) {
        if (unit.isWhole(i)) {
          double stepS = unit.timeS(i + 1) - unit.timeS(i);
          int at = i;
          Vector3 rate = Vector3.each(axis -> unit.gyroRadPerS(axis, at)).minus(bias);
          now = Quaternion.fromRotationVector(rate.times(-stepS)).rotate(now);
          take(i, stepS, rate, now);
        }
      }
      return new StrokeSeen(
          gravity.unit(),
          turn,
          pull.times(1.0 / Math.max(1, pulls)),
          alongPull > 0 ? -pull.x() / alongPull : 0,
          fastest);
    }

    private void take(int i, double stepS, Vector3 rate, Vector3 gravityNow) {
      double toImpactS = stroke.impactS() - unit.timeS(i);
      Vector3 moving = Vector3.each(axis -> unit.accelMps2(axis, i)).minus(gravityNow);
      double square = rate.dot(rate);
      if (unit.timeS(i) > stroke.topS() && toImpactS > BLOW_S) {
        turn += stepS * rate.dot(gravityNow.unit());
      }
      if (toImpactS < PULL_FROM_S && toImpactS > PULL_TO_S) {
        pull = pull.plus(moving);
        pulls++;
        alongPull += square - rate.x() * rate.x();
        fastest = Math.max(fastest, Math.sqrt(square));
      }
    }
  }
}
