package steadyturn.ingest.quality.gravity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.quality.gravity.GravityTurns.Pair;
import steadyturn.ingest.quality.gravity.GravityTurns.Reading;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * Which moments pass for calm and which two make a pair, to either side of each limit (our
 * choices); and what pairs that miss count. Given in all: gravity of 9.8 m/s^2 that leans about x
 * by a course of angles, no noise, 200 Hz; so a moment is 13 samples, the first one whose
 * neighbours are known has its middle at sample 19.
 */
class GravityMomentsTest {

  private static final double G = 9.8;
  private static final int FIRST = 19;
  private static final int LENGTH = 13;

  private final List<double[]> rows = new ArrayList<>();
  private double leanDeg;
  private double rateHz = 200;

  private void add(double times, double shake, double rateX) {
    double up = Math.toRadians(leanDeg);
    double sign = rows.size() % 2 == 0 ? 1 : -1;
    rows.add(
        new double[] {
          rows.size() / rateHz,
          sign * shake,
          times * G * Math.sin(up),
          times * G * Math.cos(up),
          rateX,
          0,
          0
        });
  }

  private void hold(int samples) {
    hold(samples, 1, 0);
  }

  private void hold(int samples, double times, double shake) {
    for (int i = 0; i < samples; i++) {
      add(times, shake, 0);
    }
  }

  /** Not calm: shaken by 5 m/s^2. */
  private void shaken(int samples) {
    hold(samples, 1, 5);
  }

  private void leanTo(double deg, int samples) {
    double stepDeg = (deg - leanDeg) / samples;
    for (int i = 0; i < samples; i++) {
      leanDeg += stepDeg;
      add(1, 0, Math.toRadians(stepDeg) * rateHz);
    }
  }

  private UnitStream stream() {
    int n = rows.size();
    double[][] columns = new double[7][n];
    for (int i = 0; i < n; i++) {
      for (int k = 0; k < 7; k++) {
        columns[k][i] = rows.get(i)[k];
      }
    }
    return new UnitStream(
        UnitFacts.plain(BodyPoint.PELVIS, rateHz),
        columns[0],
        new double[][] {columns[1], columns[2], columns[3]},
        new double[][] {columns[4], columns[5], columns[6]});
  }

  private GravityTurns found() {
    return GravityTurns.of(stream(), G, List.of(0.0, 0.0, 0.0));
  }

  @ParameterizedTest
  @CsvSource({"11.8, 0", "12.2, 1", "-11.8, 0", "-12.2, 1"})
  void aTurnOfTwelveDegreesIsAPair(double deg, int pairs) {
    hold(200);
    leanTo(deg, 60);
    hold(200);
    assertThat(found().pairs()).hasSize(pairs);
  }

  @ParameterizedTest
  @CsvSource({"1.029, 1", "1.031, 0", "0.971, 1", "0.969, 0"})
  void aCalmForceIsAsLongAsGravity(double times, int pairs) {
    hold(104);
    leanDeg = 20;
    hold(200, times, 0);
    assertThat(found().pairs()).hasSize(pairs);
  }

  @ParameterizedTest
  @CsvSource({"0.47, 1", "0.49, 0"})
  void aCalmForceHardlySpreads(double shake, int pairs) {
    // 13 samples of +- a have the variance (13 - 1/13) a^2 / 12: 0.5 m/s^2 at 0.482.
    hold(104);
    leanDeg = 20;
    hold(200, 1, shake);
    assertThat(found().pairs()).hasSize(pairs);
  }

  @ParameterizedTest
  @CsvSource({"61, 1", "62, 0"})
  void ratesAreFollowedForFourSeconds(int moments, int pairs) {
    // From the middle of the second moment to that of the same one behind so many: 65 ms each.
    hold(39);
    shaken(LENGTH * moments - 39);
    leanDeg = 30;
    hold(100);
    assertThat(found().pairs()).hasSize(pairs);
  }

  @Test
  void theStartMovesAlongAfterTwoSecondsWithoutATurn() {
    // 31 moments are 2.015 s: the first beyond 2 s.
    hold(LENGTH * 45);
    leanDeg = 30;
    hold(100);
    Pair pair = found().pairs().get(0);
    assertThat(pair.from()).isEqualTo(FIRST + 31 * LENGTH);
    assertThat(pair.to()).isEqualTo(FIRST + 45 * LENGTH);
    assertThat(pair.before()).containsExactly(new double[] {0, 0, 1}, within(1e-12));
    assertThat(pair.after()).containsExactly(new double[] {0, 0.5, 0.75}, within(0.12));
    assertThat(GravityTurns.angle(pair.before(), pair.after()))
        .isCloseTo(Math.toRadians(30), within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"3.9, 4", "4.1, 0"})
  void gravityAloneIsFeltWhereItTurnsSlowly(double degPerMoment, int pairs) {
    // Given: an even turn of so much a moment, 18 moments long and no end. Expect: a pair every
    // four moments, as 12 deg are three and a bit, or none.
    hold(130);
    leanTo(18 * degPerMoment, 18 * LENGTH);
    assertThat(found().pairs()).hasSize(pairs);
  }

  @ParameterizedTest
  @CsvSource({"2, 1", "3, 0"})
  void whatWasLostBetweenIsNotFollowed(int lost, int pairs) {
    // Given: so many samples lost while it leans; 3.5 usual steps are bridged.
    hold(104);
    leanTo(30, 26);
    hold(200);
    for (int i = 0; i < lost; i++) {
      rows.remove(110);
    }
    assertThat(found().pairs()).hasSize(pairs);
  }

  @Test
  void aRateThatWasLostBetweenIsNotFollowed() {
    hold(104);
    leanTo(30, 26);
    hold(200);
    assertThat(found().pairs()).hasSize(1);
    rows.get(110)[5] = Double.NaN;
    assertThat(found().pairs()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"30, 30", "31, 16", "61, 21"})
  void thirtyPairsAreEnough(int turns, int kept) {
    hold(65);
    for (int k = 0; k < turns; k++) {
      leanDeg = 15 - leanDeg;
      hold(65);
    }
    assertThat(found().pairs()).hasSize(kept);
  }

  @ParameterizedTest
  @CsvSource({"50, 5", "100, 7", "200, 13", "1000, 61"})
  void aMomentIsSixHundredthsOfASecondOrFiveSamples(double hz, int length) {
    rateHz = hz;
    hold(8 * length);
    leanDeg = 20;
    hold(8 * length);
    Pair pair = found().pairs().get(0);
    assertThat(pair.from()).isEqualTo(length + length / 2);
    assertThat(pair.to()).isEqualTo(9 * length + length / 2);
  }

  @ParameterizedTest
  @CsvSource({"30, 1", "0, 2", "16, 1", "14, 2"})
  void turnsThatGrowAreOneWideTurn(double lastDeg, int wide) {
    // Given: 0 to 15 deg and on. Expect: one from first to last where gravity ends farther away.
    // 14 and 16 deg are reached by way of another plane, so that each is a turn of its own.
    hold(65);
    leanDeg = 15;
    hold(65);
    if (Math.abs(lastDeg - 15) > 2) {
      leanDeg = lastDeg;
      hold(65);
    } else {
      double z = Math.cos(Math.toRadians(lastDeg));
      for (int i = 0; i < 65; i++) {
        add(1, 0, 0);
        rows.get(rows.size() - 1)[1] = G * Math.sqrt(1 - z * z);
        rows.get(rows.size() - 1)[2] = 0;
        rows.get(rows.size() - 1)[3] = G * z;
      }
    }
    GravityTurns turns = found();
    assertThat(turns.pairs()).hasSize(2);
    assertThat(turns.widePairs()).hasSize(wide);
    assertThat(turns.widePairs().get(0).from()).isEqualTo(FIRST);
    if (wide == 1) {
      assertThat(turns.widePairs().get(0).to()).isEqualTo(turns.pairs().get(1).to());
    }
  }

  /** Pairs that start upright and are so far off, deg, by a unit at a rate about the vertical. */
  private static GravityTurns off(double rateZ, int samples, double... offDeg) {
    double[] timeS = new double[samples + 1];
    double[][] gyro = new double[3][samples + 1];
    for (int i = 0; i <= samples; i++) {
      timeS[i] = i / 100.0;
      gyro[2][i] = rateZ;
    }
    UnitStream unit =
        new UnitStream(
            UnitFacts.plain(BodyPoint.PELVIS, 100), timeS, new double[3][samples + 1], gyro);
    List<Double> none = List.of(0.0, 0.0, 0.0);
    List<Pair> pairs = new ArrayList<>();
    for (double deg : offDeg) {
      double rad = Math.toRadians(deg);
      double[] after = {Math.sin(rad), 0, Math.cos(rad)};
      Pair pair =
          new Pair(
              0, samples, new double[] {0, 0, 1}, after, GravityTurns.CALM_SD_RAD, new double[0]);
      pairs.add(pair.ready(unit, none));
    }
    return new GravityTurns(unit, none, pairs, List.of());
  }

  @Test
  void theMisfitIsTheMeanSquareOfAllButTheWorst() {
    // Given: 20 pairs 0.5, 1, ... 10 deg off, without a turn: 2.5 deg are expected. Expect: of the
    // best 17 the mean of (0.2 i)^2 = 0.04 * 1785 / 17; 16 at most for each.
    double[] offDeg = new double[20];
    for (int i = 0; i < 20; i++) {
      offDeg[i] = 0.5 * (i + 1);
    }
    assertThat(off(0, 10, offDeg).misfit(Reading.AS_GIVEN)).isCloseTo(4.2, within(1e-9));
    assertThat(off(0, 10, 30, 30, 30).misfit(Reading.AS_GIVEN)).isEqualTo(16);
    assertThat(off(0, 10, 9.9).misfit(Reading.AS_GIVEN)).isCloseTo(15.6816, within(1e-6));
  }

  @ParameterizedTest
  @CsvSource({"1, 2.6436", "-4, 4.2507", "17, 14.8228", "30, 15", "-30, 15"})
  void aLongWayMayMissByMore(double wayRad, double expectedDeg) {
    // Given: so many rad about the vertical in 1 s. Expect: 2.5 deg and 1.5 % of the way together
    // (squares added), 15 deg at most.
    assertThat(off(wayRad, 100, expectedDeg).misfit(Reading.AS_GIVEN)).isCloseTo(1, within(1e-3));
  }
}
