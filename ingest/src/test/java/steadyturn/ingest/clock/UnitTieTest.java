package steadyturn.ingest.clock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;
import steadyturn.ingest.shock.BlowDelay;
import steadyturn.ingest.shock.Shock;

/** Two clocks and the blows that both felt; nothing turns, so that only the blows speak. */
class UnitTieTest {

  private static final double[] BLOWS_S = {11, 24, 38, 53, 67};
  private static final ClockFit USUAL = ClockLine.prior(0);

  private static UnitTie.Felt felt(BodyPoint point, double lateS, double clarity, int blows) {
    double[] timeS = DoubleStream.iterate(0, t -> t + 0.005).limit(16_000).toArray();
    UnitStream stream =
        new UnitStream(
            UnitFacts.plain(point, 200), timeS, new double[3][16_000], new double[3][16_000]);
    List<Shock> shocks =
        DoubleStream.of(BLOWS_S)
            .limit(blows)
            .mapToObj(t -> new Shock(t + lateS, 60, clarity))
            .toList();
    return new UnitTie.Felt(stream, shocks);
  }

  @Test
  void manyBlowsThatAgreeFarAwayMoveAnArm() {
    // Given: five blows, 0.3 s late in the hand. Expect: found, within the 2 ms of two samples.
    UnitTie tie =
        UnitTie.of(
            felt(BodyPoint.LEAD_HAND, 0.3, 50, 5),
            felt(BodyPoint.LEAD_FOREARM, 0, 50, 5),
            ClockFit.reference(),
            USUAL);
    assertThat(tie.fit().correctionS(38)).isCloseTo(-0.3, within(0.002));
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 4, 5})
  void blowsThatATrunkFeelsElsewhereCastDoubtOnItsClock(int blows) {
    // Given: a pelvis whose blows all lie 0.2 s beside the arm's, start said to be known to 12 ms.
    // Expect: not moved, a spread as wide as the contradiction, and it is said.
    UnitTie tie =
        UnitTie.of(
            felt(BodyPoint.PELVIS, 0.2 + BlowDelay.TRUNK_S, 50, blows),
            felt(BodyPoint.LEAD_FOREARM, 0, 50, blows),
            ClockFit.reference(),
            USUAL);
    assertThat(tie.fit().correctionS(20)).isCloseTo(0, within(0.001));
    assertThat(tie.fit().sdS()).isGreaterThan(0.19);
    assertThat(tie.trouble().code()).isEqualTo(ClockReason.DISAGREE);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2})
  void aStepOrTwoOfATrunkElsewhereSayNothing(int blows) {
    // Given: the same with one or two. Expect: the stated start and its spread stay, as feet and
    // hands knock without a ball too.
    UnitTie tie =
        UnitTie.of(
            felt(BodyPoint.PELVIS, 0.2 + BlowDelay.TRUNK_S, 50, blows),
            felt(BodyPoint.LEAD_FOREARM, 0, 50, blows),
            ClockFit.reference(),
            USUAL);
    assertThat(tie.fit().correctionS(20)).isCloseTo(0, within(0.001));
    assertThat(tie.fit().sdS()).isLessThan(0.015);
  }

  @Test
  void aTrunksBlowsWhereTheyBelongTieIt() {
    UnitTie tie =
        UnitTie.of(
            felt(BodyPoint.PELVIS, 0.01 + BlowDelay.TRUNK_S, 50, 3),
            felt(BodyPoint.LEAD_FOREARM, 0, 50, 3),
            ClockFit.reference(),
            USUAL);
    assertThat(tie.fit().correctionS(24)).isCloseTo(-0.01, within(0.002));
    assertThat(tie.fit().sdS()).isLessThan(0.005);
  }

  @ParameterizedTest
  @CsvSource({"200, 0", "204.5, 0.8", "195, 0.8"})
  void aJumpingClockOfAnotherRateThanStatedIsNotBelieved(double statedHz, double leastSdS) {
    // Given: times of 200 Hz over 80 s; bound 2 %, which is 1.6 s by the end of them.
    UnitStream unit = felt(BodyPoint.LEAD_HAND, 0, 50, 0).stream();
    UnitStream stated = unit.withFacts(UnitFacts.plain(BodyPoint.LEAD_HAND, statedHz));
    ClockFit tie = new ClockFit(0.1, 0, 0, 0.004, 40, 3);
    double sdS = UnitTie.believed(stated, tie).sdS();
    assertThat(sdS).isGreaterThan(leastSdS);
    assertThat(sdS < 0.005).isEqualTo(leastSdS == 0);
  }

  private static UnitTie.Felt hand(int blows, int apart, double apartS, double clarity) {
    UnitTie.Felt forearm = many(blows);
    List<Shock> shocks =
        IntStream.range(0, blows)
            .mapToObj(
                k ->
                    new Shock(
                        forearm.shocks().get(k).timeS() + (k >= blows - apart ? apartS : 0),
                        60,
                        k >= blows - apart ? clarity : 50))
            .toList();
    return new UnitTie.Felt(felt(BodyPoint.LEAD_HAND, 0, 50, 0).stream(), shocks);
  }

  private static UnitTie.Felt many(int blows) {
    List<Shock> shocks =
        IntStream.range(0, blows).mapToObj(k -> new Shock(5 + 7 * k, 60, 50)).toList();
    return new UnitTie.Felt(felt(BodyPoint.LEAD_FOREARM, 0, 50, 0).stream(), shocks);
  }

  @ParameterizedTest(name = "{1} of {0} blows {2} s apart, clarity {3}: {4}")
  @CsvSource({
    "7, 2, 0.03, 50, true",
    "8, 2, 0.03, 50, false",
    "5, 1, 0.03, 50, false",
    "7, 2, -0.03, 50, true",
    "7, 2, 0.03, 19, false",
    "7, 2, 0.07, 50, false",
    "7, 2, 0.004, 50, false"
  })
  void clearBlowsThatStayApartSayHowWrongTheClockIs(
      int blows, int apart, double apartS, double clarity, boolean widened) {
    // Given: arm units whose clocks agree but for some blows. Bounds, our choice: more than one,
    // more
    // than a fourth, clearer than 20, within 60 ms. Expect: the root mean square of all, 16 ms, or
    // what the other blows say, under 4 ms.
    UnitTie tie =
        UnitTie.of(hand(blows, apart, apartS, clarity), many(blows), ClockFit.reference(), USUAL);
    double sdS = tie.fit().sdAtS(20);
    assertThat(sdS > 0.012).as("spread %s s", sdS).isEqualTo(widened);
  }
}
