package steadyturn.ingest.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.InstanceOfAssertFactories.DOUBLE;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

class UnitQualityTest {

  private static final double FAST = Math.toRadians(1000);

  private static MadeUnit hand() {
    return MadeUnit.good(BodyPoint.LEAD_HAND, 500, 60, FAST);
  }

  private static UnitReport judge(MadeUnit unit) {
    return UnitQuality.judge(unit.stream());
  }

  private static void expectOnly(UnitReport report, Check check, Verdict verdict) {
    assertThat(report.findings()).extracting(Check::of).containsExactly(check);
    assertThat(report.verdict()).isEqualTo(verdict);
  }

  @Test
  void aGoodUnitIsFitForUseAndNothingIsSaidAgainstIt() {
    UnitReport report = judge(hand());
    assertThat(report.findings()).isEmpty();
    assertThat(report.verdict()).isEqualTo(Verdict.FIT);
    assertThat(report.lostPct()).isZero();
    assertThat(report.saturatedSamples()).isZero();
    // Given: 500 Hz exactly. Within 1e-6 Hz: the stamps carry rounding of 1e-14 s only.
    assertThat(report.rateHz()).isCloseTo(500, within(1e-6));
  }

  @Test
  void theRestShowsBiasNoiseAndGravityAsTheyWerePutIn() {
    RestFacts rest = judge(hand()).rest();
    // Given: 0.3 deg/s about each axis, so 0.52 deg/s in all; noise 0.1 deg/s and 0.03 m/s^2 an
    // axis.
    // Within 0.02 deg/s: the mean of 350 noisy samples is good to 0.1/sqrt(350) = 0.005 deg/s.
    assertThat(Math.toDegrees(rest.gyroBiasNormRadPerS())).isCloseTo(0.5196, within(0.02));
    // sqrt(3) x 0.1 deg/s; the quietest of many stretches lies up to 15 % below.
    assertThat(Math.toDegrees(rest.gyroNoiseRadPerS())).isBetween(0.147, 0.175);
    assertThat(rest.accelNoiseMps2()).isBetween(0.044, 0.053);
    assertThat(rest.accelNormMps2()).isCloseTo(9.80665, within(0.01));
  }

  @Test
  void twoPercentOfLossIsCountedUnderJitterAndWidensTheIntervals() {
    Random random = new Random(MadeUnit.SEED);
    MadeUnit unit = hand();
    int before = unit.timeS.length;
    unit.without(i -> i > 0 && i < before - 1 && random.nextInt(50) == 0);
    int lost = before - unit.timeS.length;
    jitter(unit, 0.0002, random);
    UnitReport report = judge(unit);
    // Given: 0.2 ms of jitter at 2 ms. Expect: every lost sample counted. Within 5 of some 600: a
    // loss
    // beside a stamp 1 ms late would be needed to miscount, five standard deviations off.
    assertThat(report.timing().lostSamples()).isCloseTo(lost, within(5L));
    assertThat(report.rateHz()).isCloseTo(500, within(0.5));
    assertThat(report.timing().jitterS()).isCloseTo(0.0002, within(0.0001));
    expectOnly(report, Check.LOSS, Verdict.WIDER_INTERVALS);
  }

  private static void jitter(MadeUnit unit, double sdS, Random random) {
    for (int i = 0; i < unit.timeS.length; i++) {
      unit.timeS[i] += sdS * random.nextGaussian();
    }
  }

  @Test
  void timeStampsInWholeMillisecondsAreNoLossAtAnUnevenRate() {
    // Given: 285.71 Hz stamped in whole ms, so steps of 3 and 4 ms. Expect: no loss, the true rate.
    MadeUnit unit = MadeUnit.good(BodyPoint.PELVIS, 285.71, 60, FAST);
    for (int i = 0; i < unit.timeS.length; i++) {
      unit.timeS[i] = Math.rint(unit.timeS[i] * 1000) / 1000;
    }
    UnitReport report = judge(unit);
    assertThat(report.timing().lostSamples()).isZero();
    assertThat(report.rateHz()).isCloseTo(285.71, within(0.05));
  }

  @Test
  void aMissingValueIsALostSample() {
    MadeUnit unit = hand();
    for (int i = 1000; i < 1300; i++) {
      unit.gyro[1][i] = Double.NaN;
    }
    UnitReport report = judge(unit);
    assertThat(report.timing().lostSamples()).isEqualTo(300);
    assertThat(report.timing().gaps()).hasSize(1);
    assertThat(report.timing().gaps().get(0).lostSamples()).isEqualTo(300);
  }

  @Test
  void anUnpluggedUnitShowsOneGapWithItsLength() {
    UnitReport report = judge(hand().without(i -> i >= 15_000 && i < 15_200));
    // Given: 200 samples of 2 ms. Expect: from the last sample before to the first after, 402 ms.
    assertThat(report.timing().longestGapS()).isCloseTo(0.402, within(1e-9));
    assertThat(report.findings()).extracting(Check::of).containsExactly(Check.GAP);
    assertThat(report.verdict()).isEqualTo(Verdict.WIDER_INTERVALS);
    assertThat(report.findings().get(0).what().args())
        .containsEntry("count", 1L)
        .hasEntrySatisfying(
            "longestS", s -> assertThat(s).asInstanceOf(DOUBLE).isCloseTo(0.402, within(1e-9)));
  }

  @Test
  void aTurnBeyondTheStatedRangeIsSaturation() {
    MadeUnit unit = MadeUnit.good(BodyPoint.LEAD_HAND, 500, 60, Math.toRadians(3300));
    MadeUnit.clip(unit.gyro, Math.toRadians(2000));
    UnitReport report = judge(unit);
    // Given: a half sine of 0.5 s peaking at 0.64 x 3300 = 2112 deg/s on z, six times. It is above
    // 1998 deg/s while sin > 0.946: 0.105 s, 52 samples; x and y stay below.
    assertThat(report.saturatedSamples()).isCloseTo(6 * 52, within(12));
    assertThat(report.findings()).extracting(Check::of).contains(Check.SATURATION);
    assertThat(report.findings()).extracting(Check::of).doesNotContain(Check.STUCK);
  }

  @Test
  void anUnstatedRangeShowsItselfByFlatTops() {
    MadeUnit unit =
        MadeUnit.of(UnitFacts.plain(BodyPoint.LEAD_HAND, 500), 60, Math.toRadians(3300));
    MadeUnit.clip(unit.gyro, Math.toRadians(1000));
    UnitReport report = judge(unit);
    assertThat(Math.toDegrees(report.saturation().gyroFullScaleRadPerS()))
        .isCloseTo(1000, within(1e-9));
    assertThat(report.saturatedSamples()).isGreaterThan(500);
    // No flat top was planted in the accelerations, so no range is inferred there.
    assertThat(report.saturation().accelFullScaleMps2()).isInfinite();
  }

  @Test
  void anImpactBeyondTheRangeIsNotHeldAgainstTheUnit() {
    MadeUnit unit = hand();
    for (int i = 2300; i < 2306; i++) {
      unit.accel[0][i] = 16 * 9.80665;
    }
    UnitReport report = judge(unit);
    assertThat(report.saturatedSamples()).isEqualTo(6);
    expectOnly(report, Check.SATURATION, Verdict.FIT);
  }

  @Test
  void aChannelThatNeverChangesMakesTheUnitUseless() {
    MadeUnit unit = hand();
    Arrays.fill(unit.gyro[2], 0);
    UnitReport report = judge(unit);
    expectOnly(report, Check.STUCK, Verdict.NOT_USABLE);
    assertThat(report.findings().get(0).what())
        .isEqualTo(Reason.of(QualityReason.CONSTANT, "gyro-z"));
  }

  @Test
  void anAxisThatShowsNoiseOnlyIsDead() {
    // Given: noise of 2 mrad/s on one axis of a hand that turns by 480 deg/s and more about both
    // others. Expect: not usable, with its name.
    MadeUnit unit = hand();
    Random noise = new Random(5);
    Arrays.setAll(unit.gyro[2], i -> 0.002 * noise.nextGaussian());
    assertThat(judge(unit).findings())
        .extracting(Finding::what)
        .contains(Reason.of(QualityReason.DEAD, "gyro-z"));
  }

  @Test
  void samplesFarFromTheirNeighboursAreTakenOut() {
    // Given: 20 single samples of the gyroscope and 20 of the accelerometer, a second apart.
    // Expect: told, and nothing measured in their place and nowhere else; three of them, as of
    // taps on the unit, are left.
    MadeUnit unit = hand();
    int[] at = IntStream.range(0, 40).map(k -> 300 + 200 * k).toArray();
    for (int k = 0; k < at.length; k++) {
      (k % 2 == 0 ? unit.gyro[1] : unit.accel[0])[at[k]] = k % 2 == 0 ? 15 : -60;
    }
    UnitStream stream = unit.stream();
    assertThat(WildSamples.count(stream)).isEqualTo(40);
    UnitStream tame = WildSamples.without(stream);
    assertThat(IntStream.range(0, tame.size()).filter(i -> !tame.isWhole(i)).toArray())
        .isEqualTo(at);
    assertThat(WildSamples.count(stream)).as("the stream itself stays as it was").isEqualTo(40);
    MadeUnit tapped = hand();
    for (int i = 300; i < 900; i += 200) {
      tapped.accel[0][i] = -60;
    }
    assertThat(WildSamples.count(tapped.stream())).isZero();
  }

  @Test
  void aChannelThatHangsDuringASwingIsNamed() {
    MadeUnit unit = hand();
    Arrays.fill(unit.accel[1], 7000, 7260, unit.accel[1][7000]);
    UnitReport report = judge(unit);
    expectOnly(report, Check.STUCK, Verdict.NOT_USABLE);
    Reason what = report.findings().get(0).what();
    assertThat(what.code()).isEqualTo(QualityReason.HELD);
    assertThat(what.args()).containsEntry("channel", "accel-y");
    // Given: 260 samples of 2 ms. Expect: 0.52 s. Within 1e-9 s: rounding.
    assertThat(what.args().get("heldS")).asInstanceOf(DOUBLE).isCloseTo(0.52, within(1e-9));
  }

  @Test
  void repeatedValuesInMidMovementAreNoticed() {
    MadeUnit unit = hand();
    for (int axis = 0; axis < 3; axis++) {
      Arrays.fill(unit.gyro[axis], 7060, 7090, unit.gyro[axis][7060]);
      Arrays.fill(unit.accel[axis], 7060, 7090, unit.accel[axis][7060]);
    }
    expectOnly(judge(unit), Check.FROZEN, Verdict.WIDER_INTERVALS);
  }

  @Test
  void aUnitWithoutNoiseThatLiesStillIsNotCalledStuck() {
    MadeUnit unit = hand();
    for (double[] column : List.of(unit.gyro[0], unit.gyro[1], unit.gyro[2])) {
      Arrays.fill(column, 0, 2000, 0);
    }
    assertThat(judge(unit).findings()).isEmpty();
  }

  @Test
  void aUnitThatIsNeverStillIsToldSo() {
    MadeUnit unit = hand();
    for (int i = 0; i < unit.timeS.length; i++) {
      unit.gyro[0][i] += Math.toRadians(40) * Math.sin(9 * unit.timeS[i]);
    }
    expectOnly(judge(unit), Check.REST, Verdict.WIDER_INTERVALS);
  }

  @Test
  void aLargeBiasIsNamedWithItsFigure() {
    MadeUnit unit = hand();
    for (int i = 0; i < unit.timeS.length; i++) {
      unit.gyro[0][i] += Math.toRadians(8);
    }
    UnitReport report = judge(unit);
    expectOnly(report, Check.GYRO_BIAS, Verdict.WIDER_INTERVALS);
    Reason what = report.findings().get(0).what();
    assertThat(what.code()).isEqualTo(QualityReason.BIAS);
    // Within 0.05 deg/s: what was printed before with one decimal.
    assertThat(what.args().get("biasDegPerS")).asInstanceOf(DOUBLE).isCloseTo(8.3, within(0.05));
  }

  @Test
  void accelerationsInGAreRecognised() {
    MadeUnit unit = hand();
    for (double[] column : unit.accel) {
      for (int i = 0; i < column.length; i++) {
        column[i] /= 9.80665;
      }
    }
    UnitReport report = judge(unit);
    expectOnly(report, Check.GRAVITY, Verdict.NOT_USABLE);
    assertThat(report.findings().get(0).what().code()).isEqualTo(QualityReason.GRAVITY_IN_G);
  }

  @Test
  void aNoisyUnitIsNamed() {
    Random random = new Random(MadeUnit.SEED);
    MadeUnit unit = hand();
    for (int i = 0; i < unit.timeS.length; i++) {
      unit.gyro[0][i] += Math.toRadians(2.3) * random.nextGaussian();
    }
    expectOnly(judge(unit), Check.NOISE, Verdict.WIDER_INTERVALS);
  }

  @Test
  void aUnitThatRunsAtHalfItsStatedRateIsToldSo() {
    expectOnly(judge(hand().without(i -> i % 2 == 1)), Check.RATE, Verdict.WIDER_INTERVALS);
  }

  @Test
  void anEmptyStreamIsNotUsableAndThrowsNothing() {
    UnitStream empty =
        new UnitStream(
            UnitFacts.plain(BodyPoint.PELVIS, 100),
            new double[0],
            new double[3][0],
            new double[3][0]);
    UnitReport report = UnitQuality.judge(empty);
    expectOnly(report, Check.LENGTH, Verdict.NOT_USABLE);
    assertThat(report.lostPct()).isEqualTo(100);
  }

  @Test
  void aStreamOfNothingButMissingValuesIsNotUsable() {
    MadeUnit unit = hand();
    Arrays.stream(unit.gyro).forEach(column -> Arrays.fill(column, Double.NaN));
    assertThat(judge(unit).verdict()).isEqualTo(Verdict.NOT_USABLE);
  }
}
