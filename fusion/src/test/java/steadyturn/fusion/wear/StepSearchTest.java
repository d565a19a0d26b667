package steadyturn.fusion.wear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.trial.MadeUnit;
import steadyturn.fusion.wear.StepSearch.Attempt;
import steadyturn.fusion.wear.pelvis.BowStep;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** Steps looked for in longer stretches, from rates in closed form. Given in all: 100 Hz, 40 s. */
class StepSearchTest {

  private static final UnitFacts FACTS = UnitFacts.plain(BodyPoint.PELVIS, 100);

  private static UnitStream unit(DoubleFunction<Vector3> degPerS) {
    return MadeUnit.of(
        FACTS, 40, t -> degPerS.apply(t).times(Math.toRadians(1)), t -> new Vector3(9.80665, 0, 0));
  }

  /** Turns about two axes all the time, but from one instant to another. */
  private static UnitStream stillBetween(double fromS, double toS) {
    return unit(
        t ->
            t >= fromS && t < toS
                ? Vector3.ZERO
                : new Vector3(20 * Math.sin(5 * t), 20 * Math.cos(7 * t), 0));
  }

  private static Mark open(String step, double fromS, double toS) {
    return new Mark(fromS, 0, step, "", "").openFor(toS - fromS);
  }

  private static Optional<Attempt> stance(UnitStream unit, Mark mark, boolean isOver) {
    return new StepSearch(unit, Vector3.ZERO, isOver)
        .find(mark, (from, to) -> StillStep.stance(unit, from, to, mark.trialType()).result());
  }

  @ParameterizedTest
  @CsvSource({"10,13", "17.3,19.6", "27.7,29.9"})
  void theFirstTwoStillSecondsAreFoundWhereverTheyLie(double fromS, double toS) {
    // Given: a step marked from 5 to 30 s, still for a while within. Expect: 2 s inside the
    // stillness.
    // Within 0.1 s: a tenth of a second of movement passes for still.
    Attempt found = stance(stillBetween(fromS, toS), open("aim", 5, 30), true).orElseThrow();
    assertThat(found.result().used()).isTrue();
    assertThat(found.fromS()).isBetween(fromS - 0.11, fromS + 0.11);
    assertThat(found.toS() - found.fromS()).isCloseTo(2, within(1e-9));
  }

  @Test
  void aShorterStillnessWillDoOnlyWhenNoMoreCanCome() {
    UnitStream unit = stillBetween(10, 11.3);
    assertThat(stance(unit, open("aim", 5, 30), false).orElseThrow().result().used()).isFalse();
    Attempt late = stance(unit, open("aim", 5, 30), true).orElseThrow();
    assertThat(late.result().used()).isTrue();
    assertThat(late.toS() - late.fromS()).isCloseTo(1, within(1e-9));
  }

  @Test
  void whereNothingWasStillTheStillestIsTold() {
    UnitStream unit = unit(t -> new Vector3((t > 12 && t < 15 ? 6 : 30) * Math.sin(20 * t), 0, 0));
    StepResult result = stance(unit, open("aim", 5, 30), true).orElseThrow().result();
    assertThat(result.used()).isFalse();
    assertThat(result.quality()).isCloseTo(6 / Math.sqrt(2), within(0.1));
  }

  /** A movement of so many degrees there and back about an axis, min-jerk, 2.6 s long. */
  private static Vector3 bow(double t, double fromS, Vector3 axis, double deg) {
    DoubleUnaryOperator rate = u -> u < 0 || u > 1 ? 0 : 30 * u * u * (1 - u) * (1 - u) / 1.3;
    double u = (t - fromS) / 1.3;
    return axis.times(deg * (rate.applyAsDouble(u) - rate.applyAsDouble(u - 1)));
  }

  private static Optional<Attempt> bow(UnitStream unit, Mark mark, boolean isOver) {
    return new StepSearch(unit, Vector3.ZERO, isOver)
        .find(mark, (from, to) -> BowStep.of(unit, Vector3.ZERO, from, to).result());
  }

  @Test
  void theBowIsFoundBetweenAWalkAndATurn() {
    // Given: a turn about the vertical at 5-7.6 s, as pure as a bow, two bows at 14-19.2 s, a mixed
    // movement at 24 s, all marked as one bow from 4 to 30 s. Expect: the bows alone, as only their
    // axis is level. Within 0.5 s: padding and slow ends.
    UnitStream unit =
        unit(
            t ->
                bow(t, 14, Vector3.Y, 35)
                    .plus(bow(t, 16.6, Vector3.Y, 35))
                    .plus(bow(t, 5, Vector3.X, 40))
                    .plus(bow(t, 24, Vector3.X, 40).plus(bow(t, 24.3, Vector3.Z, 40))));
    Attempt found = bow(unit, open("bow", 4, 30), true).orElseThrow();
    assertThat(found.result().used()).isTrue();
    assertThat(found.fromS()).isCloseTo(14, within(0.5));
    assertThat(found.toS()).isCloseTo(19.2, within(0.5));
  }

  @Test
  void aMovementIsJudgedWhenItHasComeToRest() {
    UnitStream whole = unit(t -> bow(t, 14, Vector3.Y, 35));
    for (double nowS : new double[] {15.2, 16.5, 17.0}) {
      assertThat(bow(whole.between(0, nowS), open("bow", 10, 30), false))
          .as("at %s", nowS)
          .isEmpty();
    }
    assertThat(bow(whole.between(0, 18), open("bow", 10, 30), false).orElseThrow().result().used())
        .isTrue();
  }

  @ParameterizedTest
  @ValueSource(doubles = {3, 8, 15})
  void fidgetingIsNoBow(double deg) {
    // Given: a small movement about one axis. Expect: not taken; 2 x 15 deg is under the least
    // path.
    UnitStream unit = unit(t -> bow(t, 14, Vector3.Y, deg));
    assertThat(bow(unit, open("bow", 10, 30), true)).isEmpty();
  }

  @Test
  void aStretchOfKnownLengthIsTakenWholeWhereItWillDo() {
    UnitStream unit = stillBetween(10, 20);
    StepSearch search = new StepSearch(unit, Vector3.ZERO, true);
    StepSearch.Judge judge = (from, to) -> StillStep.stance(unit, from, to, "aim").result();
    Mark good = new Mark(11, 8, "aim", "", "");
    Mark longer = new Mark(6, 12, "aim", "", "");
    Mark never = new Mark(25, 9, "aim", "", "");
    assertThat(search.settled(good, judge)).isEqualTo(good);
    assertThat(search.settled(longer, judge).onsetS()).isCloseTo(10, within(0.11));
    assertThat(search.settled(never, judge)).isEqualTo(never);
  }
}
