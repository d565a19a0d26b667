package steadyturn.fusion.orientation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.fusion.rotation.MutableQuaternion;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;

class OrientationTrackTest {

  @ParameterizedTest
  @CsvSource({"-0.5,0", "0,0", "0.25,0.25", "0.5,0.5", "1,1", "2.5,1"})
  void betweenTwoSamplesTheTurnIsLaidOutEvenly(double instantS, double turned) {
    // Given: three samples, from one attitude to another within the first second, then still.
    Quaternion from = Quaternion.fromRotationVector(new Vector3(0.3, -0.5, 1.1));
    Vector3 turn = new Vector3(-0.6, 0.4, 0.9);
    OrientationTrack track = OrientationTrack.forInstants(new double[] {0, 1, 2});
    Quaternion to = from.times(Quaternion.fromRotationVector(turn));
    track.set(0, new MutableQuaternion().set(from), 0.1, 0.4);
    track.set(1, new MutableQuaternion().set(to), 0.2, 0.5);
    track.set(2, new MutableQuaternion().set(to), 0.3, 0.6);
    Quaternion expected = from.times(Quaternion.fromRotationVector(turn.times(turned)));
    OrientationTrack other = track.at(new double[] {instantS});
    for (Quaternion found : new Quaternion[] {track.qEarthUnitAt(instantS), other.qEarthUnit(0)}) {
      assertThat(expected.conjugate().times(found).rotationVector().norm()).isLessThan(1e-12);
    }
    int before = (int) Math.max(0, Math.min(2, Math.floor(instantS)));
    assertThat(other.inclinationSigmaRad()[0]).isCloseTo(0.1 * (before + 1), within(1e-12));
    assertThat(other.headingSigmaRad()[0]).isCloseTo(0.1 * (before + 4), within(1e-12));
    assertThat(other.size()).isEqualTo(1);
  }
}
