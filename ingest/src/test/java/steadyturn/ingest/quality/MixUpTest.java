package steadyturn.ingest.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * Units that turn about z at a rate told for every instant and push along z by so much beyond
 * gravity; 100 Hz, so that a bin of 50 ms holds five samples and a block of two seconds forty bins.
 */
class MixUpTest {

  private static UnitStream unit(
      BodyPoint point, double fromS, double lengthS, DoubleUnaryOperator rate, double pushMps2) {
    int n = (int) Math.round(lengthS * 100);
    double[] timeS = new double[n];
    double[][] accel = new double[3][n];
    double[][] gyro = new double[3][n];
    for (int i = 0; i < n; i++) {
      timeS[i] = fromS + (i + 0.5) / 100;
      accel[2][i] = 9.80665 + pushMps2;
      gyro[2][i] = rate.applyAsDouble(timeS[i]);
    }
    return new UnitStream(UnitFacts.plain(point, 100), timeS, accel, gyro);
  }

  private static UnitStream steady(BodyPoint point, double radPerS, double pushMps2) {
    return unit(point, 0, 20, t -> radPerS, pushMps2);
  }

  private static Activity of(UnitStream unit) {
    return Activity.of(unit, List.of());
  }

  @Test
  void aBinHoldsTheMeanSquaresOfItsSamples() {
    // Given: 1, 2, 3, 4, 5 rad/s in the five samples of every bin, -3 m/s^2 of push. Expect: root
    // mean squares of sqrt 11 and 3, at any part of the stream.
    UnitStream unit = unit(BodyPoint.PELVIS, 10, 2, t -> 1 + Math.floor(t * 100 + 1e-6) % 5, -3);
    Activity activity = of(unit);
    assertThat(activity.firstBin()).isEqualTo(200);
    assertThat(activity.endBin()).isEqualTo(240);
    assertThat(activity.point()).isEqualTo(BodyPoint.PELVIS);
    assertThat(activity.gyroRmsRadPerS(200, 240)).isCloseTo(Math.sqrt(11), within(1e-9));
    assertThat(activity.gyroRmsRadPerS(239, 240)).isCloseTo(Math.sqrt(11), within(1e-9));
    assertThat(activity.accelRmsMps2(200, 240)).isCloseTo(3, within(1e-9));
  }

  @Test
  void aLostSampleIsLeftOutAndABinWithoutAnyIsUnknown() {
    UnitStream unit = steady(BodyPoint.PELVIS, 2, 1);
    unit.gyroColumnRadPerS(0)[3] = Double.NaN;
    for (int i = 10; i < 15; i++) {
      unit.accelColumnMps2(1)[i] = Double.NaN;
    }
    Activity activity = of(unit);
    assertThat(activity.gyroRmsRadPerS(0, 2)).isCloseTo(2, within(1e-9));
    assertThat(activity.gyroRmsRadPerS(2, 3)).isNaN();
    assertThat(activity.gyroRmsRadPerS(0, 4)).isNaN();
  }

  @ParameterizedTest
  @CsvSource({"0, 20", "15, 5", "-15, 5", "25, 0", "-25, 0"})
  void theSharedTimeIsThatOfBoth(double fromS, double sharedS) {
    Activity first = of(steady(BodyPoint.PELVIS, 1, 1));
    Activity second = of(unit(BodyPoint.LEAD_HAND, fromS, 20, t -> 1, 1));
    assertThat(first.sharedS(second)).isCloseTo(sharedS, within(1e-9));
  }

  @Test
  void correlationIsPearsonsOverTheBinsOfBoth() {
    // Given: rates a = 1, 2, 3, 4 and b = 2, 1, 4, 3 rad/s in four bins. Expect: 0.6, by hand: mean
    // 2.5, products 0.75 + 0.75 - ... = 3 of 5.
    double[] a = {1, 2, 3, 4};
    double[] b = {2, 1, 4, 3};
    Activity first = of(unit(BodyPoint.PELVIS, 0, 0.2, t -> a[(int) (t / 0.05)], 0));
    Activity second = of(unit(BodyPoint.LEAD_HAND, 0, 0.2, t -> b[(int) (t / 0.05)], 0));
    assertThat(first.correlation(second)).isCloseTo(0.6, within(1e-9));
    Activity longer =
        of(unit(BodyPoint.LEAD_HAND, -1, 1.2, t -> t < 0 ? 9 : b[(int) (t / 0.05)], 0));
    assertThat(first.correlation(longer)).isCloseTo(0.6, within(1e-9));
    assertThat(longer.correlation(first)).isCloseTo(0.6, within(1e-9));
  }

  @Test
  void briskIsWhoTurnsAndPushesMoreInTheBlocksInWhichEitherMoves() {
    // Given: ten blocks; in the first six the first unit turns 3 rad/s to the second's 2, in the
    // seventh 1 to 2, in the rest both below 30 deg/s. Expect: seven blocks, the median ratio 1.5,
    // six of seven faster, pushes 4 to 2.
    Activity first = of(unit(BodyPoint.PELVIS, 0, 20, t -> t < 12 ? 3 : t < 14 ? 1 : 0.5, 4));
    Activity second = of(unit(BodyPoint.LEAD_HAND, 0, 20, t -> t < 14 ? 2 : 0.5, -2));
    Briskness compared = Briskness.of(first, second);
    assertThat(compared.blocks()).isEqualTo(7);
    assertThat(compared.gyroRatio()).isCloseTo(1.5, within(1e-9));
    assertThat(compared.gyroShare()).isCloseTo(6 / 7.0, within(1e-9));
    assertThat(compared.accelRatio()).isCloseTo(2, within(1e-9));
    assertThat(Briskness.of(second, first).gyroRatio()).isCloseTo(2 / 3.0, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"29.9, 0", "30.1, 10"})
  void aBlockCountsFromThirtyDegreesASecond(double degPerS, int blocks) {
    Activity mover = of(steady(BodyPoint.PELVIS, Math.toRadians(degPerS), 1));
    Activity other = of(steady(BodyPoint.LEAD_HAND, Math.toRadians(9), 1));
    assertThat(Briskness.of(mover, other).blocks()).isEqualTo(blocks);
    assertThat(Briskness.of(other, mover).blocks()).isEqualTo(blocks);
  }

  @ParameterizedTest
  @CsvSource({"7.9, 0", "8.1, 10"})
  void aBlockInWhichTheOtherRestsSaysNothing(double degPerS, int blocks) {
    // Given: a trunk that turns at 60 deg/s, beside an arm that hangs, as in a bow.
    Activity mover = of(steady(BodyPoint.PELVIS, Math.toRadians(60), 1));
    Activity rests = of(steady(BodyPoint.LEAD_FOREARM, Math.toRadians(degPerS), 1));
    assertThat(Briskness.of(mover, rests).blocks()).isEqualTo(blocks);
    assertThat(Briskness.of(rests, mover).blocks()).isEqualTo(blocks);
  }

  @ParameterizedTest(name = "arm pulled by {0}, trunk by {1}: {2}")
  @CsvSource({"24, 12, true", "26, 12, false", "26, 27, true"})
  void anArmThatWasOnceSwungIsNoTrunk(double armMps2, double trunkMps2, boolean swapped) {
    // Given: a trunk that turns more than the arm, but for half a second in which they are pulled;
    // the mark of a step that nobody ended lies over it. Expect: it counts all the same.
    List<Mark> step = List.of(new Mark(0, 2, "turn-on-spot", "", ""));
    Activity trunk = Activity.of(pulled(BodyPoint.PELVIS, 3, trunkMps2), step);
    Activity arm = Activity.of(pulled(BodyPoint.LEAD_FOREARM, 1, armMps2), step);
    assertThat(UnitMixUp.ofFirst(trunk, arm)).hasSize(swapped ? 1 : 0);
    assertThat(UnitMixUp.ofFirst(arm, trunk)).hasSize(swapped ? 1 : 0);
  }

  private static UnitStream pulled(BodyPoint point, double radPerS, double pullMps2) {
    UnitStream unit = steady(point, radPerS, 1);
    for (int i = 100; i < 150; i++) {
      unit.accelColumnMps2(2)[i] = 9.80665 + pullMps2;
    }
    return unit;
  }

  private static List<Finding> between(UnitStream first, UnitStream second) {
    return UnitMixUp.ofFirst(of(first), of(second));
  }

  @ParameterizedTest(name = "{0} turns {2} and pushes {3} times as much as {1}: {4}")
  @CsvSource({
    "PELVIS, LEAD_HAND, 1.42, 1.22, true",
    "PELVIS, LEAD_HAND, 1.38, 1.22, false",
    "PELVIS, LEAD_HAND, 1.42, 1.18, false",
    "PELVIS, LEAD_HAND, 1.82, 0.62, true",
    "PELVIS, LEAD_HAND, 1.82, 0.58, false",
    "PELVIS, LEAD_HAND, 1.78, 0.62, false",
    "THORAX, LEAD_FOREARM, 1.42, 1.22, true",
    "LEAD_FOREARM, LEAD_HAND, 1.07, 1.12, true",
    "LEAD_FOREARM, LEAD_HAND, 1.05, 1.12, false",
    "LEAD_FOREARM, LEAD_HAND, 1.07, 1.08, false",
    "LEAD_HAND, CLUB_SHAFT, 1.22, 1.12, true",
    "LEAD_HAND, CLUB_SHAFT, 1.18, 1.12, false",
    "PELVIS, THORAX, 9, 9, false"
  })
  void anInnerUnitThatMovesMoreIsExchanged(
      BodyPoint inner, BodyPoint outer, double turns, double pushes, boolean swapped) {
    // The rate alternates a little, so that neither correlation nor share is undefined.
    UnitStream first = unit(inner, 0, 20, t -> turns * (2 + 0.1 * Math.sin(9 * t)), pushes);
    UnitStream second = unit(outer, 0, 20, t -> 2 + 0.1 * Math.cos(7 * t), 1);
    for (List<Finding> found : List.of(between(first, second), between(second, first))) {
      assertThat(found).hasSize(swapped ? 1 : 0);
      assertThat(found).allMatch(f -> Check.of(f) == Check.SWAPPED);
      assertThat(found).allMatch(f -> f.verdict() == Verdict.NOT_USABLE);
    }
  }

  @ParameterizedTest(name = "{0} blocks: {1}")
  @CsvSource({
    "3, PELVIS, false",
    "4, PELVIS, true",
    "5, LEAD_FOREARM, false",
    "6, LEAD_FOREARM, true"
  })
  void fourMovementsAgreeForATrunkAndSixForAnArm(int blocks, BodyPoint inner, boolean swapped) {
    DoubleUnaryOperator some = t -> t < 2 * blocks ? 1 + 0.01 * Math.sin(9 * t) : 0.01;
    UnitStream first = unit(inner, 0, 20, t -> 2 * some.applyAsDouble(t), 2);
    UnitStream second = unit(BodyPoint.LEAD_HAND, 0, 20, some, 1);
    assertThat(between(first, second)).hasSize(swapped ? 1 : 0);
  }

  @ParameterizedTest(name = "turns {0}, pushes {1}, club {2}: {3}")
  @CsvSource({
    "0.77, 0.62, false, true",
    "0.73, 0.62, false, false",
    "0.77, 0.58, false, false",
    "0.77, 0.62, true, false"
  })
  void aTrunkThatMovesAsOneWithTheArmIsOnTheArm(
      double turns, double pushes, boolean club, boolean told) {
    DoubleUnaryOperator rate = t -> 2 + Math.sin(3 * t);
    UnitStream trunk = unit(BodyPoint.PELVIS, 0, 20, t -> turns * rate.applyAsDouble(t), pushes);
    UnitStream arm = unit(club ? BodyPoint.CLUB_SHAFT : BodyPoint.LEAD_FOREARM, 0, 20, rate, 1);
    assertThat(between(trunk, arm)).hasSize(told ? 1 : 0);
    assertThat(between(arm, trunk)).as("the arm is where it belongs").isEmpty();
  }

  @Test
  void aTrunkThatMovesOnItsOwnIsNotOnTheArm() {
    UnitStream trunk = unit(BodyPoint.PELVIS, 0, 20, t -> 1.8 + Math.sin(3 * t + 1), 0.9);
    UnitStream arm = unit(BodyPoint.LEAD_FOREARM, 0, 20, t -> 2 + Math.sin(3 * t), 1);
    assertThat(between(trunk, arm)).isEmpty();
  }

  private static RecordingReport judged(double handFromS, double handLengthS) {
    return RecordingQuality.judge(
        new Recording(
            "r",
            Player.unmeasured("mika", Handedness.RIGHT),
            List.of(
                new SteadyUnit(BodyPoint.PELVIS, 100, 2001).stream(),
                new SteadyUnit(BodyPoint.LEAD_HAND, 100, (int) (100 * handLengthS) + 1)
                    .stream().shifted(handFromS)),
            List.of()));
  }

  @ParameterizedTest
  @CsvSource({
    "9.9, 20, nothing", "10.1, 20, WIDER_INTERVALS", "-9.9, 20, nothing",
        "-10.1, 20, WIDER_INTERVALS",
    "18.9, 20, WIDER_INTERVALS", "19.1, 20, NOT_USABLE", "17.4, 5, nothing",
        "17.6, 5, WIDER_INTERVALS"
  })
  void unitsShareHalfOfTheShorterOne(double fromS, double lengthS, String verdict) {
    // Given: a pelvis unit of 20 s. Expect: half of the shorter is enough; under a second none.
    List<Finding> findings =
        Check.unit(judged(fromS, lengthS), BodyPoint.LEAD_HAND).orElseThrow().findings();
    if (verdict.equals("nothing")) {
      assertThat(findings).isEmpty();
    } else {
      assertThat(findings).extracting(Check::of).containsExactly(Check.OVERLAP);
      assertThat(findings.get(0).verdict()).isEqualTo(Verdict.valueOf(verdict));
    }
    assertThat(Check.unit(judged(fromS, lengthS), BodyPoint.PELVIS).orElseThrow().findings())
        .isEmpty();
  }

  @Test
  void theWorstVerdictCounts() {
    assertThat(Verdict.FIT.worse(Verdict.NOT_USABLE)).isEqualTo(Verdict.NOT_USABLE);
    assertThat(Verdict.NOT_USABLE.worse(Verdict.WIDER_INTERVALS)).isEqualTo(Verdict.NOT_USABLE);
    assertThat(Verdict.FIT.worse(Verdict.FIT)).isEqualTo(Verdict.FIT);
    assertThat(judged(19.1, 20).verdict()).isEqualTo(Verdict.NOT_USABLE);
    assertThat(judged(0, 20).verdict()).isEqualTo(Verdict.FIT);
    assertThat(Check.unit(judged(0, 20), BodyPoint.THORAX)).isEmpty();
  }
}
