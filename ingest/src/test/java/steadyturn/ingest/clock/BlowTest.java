package steadyturn.ingest.clock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;
import steadyturn.ingest.shock.BlowDelay;

/**
 * Units without noise at 1000 Hz that feel twelve blows, each a jump between two samples, and
 * nothing else: the alignment against what was put in.
 */
class BlowTest {

  private static final int SAMPLES = 120_000;
  private static final double[] BLOWS_S = {
    5.1, 14.3, 22.9, 31.7, 43.1, 50.6, 61.2, 70.9, 82.4, 91.8, 103.3, 112.7
  };

  /**
   * A unit whose clock shows t less an offset and a skew, and that feels each blow so much late.
   */
  private static UnitStream unit(BodyPoint point, double offsetS, double skewPpm, double lateS) {
    double[] timeS = new double[SAMPLES];
    double[][] accel = new double[3][SAMPLES];
    for (int i = 0; i < SAMPLES; i++) {
      double trueS = i / 1000.0;
      timeS[i] = (trueS - offsetS) / (1 + skewPpm * 1e-6);
      for (double blowS : BLOWS_S) {
        accel[0][i] += trueS > blowS + lateS + 0.0003 ? 40 : 0;
      }
      accel[2][i] = 9.80665;
    }
    return new UnitStream(UnitFacts.plain(point, 1000), timeS, accel, new double[3][SAMPLES]);
  }

  private static AlignedRecording aligned(UnitStream... units) {
    return CommonClock.align(
        new Recording(
            "made", Player.unmeasured("mika", Handedness.RIGHT), List.of(units), List.of()));
  }

  @ParameterizedTest
  @CsvSource({"0.02, 30", "-0.02, -30", "0.02, -30", "0, 0"})
  void theHandComesOntoTheForearmsClock(double offsetS, double skewPpm) {
    // Given: reference = t + offset + skew t. Expect: both within what half a sample at twelve
    // blows
    // over 108 s allows: 0.3 ms, and 5 ppm; the spread names the 0.3 ms that a blow may take.
    AlignedRecording aligned =
        aligned(
            unit(BodyPoint.LEAD_FOREARM, 0, 0, 0), unit(BodyPoint.LEAD_HAND, offsetS, skewPpm, 0));
    ClockFit fit = aligned.fit(BodyPoint.LEAD_HAND);
    assertThat(fit.correctionS(0)).isCloseTo(offsetS, within(0.0004));
    assertThat(fit.correctionS(100) - fit.correctionS(0))
        .isCloseTo(100 * skewPpm * 1e-6, within(0.0005));
    assertThat(fit.pairs()).isEqualTo(12);
    assertThat(fit.sdS()).isBetween(0.0003, 0.0006);
    UnitStream moved = aligned.recording().unit(BodyPoint.LEAD_HAND).orElseThrow();
    assertThat(moved.timeS(50_000)).isCloseTo(50, within(0.0005));
    assertThat(moved.accelMps2(0, 50_000)).isEqualTo(5 * 40);
  }

  @ParameterizedTest
  @CsvSource({"PELVIS, LEAD_HAND", "LEAD_FOREARM, THORAX", "PELVIS, CLUB_SHAFT"})
  void aTrunkFeelsABlowLate(BodyPoint first, BodyPoint second) {
    // Given: clocks that agree, and a trunk that feels each blow later by the delay of the design.
    // Expect: no correction, though the blows themselves lie so far apart; within 0.6 ms, half a
    // sample of either. The spread holds the delay's own
    // and what a dull onset adds.
    double firstLateS = first == BodyPoint.PELVIS ? BlowDelay.TRUNK_S : 0;
    double secondLateS = second == BodyPoint.THORAX ? BlowDelay.TRUNK_S : 0;
    AlignedRecording aligned =
        aligned(unit(first, 0, 0, firstLateS), unit(second, 0, 0, secondLateS));
    ClockFit fit = aligned.fit(second);
    assertThat(fit.pairs()).isEqualTo(12);
    assertThat(fit.correctionS(60)).isCloseTo(0, within(0.0006));
    assertThat(fit.sdS()).isBetween(BlowDelay.TRUNK_SD_S, BlowDelay.TRUNK_SD_S + 0.0015);
  }
}
