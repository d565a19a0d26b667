package steadyturn.fusion.rotation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

final class MirrorTest {

  private static Vector3 mirrored(Vector3 v) {
    return new Vector3(v.x(), -v.y(), v.z());
  }

  @Test
  void aMirroredRotationTurnsMirroredVectorsIntoMirroredResults() {
    // Given: any rotation and vector; M the mirror in x-z. Expect: M q(v) = q'(M v), as q' = M q M.
    // Within 1e-14: some twenty products of numbers near 1, each rounded at 1e-16.
    Quaternion q = Quaternion.fromRotationVector(new Vector3(0.3, -1.1, 0.7));
    Vector3 v = new Vector3(0.2, 0.5, -0.9);
    Vector3 expected = mirrored(q.rotate(v));
    Vector3 found = q.mirroredInXz().rotate(mirrored(v));
    assertThat(found.minus(expected).norm()).isCloseTo(0, within(1e-14));
  }
}
