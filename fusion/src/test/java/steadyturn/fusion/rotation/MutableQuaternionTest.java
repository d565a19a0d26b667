package steadyturn.fusion.rotation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.apache.commons.math3.geometry.euclidean.threed.Rotation;
import org.apache.commons.math3.geometry.euclidean.threed.RotationConvention;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class MutableQuaternionTest {

  private static final long SEED = 20260101;

  /** Rounding of a few dozen operations on numbers of size 1, with a factor 50 to spare. */
  private static final double ROUNDING = 1e-13;

  private static void assertSame(Quaternion got, Quaternion wanted, double tolerance) {
    double sign =
        got.w() * wanted.w() + got.x() * wanted.x() + got.y() * wanted.y() + got.z() * wanted.z()
                < 0
            ? -1
            : 1;
    assertThat(got.w()).isCloseTo(sign * wanted.w(), within(tolerance));
    assertThat(got.x()).isCloseTo(sign * wanted.x(), within(tolerance));
    assertThat(got.y()).isCloseTo(sign * wanted.y(), within(tolerance));
    assertThat(got.z()).isCloseTo(sign * wanted.z(), within(tolerance));
  }

  private static Quaternion random(Random random) {
    return new Quaternion(
            random.nextGaussian(),
            random.nextGaussian(),
            random.nextGaussian(),
            random.nextGaussian())
        .normalized();
  }

  @Test
  void everyOperationIsThatOfTheImmutableQuaternion() {
    // Given: 200 random pairs (seed above). Expect: both classes agree. Within rounding.
    Random random = new Random(SEED);
    for (int i = 0; i < 200; i++) {
      Quaternion a = random(random);
      Quaternion b = random(random);
      Vector3 v = new Vector3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian());
      MutableQuaternion m = new MutableQuaternion().set(a);
      assertSame(m.multiplyRight(b.w(), b.x(), b.y(), b.z()).toQuaternion(), a.times(b), ROUNDING);
      m.set(a);
      assertSame(m.multiplyLeft(b.w(), b.x(), b.y(), b.z()).toQuaternion(), b.times(a), ROUNDING);
      m.set(a).turnRight(v.x(), v.y(), v.z());
      assertSame(m.toQuaternion(), a.times(Quaternion.fromRotationVector(v)), ROUNDING);
      m.set(a).turnLeft(v.x(), v.y(), v.z());
      assertSame(m.toQuaternion(), Quaternion.fromRotationVector(v).times(a), ROUNDING);
      Vector3 turned = a.rotate(v);
      m.set(a);
      assertThat(m.rotatedX(v.x(), v.y(), v.z())).isCloseTo(turned.x(), within(ROUNDING));
      assertThat(m.rotatedY(v.x(), v.y(), v.z())).isCloseTo(turned.y(), within(ROUNDING));
      assertThat(m.rotatedZ(v.x(), v.y(), v.z())).isCloseTo(turned.z(), within(ROUNDING));
    }
  }

  @Test
  void theMatrixAndTheTurnAgreeWithCommonsMath() {
    // Given: random rotations (seed above). Oracle: Commons Math 3.6.1, whose constructor from
    // four numbers takes the scalar first and whose applyTo follows, in the vector convention, the
    // turn of the vector itself: the same sense as ours. Within rounding.
    Random random = new Random(SEED);
    for (int i = 0; i < 200; i++) {
      Quaternion a = random(random);
      MutableQuaternion m = new MutableQuaternion().set(a);
      Vector3D v = new Vector3D(random.nextGaussian(), random.nextGaussian(), 1);
      Rotation axisAngle =
          new Rotation(
              new Vector3D(a.x(), a.y(), a.z()),
              2 * Math.acos(a.w()),
              RotationConvention.VECTOR_OPERATOR);
      Vector3D turned = axisAngle.applyTo(v);
      double[] r = new double[9];
      m.matrix(r);
      double rowX = r[0] * v.getX() + r[1] * v.getY() + r[2] * v.getZ();
      double rowY = r[3] * v.getX() + r[4] * v.getY() + r[5] * v.getZ();
      double rowZ = r[6] * v.getX() + r[7] * v.getY() + r[8] * v.getZ();
      assertThat(new double[] {m.m20(), m.m21(), m.m22()}).containsExactly(r[6], r[7], r[8]);
      assertThat(rowX).isCloseTo(turned.getX(), within(1e-12));
      assertThat(rowY).isCloseTo(turned.getY(), within(1e-12));
      assertThat(rowZ).isCloseTo(turned.getZ(), within(1e-12));
    }
  }

  @Test
  void theSeriesMeetsTheSineWhereTheyChangeOver() {
    // Given: angles on both sides of the change-over at 0.25 rad. Expect: the exact half angle.
    // Within 1e-15: the series is cut below that.
    for (double angle : new double[] {1e-9, 0.1, 0.2499, 0.2507, 0.5, 3}) {
      MutableQuaternion q = new MutableQuaternion().turnRight(0, 0, angle);
      assertThat(q.w()).isCloseTo(Math.cos(angle / 2), within(1e-15));
      assertThat(q.z()).isCloseTo(Math.sin(angle / 2), within(1e-15));
    }
  }

  @Test
  void theShortestRotationLevelsEveryDirection() {
    // Given: random directions and the two poles. Expect: the direction comes to z, and the
    // rotation has no part about z. Within rounding; 1e-6 close to straight down, where the axis
    // rests on a difference of near-equal numbers.
    Random random = new Random(SEED);
    for (int i = 0; i < 200; i++) {
      double x = random.nextGaussian();
      double y = random.nextGaussian();
      double z = random.nextGaussian();
      double n = Math.sqrt(x * x + y * y + z * z);
      MutableQuaternion q = new MutableQuaternion().setShortestToZ(x, y, z);
      assertThat(q.rotatedZ(x, y, z)).isCloseTo(n, within(1e-9));
      assertThat(q.z()).isZero();
      assertThat(q.toQuaternion().norm()).isCloseTo(1, within(1e-9));
    }
    MutableQuaternion down = new MutableQuaternion().setShortestToZ(0, 0, -2);
    assertThat(down.rotatedZ(0, 0, -2)).isCloseTo(2, within(ROUNDING));
    MutableQuaternion up = new MutableQuaternion().setShortestToZ(0, 0, 3);
    assertThat(up.w()).isCloseTo(1, within(ROUNDING));
  }

  @Test
  void noDirectionIsRefused() {
    assertThatThrownBy(() -> new MutableQuaternion().setShortestToZ(0, 0, 0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("no direction");
  }

  @Test
  void aMillionSmallTurnsKeepTheLength() {
    // Given: 1e6 steps of 1 mrad with normalize. Expect: length 1. Within 1e-12: each Newton step
    // leaves the error of one rounding only.
    MutableQuaternion q = new MutableQuaternion();
    for (int i = 0; i < 1_000_000; i++) {
      q.turnRight(6e-4, -8e-4, 1e-4).normalize();
    }
    assertThat(q.toQuaternion().norm()).isCloseTo(1, within(1e-12));
  }
}
