package steadyturn.ingest.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.quality.gravity.GravityTurns;
import steadyturn.ingest.quality.gravity.TurnScale;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.UnitStream;

/** A unit turned by hand eight times by 60 deg about known axes, read right and wrong. */
class TurnCheckTest {

  private static GravityTurns turns(UnitStream unit) {
    return UnitQuality.turns(unit, RestCheck.of(unit, TurnedUnit.RATE_HZ));
  }

  private static List<Reason> said(UnitStream unit) {
    return TurnCheck.of(turns(unit)).stream().map(Finding::what).toList();
  }

  @Test
  void aSoundUnitFitsAndIsNotCalled() {
    // Expect: gravity where the rates carry it, within rounding and the bias found at rest (none).
    GravityTurns turns = turns(TurnedUnit.wellTurned().stream(1, 1, 1));
    assertThat(turns.widePairs()).hasSize(7); // the last but one goes on from the one before
    assertThat(turns.misfit(GravityTurns.Reading.AS_GIVEN)).isLessThan(1e-2);
    assertThat(TurnCheck.of(turns)).isEmpty();
    assertThat(TurnScale.of(turns).off()).isCloseTo(0, within(4e-3));
  }

  @ParameterizedTest
  @CsvSource({
    "-1, 1, 1, gyro-x", "1, -1, 1, gyro-y", "1, 1, -1, gyro-z",
    // two signs of the gyroscope look like the third of the accelerometer
    "1, -1, -1, accel-x", "-1, 1, -1, accel-y", "-1, -1, 1, accel-z"
  })
  void aWrongSignIsNamedByItsAxis(double x, double y, double z, String channel) {
    assertThat(said(TurnedUnit.wellTurned().stream(x, y, z)))
        .containsExactly(Reason.of(QualityReason.SIGN, channel));
  }

  @Test
  void allSignsAreAMirror() {
    assertThat(said(TurnedUnit.wellTurned().stream(-1, -1, -1)))
        .containsExactly(Reason.of(QualityReason.MIRRORED));
  }

  @ParameterizedTest
  @CsvSource({"1, 0, 2", "0, 2, 1", "2, 1, 0", "1, 2, 0", "2, 0, 1"})
  void exchangedAxesAreCalled(int x, int y, int z) {
    assertThat(said(TurnedUnit.wellTurned().stream(new int[] {x, y, z}, 1, 1, 1)))
        .containsExactly(Reason.of(QualityReason.AXES));
  }

  @Test
  void otherUnitsOfAngleAreCalled() {
    double deg = Math.toDegrees(1);
    double turn = 1 / (2 * Math.PI);
    TurnedUnit unit = TurnedUnit.wellTurned();
    assertThat(said(unit.stream(deg, deg, deg)))
        .containsExactly(Reason.of(QualityReason.GYRO_IN_DEGREES));
    assertThat(said(unit.stream(1 / deg, 1 / deg, 1 / deg)))
        .containsExactly(Reason.of(QualityReason.GYRO_IN_RADIANS));
    assertThat(said(unit.stream(turn, turn, turn)))
        .containsExactly(Reason.of(QualityReason.TURN_SCALE, 2 * Math.PI));
  }

  @ParameterizedTest
  @CsvSource({"1.05", "0.95", "1.1", "1.02"})
  void howMuchFartherGravityTurnedIsFound(double factor) {
    // Given: rates that show 1 / factor of the turn. Expect: factor - 1, within 6 % of it (the
    // slope is
    // taken over 2 %) and 4e-3 (a moment is a mean over 70 ms, which a turn bends). Spread: floor
    // of the squares 0.3, eight pairs, the part of 60
    // deg
    // that gravity moves (all about x and y, less about the others).
    TurnScale scale =
        TurnScale.of(turns(TurnedUnit.wellTurned().stream(1 / factor, 1 / factor, 1 / factor)));
    assertThat(scale.off()).isCloseTo(factor - 1, within(4e-3 + 0.06 * Math.abs(factor - 1)));
    assertThat(scale.sd()).isBetween(0.006, 0.013);
  }

  @Test
  void fewOrSmallTurnsTellNoScale() {
    // Given: two turns of 60 deg of a hand; then ten of 49 deg about x, of which 50 are asked (a
    // turn
    // is felt a little less long, as the calm moments at its ends hold some of it).
    TurnedUnit two = new TurnedUnit().rest().turn(60, 1, 0, 0).turn(-60, 1, 0, 0);
    assertThat(TurnScale.of(turns(two.stream(1, 1, 1)))).isEqualTo(TurnScale.UNKNOWN);
    assertThat(TurnScale.of(turns(there(5, 49)))).isEqualTo(TurnScale.UNKNOWN);
    assertThat(TurnScale.of(turns(there(5, 60))).sd()).isLessThan(0.02);
  }

  private static UnitStream there(int times, double deg) {
    TurnedUnit unit = new TurnedUnit().rest();
    for (int i = 0; i < times; i++) {
      unit.turn(deg, 1, 0, 0).turn(-deg, 1, 0, 0);
    }
    return unit.stream(1, 1, 1);
  }

  @ParameterizedTest
  @CsvSource({
    // off and spread of one unit, called? Our bounds: 6 %, 3.5 spreads, known to 2.5 %
    "0.062, 0.005, true", "0.058, 0.005, false", "-0.062, 0.005, true",
    "0.09, 0.0255, false", "0.09, 0.0245, true", "0.085, 0.0245, false"
  })
  void oneUnitIsCalledForItself(double off, double sd, boolean called) {
    TurnScale own = new TurnScale(off, sd);
    assertThat(TurnCheck.ofScale(own, List.of(own)))
        .isEqualTo(
            called
                ? List.of(Finding.of(Verdict.NOT_USABLE, QualityReason.TURN_SCALE, 1 + off))
                : List.of());
  }

  @Test
  void unitsThatAgreeAreCalledForAFarSmallerScale() {
    // Given: three units 5 % off, each known to 1 %; together to 0.67 %: 3.5 times that is 2.4 %.
    // Then one of them sound; then all 2.9 % off.
    TurnScale off = new TurnScale(0.05, 0.01);
    TurnScale sound = new TurnScale(0, 0.01);
    TurnScale little = new TurnScale(0.029, 0.01);
    assertThat(TurnCheck.ofScale(off, List.of(off, off, off)))
        .singleElement()
        .satisfies(
            f ->
                assertThat(f.what().args())
                    .hasEntrySatisfying(
                        "times", x -> assertThat((double) x).isCloseTo(1.05, within(1e-9))));
    assertThat(TurnCheck.ofScale(off, List.of(off, off, sound))).isEmpty();
    assertThat(TurnCheck.ofScale(little, List.of(little, little, little))).isEmpty();
    assertThat(TurnCheck.ofScale(TurnScale.UNKNOWN, List.of(TurnScale.UNKNOWN))).isEmpty();
    // a unit of which nothing is known shares what the others say
    assertThat(TurnCheck.ofScale(TurnScale.UNKNOWN, List.of(off, off, off, TurnScale.UNKNOWN)))
        .hasSize(1);
  }
}
