package steadyturn.fusion.rest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.trial.MadeUnit;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** Where a rest begins and ends, from movements in closed form at 200 Hz. */
class RestBordersTest {

  private static final UnitFacts FACTS = UnitFacts.plain(BodyPoint.PELVIS, 200);
  private static final Vector3 BIAS = new Vector3(0.02, -0.03, 0.01);
  private static final Vector3 SKEW = new Vector3(2, -3, 6).times(1 / 7.0);

  /** Turns at 60 deg/s but from fromS to toS, where it sways and shakes by so much RMS. */
  private static UnitStream stream(double fromS, double toS, double swayDegPerS, double shakeMps2) {
    double turns = 2 * Math.PI * 40; // five samples a period
    return MadeUnit.of(
        FACTS,
        8,
        t -> {
          double rms = t >= fromS - 1e-9 && t < toS - 1e-9 ? swayDegPerS : 60;
          return BIAS.plus(SKEW.times(Math.toRadians(rms) * Math.sqrt(2) * Math.sin(turns * t)));
        },
        t -> new Vector3(1, 2, 9).plus(SKEW.times(shakeMps2 * Math.sqrt(2) * Math.cos(turns * t))));
  }

  private static Optional<Rest> before(UnitStream stream, double earliestS, double untilS) {
    return new RestGate(RestSettings.address()).before(stream, BIAS, earliestS, untilS);
  }

  private static Optional<Rest> after(UnitStream stream, double fromS, double latestS) {
    return new RestGate(RestSettings.address()).after(stream, BIAS, fromS, latestS);
  }

  @Test
  void aRestKeepsWithinTheStillnessByAThirdOfAWindow() {
    // Given: still from 2 to 4 s, windows of 0.15 s in steps of 0.05 s. Expect: begins and ends
    // within 0.05 s of it, never outside; its own RMS 1 deg/s within 5 % (cut periods).
    UnitStream stream = stream(2, 4, 1, 0.1);
    for (Rest rest : new Rest[] {before(stream, 0, 6).get(), after(stream, 0, 8).get()}) {
      assertThat(rest.startS()).isBetween(2 - 1e-9, 2.05 + 1e-9);
      assertThat(rest.endS()).isBetween(3.95 - 1e-9, 4 + 1e-9);
      double rms = RestGate.rateRmsRadPerS(stream, BIAS, rest.startS(), rest.endS());
      assertThat(Math.toDegrees(rms)).isCloseTo(1, within(0.05));
      assertThat(rest.lengthS()).isEqualTo(rest.endS() - rest.startS());
    }
  }

  @Test
  void aLongStillnessGivesTheLongestRestNextToTheMoment() {
    // Given: still from 1 to 7 s. Expect: 2.5 s of it, ending or beginning at the moment asked for;
    // asked within 0.8 s of stillness, that. Within 1e-6 s: whole steps of 0.05 s fit.
    UnitStream stream = stream(1, 7, 1, 0.1);
    Rest last = before(stream, 0, 6).get();
    assertThat(last.endS()).isEqualTo(6);
    assertThat(last.lengthS()).isCloseTo(2.5, within(1e-6));
    Rest first = after(stream, 2, 8).get();
    assertThat(first.startS()).isEqualTo(2);
    assertThat(first.lengthS()).isCloseTo(2.5, within(1e-6));
    Rest looked = before(stream, 5.2, 6).get();
    assertThat(looked.startS()).isCloseTo(5.2, within(1e-6));
    Rest ahead = after(stream, 2, 2.8).get();
    assertThat(ahead.endS()).isCloseTo(2.8, within(1e-6));
  }

  @ParameterizedTest
  @CsvSource({
    "2.9,0.1,1,true",
    "3.1,0.1,1,false",
    "1,0.55,1,true",
    "1,0.65,1,false",
    "1,0.1,0.8,true",
    "1,0.1,0.65,false"
  })
  void theBordersOfStillnessAreThreeDegreesSixTenthsAndSevenTenthsOfASecond(
      double sway, double shake, double lengthS, boolean found) {
    UnitStream stream = stream(2, 2 + lengthS, sway, shake);
    assertThat(before(stream, 0, 6).isPresent()).isEqualTo(found);
    assertThat(after(stream, 0, 8).isPresent()).isEqualTo(found);
  }

  @Test
  void aShorterLeastLengthChangesNothingElse() {
    RestSettings address = RestSettings.address();
    assertThat(address.atLeast(0.3))
        .isEqualTo(
            new RestSettings(
                address.windowS(),
                address.rateRmsRadPerS(),
                address.accelSdMps2(),
                0.3,
                address.longestS()));
    assertThat(new RestGate(address.atLeast(0.3)).before(stream(2, 2.5, 1, 0), BIAS, 0, 6))
        .isPresent();
  }

  @Test
  void whatIsLostIsLeftOutOfMeansAndSpreads() {
    // Given: three samples, then one with a lost rate, one with a lost force. Expect by hand: the
    // spread of the three whole ones about the bias, and about their mean force (0, 0, 2), root
    // 2/3;
    // the means of all there are.
    double nan = Double.NaN;
    UnitStream torn =
        new UnitStream(
            FACTS,
            new double[] {0, 1, 2, 3, 4},
            new double[][] {{0, 0, 0, 5, nan}, {0, 0, 0, 6, 1}, {1, 2, 3, 6, 1}},
            new double[][] {{1.1, 0, 0, nan, 2}, {0, 2, 0, 1, 2}, {0, 0, 3, 1, 2}});
    Spread spread = Spread.of(torn, new Vector3(0.1, 0, 0), 0, 9);
    assertThat(spread.samples()).isEqualTo(3);
    double rate2 = 1 + (0.01 + 4) + (0.01 + 9);
    assertThat(spread.rateRmsRadPerS()).isCloseTo(Math.sqrt(rate2 / 3), within(1e-12));
    assertThat(spread.accelSdMps2()).isCloseTo(Math.sqrt(2 / 3.0), within(1e-12));
    assertThat(RestGate.rateRmsRadPerS(torn, new Vector3(0.1, 0, 0), 0, 9))
        .isEqualTo(spread.rateRmsRadPerS());
    Vector3 rate = RestGate.meanRateRadPerS(torn, 0, 9);
    assertThat(rate.minus(new Vector3(3.1 / 4, 1, 6 / 5.0)).norm()).isLessThan(1e-12);
    Vector3 force = RestGate.meanAccelMps2(torn, 0, 9);
    assertThat(force.minus(new Vector3(5 / 4.0, 7 / 5.0, 13 / 5.0)).norm()).isLessThan(1e-12);
    assertThat(Spread.of(torn, BIAS, 20, 30).rateRmsRadPerS()).isInfinite();
    assertThat(Spread.of(torn, BIAS, 20, 30).accelSdMps2()).isInfinite();
    assertThat(RestGate.meanRateRadPerS(torn, 20, 30)).isEqualTo(Vector3.ZERO);
  }

  @Test
  void twoSamplesAreNoRest() {
    // Given: one sample in 0.15 s: a unit at 10 Hz that stands still. Expect: none.
    UnitStream slow =
        MadeUnit.of(
            UnitFacts.plain(BodyPoint.PELVIS, 10), 5, t -> BIAS, t -> new Vector3(0, 0, 9.8));
    assertThat(after(slow, 0, 5)).isEmpty();
    assertThatThrownBy(() -> new Rest(2, 2)).isInstanceOf(IllegalArgumentException.class);
  }
}
