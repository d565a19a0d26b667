package steadyturn.ingest.quality.gravity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.quality.gravity.GravityTurns.Pair;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * How much farther gravity turned than the rates say. Given in all: a unit that says 1 rad about x
 * in 1 s, and so many pairs of moments between which gravity turned farther by given angles. A calm
 * moment's spread is 2.5 deg, so 1 rad is 22.92 spreads.
 */
class TurnScaleTest {

  private static final double SPREADS = 1 / Math.toRadians(2.5);

  private static TurnScale scale(double turnRad, double... furtherDeg) {
    return scale(GravityTurns.CALM_SD_RAD, turnRad, furtherDeg);
  }

  private static TurnScale scale(double sdRad, double turnRad, double[] furtherDeg) {
    double[] timeS = new double[101];
    double[][] gyro = new double[3][101];
    for (int i = 0; i <= 100; i++) {
      timeS[i] = i / 100.0;
      gyro[0][i] = turnRad;
    }
    UnitStream unit =
        new UnitStream(UnitFacts.plain(BodyPoint.PELVIS, 100), timeS, new double[3][101], gyro);
    List<Double> none = List.of(0.0, 0.0, 0.0);
    List<Pair> pairs = new ArrayList<>();
    for (double deg : furtherDeg) {
      double angle = turnRad + Math.toRadians(deg);
      double[] after = {0, Math.sin(angle), Math.cos(angle)};
      Pair pair = new Pair(0, 100, new double[] {0, 0, 1}, after, sdRad, new double[0]);
      pairs.add(pair.ready(unit, none));
    }
    return TurnScale.of(new GravityTurns(unit, none, List.of(), pairs));
  }

  @Test
  void aLittleFartherIsItsPartOfTheTurn() {
    // Given: four pairs 1 deg farther. Expect: 1 deg of 1 rad; the spread of squares 0.3 at least.
    TurnScale scale = scale(1, 1, 1, 1, 1);
    assertThat(scale.off()).isCloseTo(Math.toRadians(1), within(1e-5));
    assertThat(scale.sd()).isCloseTo(Math.sqrt(0.3 / 4) / SPREADS, within(1e-5));
    assertThat(scale(1, -1, -1, -1, -1).off()).isCloseTo(-Math.toRadians(1), within(1e-5));
  }

  @Test
  void aPairThatLiesFarOffHardlyCounts() {
    // Given: eight pairs that fit and one 25 deg off: along the turn its chord is 9.70 spreads, the
    // square of it 98.4. Expect: Cauchy's weight 1 / (1 + 98.4 / 4) = 0.039 for it, so it moves the
    // mean by 9.70 * 0.039 / 8.039; squares of 0.039 * 98.4 / 8.039.
    TurnScale scale = scale(1, 0, 0, 0, 0, 0, 0, 0, 0, 25);
    assertThat(scale.off()).isCloseTo(9.70 * 0.039 / 8.039 / SPREADS, within(1e-4));
    double squares = 0.039 * 98.4 / 8.039;
    assertThat(scale.sd()).isCloseTo(Math.sqrt(squares / 8.039) / SPREADS, within(3e-4));
  }

  @ParameterizedTest
  @CsvSource({"25.5, true", "24.5, false", "-25.5, true"})
  void onlyTurnsOfTwentyFiveDegreesCount(double turnDeg, boolean isKnown) {
    TurnScale scale = scale(Math.toRadians(turnDeg), 0, 0, 0, 0);
    assertThat(Double.isFinite(scale.sd())).isEqualTo(isKnown);
  }

  @Test
  void threePairsAreWorthNoMoreThanTheirCalmMoments() {
    // Given: three pairs 1 deg farther. Expect: spreads of 1 each, not the 0.3 of chance; two:
    // none.
    assertThat(scale(1, 1, 1, 1).sd()).isCloseTo(Math.sqrt(1 / 3.0) / SPREADS, within(1e-5));
    assertThat(scale(1, 1, 1)).isEqualTo(TurnScale.UNKNOWN);
  }

  @Test
  void whatASoundUnitsScaleMayBeOffIsInTheSpread() {
    // Expect: 0.6 % of a calibrated unit, 2 % of another (its force's bias leans what is up).
    TurnScale seen = new TurnScale(0.01, 0.02);
    UnitFacts raw = UnitFacts.plain(BodyPoint.PELVIS, 200);
    assertThat(seen.of(raw.asCalibrated())).isEqualTo(new TurnScale(0.01, Math.hypot(0.02, 0.006)));
    assertThat(seen.of(raw).sd()).isCloseTo(Math.hypot(0.02, 0.02), within(1e-12));
  }

  @Test
  void oneTurnFromStillToStillTellsAndTwoMerelyCalmOnesDoNot() {
    // Given: one turn of 1 rad, 3 deg farther, still at both ends, known to 1 deg. Expect: 3 deg of
    // 1 rad; its spread three times in the square, as there is one instead of three.
    TurnScale still = scale(Math.toRadians(1), 1, new double[] {3});
    assertThat(still.off()).isCloseTo(Math.toRadians(3), within(1e-4));
    assertThat(still.sd() / Math.toRadians(1)).isBetween(Math.sqrt(3), 1.6 * Math.sqrt(3));
    assertThat(scale(1, 3, 3)).isEqualTo(TurnScale.UNKNOWN);
  }

  @ParameterizedTest
  @CsvSource({
    "0, 0.006, 0, 0.002", // seen as stated: hardly a doubt
    "0, 1e9, 0.019, 0.022", // nothing seen: one in five is off by 8 % at most, evenly
    "0.037, 0.016, 0.015, 0.037", // a hint, too weak to refuse the unit
    "0.05, 0.006, 0.04, 0.06" // seen as off
  })
  void whatIsNotSeenOfARateStaysInDoubt(double off, double sd, double least, double most) {
    // Given: how far gravity turned beside the rates. Expect of nothing seen: sqrt(0.2 / 3) of 8 %,
    // 0.0207; of the last all of it. Within: Bayes' rule by hand for the first: 0.2 * sqrt(2 pi) *
    // 0.006 / 0.16 of 0.8 is 0.023, its root times 0.006 is 0.0009.
    assertThat(new TurnScale(off, sd).doubt()).isBetween(least, most);
    assertThat(TurnScale.UNKNOWN.doubt()).isBetween(0.0205, 0.0209);
  }

  @Test
  void unitsThatTellNothingDoNotCountInTheMean() {
    // Given: 4 % seen to 1 % by one unit, nothing by another. Expect: the first's.
    TurnScale common = TurnScale.common(List.of(new TurnScale(0.04, 0.01), TurnScale.UNKNOWN));
    assertThat(common.off()).isCloseTo(0.04, within(1e-12));
    assertThat(common.sd()).isCloseTo(0.01, within(1e-12));
    assertThat(TurnScale.common(List.of(TurnScale.UNKNOWN)).sd()).isInfinite();
  }
}
