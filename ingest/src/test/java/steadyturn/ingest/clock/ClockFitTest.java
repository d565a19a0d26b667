package steadyturn.ingest.clock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;

/** Reference = t + offset + skew t; one part in a million of 1000 s is 1 ms. */
class ClockFitTest {

  private static final ClockFit FIT = new ClockFit(0.25, 40, 100, 0.003, 30, 7);

  @ParameterizedTest
  @CsvSource({"0, 0.25", "1000, 1000.29", "-1000, -999.79", "100, 100.254"})
  void aTimeIsTakenToTheReferenceByOffsetAndSkew(double timeS, double referenceS) {
    assertThat(FIT.toReferenceS(timeS)).isCloseTo(referenceS, within(1e-12));
    assertThat(FIT.correctionS(timeS)).isCloseTo(referenceS - timeS, within(1e-12));
  }

  @ParameterizedTest
  @CsvSource({"100, 0.003", "200, 0.0042426406871", "0, 0.0042426406871", "1100, 0.0301496268634"})
  void theSpreadGrowsAwayFromItsCentre(double timeS, double sdS) {
    // Given: 3 ms at 100 s and 30 ppm. Expect: the root of 3^2 + (0.03 x seconds away)^2 ms.
    assertThat(FIT.sdAtS(timeS)).isCloseTo(sdS, within(1e-12));
  }

  @Test
  void twoFitsOneAfterTheOtherAreOne() {
    // Given: a unit tied to another, that to the reference. Expect: what the two give in turn, at
    // any time; spreads added as independent ones, the second's taken at the first's centre.
    ClockFit next = new ClockFit(-0.1, -25, 300, 0.004, 40, 5);
    ClockFit both = FIT.then(next);
    for (double t : new double[] {-50, 0, 100, 2000}) {
      assertThat(both.toReferenceS(t))
          .isCloseTo(next.toReferenceS(FIT.toReferenceS(t)), within(1e-10));
    }
    assertThat(both.centreS()).isEqualTo(100);
    // 3 ms, 4 ms and 200 s x 40 ppm = 8 ms; 30 and 40 ppm.
    assertThat(both.sdS()).isCloseTo(Math.sqrt(9 + 16 + 64) * 1e-3, within(1e-12));
    assertThat(both.skewSdPpm()).isCloseTo(50, within(1e-12));
    assertThat(both.pairs()).isEqualTo(5);
    assertThat(FIT.then(ClockFit.reference())).isSameAs(FIT);
  }

  @Test
  void theReferenceIsItself() {
    ClockFit reference = ClockFit.reference();
    assertThat(reference.toReferenceS(12.5)).isEqualTo(12.5);
    assertThat(reference.sdAtS(1000)).isZero();
  }

  @Test
  void spreadsAreNotNegative() {
    assertThatThrownBy(() -> new ClockFit(0, 0, 0, -1, 0, 0)).hasMessageContaining("-1.0, 0.0");
    assertThatThrownBy(() -> new ClockFit(0, 0, 0, 0, -2, 0)).hasMessageContaining("0.0, -2.0");
    assertThatThrownBy(() -> new ClockFit(0, 0, 0, Double.NaN, 0, 0))
        .isInstanceOf(IllegalArgumentException.class);
  }

  private static ClockFit spread(double sdS) {
    return new ClockFit(0, 0, 0, sdS, 0, 3);
  }

  /** Hand tied to forearm (3 ms), forearm and shaft to the pelvis (4 and 12 ms). */
  private static AlignedRecording aligned() {
    Map<BodyPoint, ClockFit> fits = new EnumMap<>(BodyPoint.class);
    fits.put(BodyPoint.PELVIS, ClockFit.reference());
    fits.put(BodyPoint.LEAD_FOREARM, spread(0.004));
    Recording none =
        new Recording("r", Player.unmeasured("mika", Handedness.RIGHT), List.of(), List.of());
    return new AlignedRecording(
        none,
        fits,
        List.of(
            new ClockLink(BodyPoint.LEAD_FOREARM, BodyPoint.PELVIS, spread(0.004)),
            new ClockLink(BodyPoint.CLUB_SHAFT, BodyPoint.PELVIS, spread(0.012)),
            new ClockLink(BodyPoint.LEAD_HAND, BodyPoint.LEAD_FOREARM, spread(0.003))),
        Map.of());
  }

  @ParameterizedTest
  @CsvSource({
    "PELVIS, PELVIS, 0",
    "LEAD_HAND, LEAD_FOREARM, 0.003",
    "LEAD_FOREARM, LEAD_HAND, 0.003",
    "LEAD_HAND, PELVIS, 0.005",
    "CLUB_SHAFT, PELVIS, 0.012",
    "CLUB_SHAFT, LEAD_HAND, 0.013",
    "LEAD_HAND, LEAD_HAND, 0"
  })
  void betweenTwoUnitsOnlyTheTiesBetweenThemCount(BodyPoint a, BodyPoint b, double sdS) {
    // Expect: root of the sum of squares of the ties on the way (3, 4, 5 and 5, 12, 13).
    assertThat(aligned().sdBetweenS(a, b, 50)).isCloseTo(sdS, within(1e-12));
  }

  @Test
  void aUnitThatIsNotThereHasNoFit() {
    assertThat(aligned().fit(BodyPoint.LEAD_FOREARM)).isEqualTo(spread(0.004));
    assertThatThrownBy(() -> aligned().fit(BodyPoint.THORAX))
        .hasMessageContaining("r has no unit at THORAX");
  }
}
