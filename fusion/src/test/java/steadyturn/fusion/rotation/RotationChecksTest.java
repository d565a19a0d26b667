package steadyturn.fusion.rotation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** Rotations from outside, in checks.csv; each is computed by both quaternion classes. */
class RotationChecksTest {

  @ParameterizedTest(name = "{0}: {2} of {1} is {3}")
  @CsvFileSource(resources = "checks.csv")
  void theValueIsThatOfTheSource(
      String id, String given, String measure, double expect, String unit, double tolerance) {
    assertThat(unit).as(id).isNotBlank();
    String[] words = given.split(" ", -1);
    double[] n = Arrays.stream(words).skip(1).mapToDouble(Double::parseDouble).toArray();
    double got =
        switch (words[0]) {
          case "product" -> part(product(n), measure);
          case "turn-x" -> part(quaternion(n).rotate(Vector3.X), measure);
          case "turn-y" -> part(quaternion(n).rotate(Vector3.Y), measure);
          case "turn-z" -> part(quaternion(n).rotate(Vector3.Z), measure);
          case "angle" -> Math.toDegrees(quaternion(n).rotationVector().norm());
          case "yaw-pitch-roll" -> part(yawPitchRoll(n), measure);
          default -> throw new IllegalArgumentException(id + ": nothing gives " + given);
        };
    assertThat(got).as(id).isCloseTo(expect, within(tolerance));
  }

  private static Quaternion quaternion(double[] n) {
    return new Quaternion(n[0], n[1], n[2], n[3]);
  }

  private static Quaternion product(double[] n) {
    Quaternion right = new Quaternion(n[4], n[5], n[6], n[7]);
    Quaternion product = quaternion(n).times(right);
    MutableQuaternion inPlace = new MutableQuaternion().set(n[0], n[1], n[2], n[3]);
    inPlace.multiplyRight(right.w(), right.x(), right.y(), right.z());
    assertThat(inPlace.toQuaternion()).isEqualTo(product);
    return product;
  }

  private static Quaternion yawPitchRoll(double[] deg) {
    return Quaternion.aboutZ(Math.toRadians(deg[0]))
        .times(Quaternion.aboutY(Math.toRadians(deg[1])))
        .times(Quaternion.aboutX(Math.toRadians(deg[2])));
  }

  private static double part(Quaternion q, String name) {
    return switch (name) {
      case "w" -> q.w();
      case "x" -> q.x();
      case "y" -> q.y();
      case "z" -> q.z();
      default -> throw new IllegalArgumentException("a quaternion has no part " + name);
    };
  }

  private static double part(Vector3 v, String name) {
    return v.get("xyz".indexOf(name));
  }
}
