package steadyturn.fusion.wear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.trial.MadeUnit;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** Stillness from movements in closed form. */
class StillStepTest {

  private static final UnitFacts FACTS = UnitFacts.plain(BodyPoint.PELVIS, 100);
  private static final Vector3 BIAS = new Vector3(0.02, -0.03, 0.01);
  private static final Vector3 UP = new Vector3(3, -4, 8);

  private static UnitStream swaying(double rmsDegPerS) {
    double size = Math.toRadians(rmsDegPerS) * Math.sqrt(2);
    Vector3 about = new Vector3(2, -3, 6).times(1 / 7.0);
    return MadeUnit.of(
        FACTS, 4, t -> BIAS.plus(about.times(size * Math.sin(2 * Math.PI * t))), t -> UP);
  }

  @ParameterizedTest
  @CsvSource({"0.29,true,true", "0.31,false,true", "2.95,false,true", "3.05,false,false"})
  void stillIsUnderThreeTenthsOnATableAndUnderThreeOnAPerson(
      double rms, boolean onTable, boolean onPerson) {
    // Given: a sway of so many deg/s RMS about a skew axis, on a bias. Expect: its RMS about its
    // mean, the mean itself, and the force. Within 1e-9: whole periods.
    StillStep table = StillStep.table(swaying(rms), 1, 3);
    StillStep person = StillStep.stance(swaying(rms), 1, 3, "aim");
    assertThat(table.result().used()).isEqualTo(onTable);
    assertThat(person.result().used()).isEqualTo(onPerson);
    assertThat(table.result().quality()).isCloseTo(rms, within(1e-9));
    assertThat(person.result().quality()).isCloseTo(rms, within(1e-9));
    assertThat(table.result().step()).isEqualTo("table-rest");
    assertThat(person.result().step()).isEqualTo("aim");
    assertThat(table.meanRateRadPerS().minus(BIAS).norm()).isLessThan(1e-9);
    assertThat(person.meanForceMps2().minus(UP).norm()).isLessThan(1e-9);
  }

  @ParameterizedTest
  @CsvSource({"0.97,true", "1.03,false"})
  void halfOfAStepMayBeLost(double lostS, boolean used) {
    // Given: a unit at rest, 2 s of it asked for and so much of that lost. Expect: used up to half.
    UnitStream partly =
        MadeUnit.of(
            FACTS, 4, t -> t > 1.5 && t < 1.5 + lostS ? BIAS.times(Double.NaN) : BIAS, t -> UP);
    StillStep step = StillStep.table(partly, 1, 3);
    assertThat(step.result().used()).isEqualTo(used);
    if (!used) {
      assertThat(step.result().why().code()).isEqualTo(StepReason.LOST);
      assertThat(step.result().quality()).isCloseTo(lostS / 2, within(0.01));
    }
  }
}
