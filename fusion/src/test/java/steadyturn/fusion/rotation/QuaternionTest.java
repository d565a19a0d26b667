package steadyturn.fusion.rotation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class QuaternionTest {

  /** Rounding of a few dozen operations on numbers of size 1, with a factor 50 to spare. */
  private static final double ROUNDING = 1e-13;

  private static final long SEED = 31;

  @ParameterizedTest
  @CsvSource({"0,0,0", "3.14159265358979,0,0", "0,3.14159265358979,0", "0,0,3.14159265358979"})
  void axesOfAHalfTurnOrOfNoneGiveTheirRotation(double x, double y, double z) {
    // Given: where all divisors but one vanish. Expect: that rotation. Within rounding.
    assertAxesGiveBack(Quaternion.fromRotationVector(new Vector3(x, y, z)));
  }

  @Test
  void axesOfAnyRotationGiveItBack() {
    Random random = new Random(SEED);
    for (int i = 0; i < 200; i++) {
      assertAxesGiveBack(
          Quaternion.fromRotationVector(
              new Vector3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian())
                  .times(1.5)));
    }
  }

  private static void assertAxesGiveBack(Quaternion q) {
    Quaternion found =
        Quaternion.fromAxes(q.rotate(Vector3.X), q.rotate(Vector3.Y), q.rotate(Vector3.Z));
    assertThat(q.conjugate().times(found).rotationVector().norm()).isLessThan(ROUNDING);
    assertThat(found.norm()).isCloseTo(1, within(ROUNDING));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 1e-14, 1e-9, 1e-7, 0.01, 1, 3, 3.1415926})
  void aRotationVectorComesBackFromBothSignsOfItsQuaternion(double length) {
    // Expect: the vector itself. Within 1e-12 of its length: half turns lose some digits.
    Vector3 v = new Vector3(2 / 7.0, -3 / 7.0, 6 / 7.0).times(length);
    Quaternion q = Quaternion.fromRotationVector(v);
    Quaternion other = new Quaternion(-q.w(), -q.x(), -q.y(), -q.z());
    assertThat(q.rotationVector().minus(v).norm()).isLessThanOrEqualTo(1e-12 * length);
    assertThat(other.rotationVector().minus(v).norm()).isLessThanOrEqualTo(1e-12 * length);
    assertThat(q.w()).isCloseTo(Math.cos(length / 2), within(ROUNDING));
  }

  @ParameterizedTest
  @ValueSource(doubles = {-3.1, -2, -0.3, 0, 0.4, 1.8, 3.1})
  void theTwistIsTheTurnAboutTheVerticalHoweverTheFrameLeans(double turnRad) {
    // Given: a lean about any level axis, then a turn about z. Expect: the turn, of both signs of
    // the quaternion; the azimuth of y, too, where the lean is about x. Within rounding.
    Quaternion lean = Quaternion.fromRotationVector(new Vector3(0.7, -0.4, 0));
    Quaternion q = Quaternion.aboutZ(turnRad).times(lean);
    Quaternion other = new Quaternion(-q.w(), -q.x(), -q.y(), -q.z());
    assertThat(q.twistAboutZRad()).isCloseTo(turnRad, within(ROUNDING));
    assertThat(other.twistAboutZRad()).isCloseTo(turnRad, within(ROUNDING));
    assertThat(Quaternion.aboutZ(turnRad).times(Quaternion.aboutX(0.9)).azimuthOfYRad())
        .isCloseTo(turnRad, within(ROUNDING));
  }

  @Test
  void aHalfTurnIsToldAsPlusPiFromEitherSide() {
    // Given: exactly (0, 0, 0, +-1). Expect: +pi, as the range is (-pi, pi].
    assertThat(new Quaternion(0, 0, 0, 1).twistAboutZRad()).isEqualTo(Math.PI);
    assertThat(new Quaternion(0, 0, 0, -1).twistAboutZRad()).isEqualTo(Math.PI);
    assertThat(new Quaternion(-1, 0, 0, 0).twistAboutZRad()).isZero();
  }

  @Test
  void lengthsComeToOneAndNothingHasNone() {
    // Given: (1, -2, 3, -4), length sqrt(30). Expect: each part over that.
    Quaternion q = new Quaternion(1, -2, 3, -4).normalized();
    double n = Math.sqrt(30);
    assertThat(q.w()).isCloseTo(1 / n, within(ROUNDING));
    assertThat(q.x()).isCloseTo(-2 / n, within(ROUNDING));
    assertThat(q.y()).isCloseTo(3 / n, within(ROUNDING));
    assertThat(q.z()).isCloseTo(-4 / n, within(ROUNDING));
    assertThatThrownBy(() -> new Quaternion(0, 0, 0, 0).normalized())
        .isInstanceOf(IllegalArgumentException.class);
  }

  @ParameterizedTest
  @ValueSource(doubles = {1e-3, 0.5, 1 - 4e-8, 1 + 4e-8, 1.1, 30})
  void aMutableQuaternionOfAnyLengthComesToOne(double length) {
    // Given: near 1 on both sides and far. Within 1e-14: one Newton step squares an error of 1e-7.
    MutableQuaternion q =
        new MutableQuaternion()
            .set(0.5 * length, -0.1 * length, 0.7 * length, 0.5 * length)
            .normalize();
    assertThat(q.toQuaternion().norm()).isCloseTo(1, within(1e-14));
    assertThat(q.w()).isCloseTo(0.5, within(1e-14));
    assertThat(q.x()).isCloseTo(-0.1, within(1e-14));
    assertThat(q.y()).isCloseTo(0.7, within(1e-14));
  }

  @Test
  void aMutableQuaternionIsSetAndMultipliedByAnother() {
    Quaternion a = Quaternion.fromRotationVector(new Vector3(0.3, -0.8, 0.5));
    Quaternion b = Quaternion.fromRotationVector(new Vector3(-1.1, 0.2, 0.9));
    MutableQuaternion left = new MutableQuaternion().set(a);
    MutableQuaternion copy = new MutableQuaternion().set(left);
    assertThat(copy.toQuaternion()).isEqualTo(a);
    Quaternion product = new MutableQuaternion().set(b).multiplyLeft(left).toQuaternion();
    assertThat(product).isEqualTo(a.times(b));
  }

  @Test
  void vectorsAddScaleAndCrossByTheRightHand() {
    // Given: whole numbers. Expect: by hand.
    Vector3 a = new Vector3(1, -2, 3);
    Vector3 b = new Vector3(4, 5, -7);
    assertThat(a.plus(b)).isEqualTo(new Vector3(5, 3, -4));
    assertThat(a.minus(b)).isEqualTo(new Vector3(-3, -7, 10));
    assertThat(a.times(-2)).isEqualTo(new Vector3(-2, 4, -6));
    assertThat(a.dot(b)).isEqualTo(-27);
    assertThat(a.cross(b)).isEqualTo(new Vector3(-1, 19, 13));
    assertThat(new Vector3(2, -3, 6).unit().minus(new Vector3(2, -3, 6).times(1 / 7.0)).norm())
        .isLessThan(ROUNDING);
    assertThat(new double[] {a.get(0), a.get(1), a.get(2)}).containsExactly(1, -2, 3);
    assertThatThrownBy(() -> a.get(3)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Vector3.ZERO.unit()).isInstanceOf(IllegalArgumentException.class);
  }
}
