package steadyturn.analysis.lab.pendulum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class DoublePendulumTest {

  @ParameterizedTest(name = "cocked {0} deg")
  @CsvFileSource(resources = "free-release.csv")
  void aFreeReleaseObeysTheTwoConservationLaws(
      double cockDeg,
      double timeInLine,
      double timeFallen10,
      double uncock,
      double arm,
      double club,
      double head,
      double armTravelDeg) {
    // Given: locked at cockDeg turning at 1 rad/s, then free; no torque, no weight (table).
    // Within 1e-5 of the value: the table gives seven digits.
    PendulumDrive drive =
        new PendulumDrive(-2, Math.toRadians(cockDeg), 1, -2, 0, 0, 0, Double.POSITIVE_INFINITY);
    PendulumSwing swing = DoublePendulum.swing(PendulumBody.driver().weightless(), drive);
    PendulumNode end = swing.at(swing.impactS());
    close(swing.impactS(), timeInLine);
    close(swing.fallenByS(Math.toRadians(10)), timeFallen10);
    close(-end.cockRateRadPerS(), uncock);
    close(end.armRateRadPerS(), arm);
    close(end.armRateRadPerS() - end.cockRateRadPerS(), club);
    close(swing.headSpeedMps(), head);
    close(Math.toDegrees(end.armRad() + 2), armTravelDeg);
  }

  private static void close(double value, double expected) {
    assertThat(value).isCloseTo(expected, within(1e-5 * expected));
  }

  @ParameterizedTest(name = "{0}")
  @CsvFileSource(resources = "driven.csv")
  void aDrivenSwingIsTheOneComputedElsewhere(
      String name,
      double releaseArmDeg,
      double shoulderNm,
      double wristNm,
      double releasePct,
      double releaseBeforeMs,
      double fallen10BeforeMs,
      double cockArmLevelDeg,
      double cockShaftLevelDeg,
      double peakUncockDegPerS,
      double peakArmBeforeMs,
      double headMps) {
    PendulumSwing swing =
        DoublePendulum.swing(
            PendulumBody.driver(), PendulumDrive.fromTop(releaseArmDeg, shoulderNm, wristNm));
    double impactS = swing.impactS();
    // Within 0.1 % (the level asked for) or half the last digit of the table.
    near(100 * swing.releaseS() / impactS, releasePct, 0.005);
    near(1000 * (impactS - swing.releaseS()), releaseBeforeMs, 0.005);
    near(1000 * (impactS - swing.fallenByS(Math.toRadians(10))), fallen10BeforeMs, 0.005);
    near(Math.toDegrees(swing.cockAtArmLevelRad()), cockArmLevelDeg, 0.005);
    near(Math.toDegrees(swing.cockAtShaftLevelRad()), cockShaftLevelDeg, 0.005);
    near(Math.toDegrees(swing.peakUncockRadPerS()), peakUncockDegPerS, 0.05);
    near(1000 * (impactS - swing.peakArmS()), peakArmBeforeMs, 0.05);
    near(swing.headSpeedMps(), headMps, 0.0005);
  }

  private static void near(double value, double expected, double halfDigit) {
    assertThat(value).isCloseTo(expected, within(Math.max(halfDigit, 1e-3 * expected)));
  }

  @Test
  void energyAddsUpToTheWorkOfTheTorques() {
    // Within 1e-9 J of some 300 J: tolerance 1e-12 a step, a hundred steps, with a factor 10.
    PendulumSwing swing = DoublePendulum.swing(PendulumBody.driver(), PendulumDrive.kept());
    assertThat(Math.abs(swing.energyResidualJ())).isLessThan(1e-9);
  }

  @Test
  void aStopKeepsTheWristFromCockingFurtherAndTakesEnergyOnlyWhenStruck() {
    // Given: a weak early push, under which the club lags beyond 90 deg (94.06 at arm level).
    // Expect: with a stop at 92 deg the cock never exceeds it (within 1e-6 rad, the event's own
    // tolerance), some energy is lost there, and the balance still closes.
    PendulumDrive drive = PendulumDrive.fromTop(-145, 100, 15);
    PendulumSwing free = DoublePendulum.swing(PendulumBody.driver(), drive);
    PendulumSwing stopped = DoublePendulum.swing(PendulumBody.driver(), drive.withStopDeg(92));
    double most = stopped.nodes().stream().mapToDouble(PendulumNode::cockRad).max().orElseThrow();
    double mostFree = free.nodes().stream().mapToDouble(PendulumNode::cockRad).max().orElseThrow();
    assertThat(Math.toDegrees(mostFree)).isGreaterThan(94);
    assertThat(most).isLessThan(Math.toRadians(92) + 1e-6);
    assertThat(stopped.stopLossJ()).isGreaterThan(0);
    assertThat(Math.abs(stopped.energyResidualJ())).isLessThan(1e-8);
  }

  @Test
  void aClubThatCannotExistIsRefused() {
    // Moment squared over mass is the least inertia about the wrist: 0.33^2 / 0.4 = 0.27225.
    assertThatThrownBy(() -> new PendulumBody(0.62, 1.15, 2.263, 0.4, 1.1, 0.33, 0.08, 9.81))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("0.08");
  }
}
