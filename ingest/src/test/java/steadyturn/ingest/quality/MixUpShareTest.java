package steadyturn.ingest.quality;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * In how many movements an inner unit must turn more, and how closely one must follow the other.
 */
class MixUpShareTest {

  private static Activity unit(
      BodyPoint point, double lengthS, DoubleUnaryOperator rate, double push) {
    return Activity.of(stream(point, lengthS, rate, push), List.of());
  }

  private static UnitStream stream(
      BodyPoint point, double lengthS, DoubleUnaryOperator rate, double push) {
    int n = (int) Math.round(lengthS * 100);
    double[] timeS = new double[n];
    double[][] accel = new double[3][n];
    double[][] gyro = new double[3][n];
    for (int i = 0; i < n; i++) {
      timeS[i] = (i + 0.5) / 100;
      accel[0][i] = -9.80665 - push;
      gyro[1][i] = rate.applyAsDouble(timeS[i]);
    }
    return new UnitStream(UnitFacts.plain(point, 100), timeS, accel, gyro);
  }

  @ParameterizedTest
  @CsvSource({
    "PELVIS, 17, 13, true", "PELVIS, 17, 12, false",
    "LEAD_FOREARM, 8, 7, true", "LEAD_FOREARM, 12, 10, false"
  })
  void threeInFourMovementsOfATrunkAndSixInSevenOfAnArm(
      BodyPoint inner, int blocks, int faster, boolean swapped) {
    // Given: blocks of 2 s; in the first so many the inner unit turns three times as fast, in the
    // rest half as fast. Our bounds: 75 % and 85 %.
    double lengthS = 2 * blocks;
    Activity first = unit(inner, lengthS, t -> t < 2 * faster ? 3 : 0.6, 2);
    Activity second = unit(BodyPoint.LEAD_HAND, lengthS, t -> t < 2 * faster ? 1 : 1.2, 1);
    assertThat(UnitMixUp.ofFirst(first, second)).hasSize(swapped ? 1 : 0);
  }

  @ParameterizedTest
  @CsvSource({"0.30, true", "-0.30, true", "0.45, false"})
  void asOneMeansACorrelationOfNinetyThreeHundredths(double phase, boolean isOne) {
    // Given: waves a phase apart over whole turns, whose correlation is its cosine: 0.955, 0.900.
    double lengthS = 2 * Math.PI / 3 * 10;
    Activity trunk = unit(BodyPoint.PELVIS, lengthS, t -> 2 + Math.sin(3 * t + phase), 0.9);
    Activity arm = unit(BodyPoint.LEAD_FOREARM, lengthS, t -> 2 + Math.sin(3 * t), 1);
    assertThat(UnitMixUp.ofFirst(trunk, arm)).hasSize(isOne ? 1 : 0);
  }

  @Test
  void itIsSaidOfTheUnitThatIsOnTheArmAlone() {
    Recording recording =
        new Recording(
            "made",
            Player.unmeasured("p", Handedness.RIGHT),
            List.of(
                stream(BodyPoint.PELVIS, 20, t -> 2 + Math.sin(3 * t), 0.9),
                stream(BodyPoint.LEAD_FOREARM, 20, t -> 2 + Math.sin(3 * t), 1)),
            List.of());
    assertThat(RecordingQuality.judge(recording).units())
        .filteredOn(unit -> unit.says(QualityReason.ON_THE_ARM))
        .extracting(unit -> unit.facts().point())
        .containsExactly(BodyPoint.PELVIS);
  }
}
