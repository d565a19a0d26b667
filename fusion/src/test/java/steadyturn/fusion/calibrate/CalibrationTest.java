package steadyturn.fusion.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

class CalibrationTest {

  private static final long SEED = 20260103;
  private static final double GYRO_NOISE = 0.001;
  private static final LocalDate DAY = LocalDate.of(2026, 3, 14);

  private static UnitStream sixFaces(double noise) {
    TableUnit unit = TableUnit.raw(noise, SEED);
    for (Pose pose : Pose.values()) {
      unit.lieWithUp(pose.up(), 0, 2);
    }
    return unit.stream();
  }

  private static UnitStream turns(double noise) {
    TableUnit unit = TableUnit.raw(noise, SEED).lie(2);
    for (Vector3 axis : List.of(Vector3.X, Vector3.Y, Vector3.Z)) {
      unit.turn(axis.times(2 * Math.PI), 3).lie(1.5);
      unit.turn(axis.times(-Math.PI / 2), 1).lie(1.5);
    }
    return unit.stream();
  }

  @Test
  void aTableRestGivesTheBias() {
    // Given: 5 s on a table, bias of TableUnit.raw, white noise of 0.001 rad/s (seed above).
    // Expect: that bias. Within 5 sigma of the mean of 1000 samples: 1.6e-4 rad/s.
    TableRest rest = TableRest.of(TableUnit.raw(GYRO_NOISE, SEED).lie(5).stream());
    assertThat(rest.gyroBiasRadPerS().x()).isCloseTo(0.015, within(1.6e-4));
    assertThat(rest.gyroBiasRadPerS().y()).isCloseTo(-0.02, within(1.6e-4));
    assertThat(rest.gyroBiasRadPerS().z()).isCloseTo(0.01, within(1.6e-4));
    // the spread of 3000 readings is known to 1/sqrt(6000): within 5 % is 4 sigma
    assertThat(rest.gyroNoiseRadPerS()).isCloseTo(GYRO_NOISE, within(0.05 * GYRO_NOISE));
    assertThat(rest.gyroBiasSigmaRadPerS()).isBetween(2e-5, 4e-4);
  }

  @Test
  void aTableThatIsKnockedIsNoRest() {
    UnitStream moved = TableUnit.raw(GYRO_NOISE, SEED).lie(2).turn(Vector3.Z, 1).lie(2).stream();
    assertThatThrownBy(() -> TableRest.of(moved))
        .isInstanceOf(CalibrationException.class)
        .hasMessageContaining("did not lie still");
  }

  @Test
  void aRestTooShortIsRefused() {
    UnitStream brief = TableUnit.raw(GYRO_NOISE, SEED).lie(0.5).stream();
    assertThatThrownBy(() -> TableRest.of(brief))
        .isInstanceOf(CalibrationException.class)
        .hasMessageContaining("1.5 s");
  }

  @Test
  void sixPositionsGiveBackTheErrorsPutIn() {
    // Given: six faces, 2 s each, noise 0.01 m/s^2. Expect: the errors of TableUnit.raw. Within
    // 0.003 m/s^2 and 3e-4: the mean of about 280 readings has 6e-4 m/s^2, five sigma of it.
    SixPositions found = SixPositions.of(sixFaces(GYRO_NOISE), TableUnit.G);
    TableUnit truth = TableUnit.raw(0, SEED);
    for (int row = 0; row < 3; row++) {
      assertThat(found.bias().get(row)).isCloseTo(truth.accelBias.get(row), within(0.003));
      for (int column = 0; column < 3; column++) {
        assertThat(found.errors().row(row).get(column))
            .isCloseTo(truth.accelErrors.row(row).get(column), within(3e-4));
      }
    }
    assertThat(found.poses()).containsExactly(Pose.values());
  }

  @Test
  void aMissingPositionIsNamed() {
    TableUnit unit = TableUnit.raw(GYRO_NOISE, SEED);
    for (Pose pose : Pose.values()) {
      if (pose != Pose.Y_DOWN) {
        unit.lieWithUp(pose.up(), 0, 2);
      }
    }
    UnitStream stream = unit.stream();
    assertThatThrownBy(() -> SixPositions.of(stream, TableUnit.G))
        .isInstanceOf(CalibrationException.class)
        .hasMessageContaining("position missing: -y up.");
  }

  @Test
  void aCrookedPositionIsNamed() {
    // Given: six faces of which one lies 3 deg off. Expect: that one is named, whichever it is.
    for (Pose crooked : Pose.values()) {
      TableUnit unit = TableUnit.raw(GYRO_NOISE, SEED);
      for (Pose pose : Pose.values()) {
        unit.lieWithUp(pose.up(), pose == crooked ? Math.toRadians(3) : 0, 2);
      }
      UnitStream stream = unit.stream();
      assertThatThrownBy(() -> SixPositions.of(stream, TableUnit.G))
          .isInstanceOf(CalibrationException.class)
          .hasMessageContaining("position " + crooked.words() + " does not fit");
    }
  }

  @Test
  void knownTurnsGiveBackTheErrorsPutIn() {
    // Given: a whole turn one way and a quarter back about each axis. Expect: the gyroscope errors
    // of TableUnit.raw. Within 0.001: the bias known to 1e-4 rad/s, times 4 s, over 2 pi.
    KnownTurns found = KnownTurns.of(turns(GYRO_NOISE));
    TableUnit truth = TableUnit.raw(0, SEED);
    assertThat(found.turns()).hasSize(6);
    for (int row = 0; row < 3; row++) {
      for (int column = 0; column < 3; column++) {
        assertThat(found.errors().row(row).get(column))
            .isCloseTo(truth.gyroErrors.row(row).get(column), within(0.001));
      }
    }
  }

  @Test
  void aTurnThatIsNoQuarterIsRefused() {
    UnitStream stream =
        TableUnit.raw(GYRO_NOISE, SEED).lie(2).turn(Vector3.Z.times(1.2), 1).lie(2).stream();
    assertThatThrownBy(() -> KnownTurns.of(stream))
        .isInstanceOf(CalibrationException.class)
        .hasMessageContaining("not a multiple of a quarter turn");
  }

  @Test
  void anAxisNotTurnedIsNamed() {
    UnitStream stream =
        TableUnit.raw(GYRO_NOISE, SEED)
            .lie(2)
            .turn(Vector3.X.times(Math.PI), 1)
            .lie(2)
            .turn(Vector3.Z.times(Math.PI), 1)
            .lie(2)
            .stream();
    assertThatThrownBy(() -> KnownTurns.of(stream))
        .isInstanceOf(CalibrationException.class)
        .hasMessageContaining("unit's y axis");
  }

  private static UnitCalibration whole() {
    return UnitCalibration.none("TEST-7", DAY)
        .with(TableRest.of(TableUnit.raw(GYRO_NOISE, SEED).lie(5).stream()), DAY)
        .with(KnownTurns.of(turns(GYRO_NOISE)), DAY)
        .with(SixPositions.of(sixFaces(GYRO_NOISE), TableUnit.G), TableUnit.G, DAY);
  }

  @Test
  void anAppliedCalibrationTakesTheErrorsOff() {
    // Given: the calibration of a raw unit, and another recording of it in between positions (seed
    // above). Expect: force and rate as a perfect unit shows them. Within 0.01 m/s^2 and 0.02
    // rad/s at 3 rad/s, five sigma of the parts.
    UnitStream raw = TableUnit.raw(0, SEED).turn(new Vector3(0.6, 1.1, -0.8), 0.5).stream();
    UnitStream fixed = whole().apply(raw);
    Vector3 rate = new Vector3(0.6, 1.1, -0.8).times(1 / 0.5);
    for (int axis = 0; axis < 3; axis++) {
      assertThat(fixed.gyroRadPerS(axis, 40)).isCloseTo(rate.get(axis), within(0.02));
    }
    assertThat(fixed.facts().calibrated()).isTrue();
    CalibrationEffect effect = CalibrationEffect.of(whole(), sixFaces(GYRO_NOISE)).orElseThrow();
    // raw: 0.2 m/s^2 and 0.027 rad/s by the errors put in
    assertThat(effect.gravityErrorBeforeMps2()).isGreaterThan(0.1);
    assertThat(effect.gravityErrorAfterMps2()).isLessThan(0.005);
    assertThat(effect.rateBeforeRadPerS()).isCloseTo(0.0269, within(0.001));
    assertThat(effect.rateAfterRadPerS()).isLessThan(0.0005);
  }

  @Test
  void aCalibratedStreamIsNotCorrectedTwice() {
    UnitStream once = whole().apply(sixFaces(0));
    assertThat(whole().apply(once)).isSameAs(once);
  }

  @Test
  void anotherUnitsCalibrationIsRefused() {
    UnitCalibration other = UnitCalibration.none("OTHER-1", DAY);
    UnitStream stream = sixFaces(0);
    assertThatThrownBy(() -> other.apply(stream))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("OTHER-1")
        .hasMessageContaining("TEST-7");
  }

  @Test
  void theAccelerometerAloneKeepsTheAxesOfTheGyroscope() {
    // Given: six positions without turns. Expect: a symmetric correction, so no turn of its axes.
    UnitCalibration found =
        UnitCalibration.none("TEST-7", DAY)
            .with(SixPositions.of(sixFaces(GYRO_NOISE), TableUnit.G), TableUnit.G, DAY);
    AxisMatrix m = found.accel().matrix();
    assertThat(m.x().y()).isCloseTo(m.y().x(), within(1e-12));
    assertThat(m.x().z()).isCloseTo(m.z().x(), within(1e-12));
    assertThat(m.y().z()).isCloseTo(m.z().y(), within(1e-12));
    assertThat(found.complete()).isFalse();
  }

  @Test
  void aStoredCalibrationComesBackTheSameAndTheLatestCounts(@TempDir Path archive)
      throws IOException {
    CalibrationStore store = CalibrationStore.of(archive);
    assertThat(store.latest("TEST-7")).isEmpty();
    UnitCalibration found = whole();
    store.save(UnitCalibration.none("TEST-7", DAY.minusDays(20)));
    store.save(found);
    store.save(UnitCalibration.none("TEST-77", DAY.plusDays(20)));
    assertThat(store.latest("TEST-7")).contains(found);
    Recording recording =
        new Recording(
            "a", Player.unmeasured("ada", Handedness.LEFT), List.of(sixFaces(0)), List.of());
    assertThat(store.applyTo(recording).units().get(0).facts().calibrated()).isTrue();
  }

  @Test
  void aBrokenFileIsNamed(@TempDir Path archive) throws IOException {
    CalibrationStore store = CalibrationStore.of(archive);
    Path file = store.save(UnitCalibration.none("TEST-7", DAY));
    Files.writeString(file, "{\"DeviceSerialNumber\": \"TEST-7\", \"Date\": \"yesterday\"}");
    assertThatThrownBy(() -> store.latest("TEST-7"))
        .isInstanceOf(CalibrationException.class)
        .hasMessageContaining(file.getFileName().toString());
  }

  @Test
  void whiteNoiseIsReadOffItsSlope() {
    // Given: 2^16 samples of white noise of deviation 0.01 at 100 Hz (seed above). Expect: 0.01 *
    // sqrt(0.01 s) = 0.001 per sqrt s (definition). Within 5 %: the median of a dozen readings of
    // 2 % each.
    Random random = new Random(SEED);
    double[] values = random.doubles(1 << 16).map(u -> 0.01 * random.nextGaussian()).toArray();
    NoiseFigures figures = NoiseFigures.of(values, 0.01);
    assertThat(figures.whiteNoisePerRootS()).isCloseTo(0.001, within(5e-5));
    assertThat(figures.floor()).isLessThan(2e-4);
  }

  @Test
  void tooShortASeriesHasNoFigures() {
    assertThatThrownBy(() -> NoiseFigures.of(new double[10], 0.01))
        .isInstanceOf(CalibrationException.class)
        .hasMessageContaining("record longer");
  }

  @Test
  void aMatrixTimesItsInverseIsOne() {
    AxisMatrix m = TableUnit.raw(0, SEED).accelErrors;
    Vector3 v = new Vector3(1, -2, 3);
    Vector3 back = m.inverse().times(m.times(v));
    // Within 1e-14: a few roundings of numbers near 1
    assertThat(back.minus(v).norm()).isLessThan(1e-14);
  }
}
