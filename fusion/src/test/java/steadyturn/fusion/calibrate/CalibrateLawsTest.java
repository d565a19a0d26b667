package steadyturn.fusion.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.TreeMap;
import java.util.function.DoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.fusion.calibrate.UnitCalibration.Correction;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.trial.MadeUnit;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** Calibration without noise, so that its equations show to the digit. */
class CalibrateLawsTest {

  private static final LocalDate DAY = LocalDate.of(2026, 3, 14);
  private static final UnitFacts FACTS =
      new UnitFacts(
          BodyPoint.PELVIS,
          "TEST-7",
          200,
          Double.POSITIVE_INFINITY,
          Double.POSITIVE_INFINITY,
          false);
  private static final Vector3 BIAS = new Vector3(0.015, -0.02, 0.01);
  private static final Vector3 UP = new Vector3(1, -2, 9.5);
  private static final AxisMatrix ANY =
      AxisMatrix.ofRows(
          new double[][] {{1.02, 0.03, -0.01}, {-0.05, 0.96, 0.04}, {0.02, 0.06, 1.1}});

  private static UnitStream still(
      double lengthS, DoubleFunction<Vector3> rate, DoubleFunction<Vector3> force) {
    return MadeUnit.of(FACTS, lengthS, rate, force);
  }

  /** +1 and -1 by turns, so that a spread is known: its size times root n / (n - 1). */
  private static double flip(double timeS) {
    return Math.round(timeS * 200) % 2 == 0 ? 1 : -1;
  }

  private static UnitStream shaking(
      double lengthS, double rateDegPerS, double force, double driftDegPerS) {
    Vector3 parts = new Vector3(1, 2, 0).times(Math.toRadians(rateDegPerS));
    return still(
        lengthS,
        t ->
            BIAS.plus(parts.times(flip(t)))
                .plus(Vector3.Z.times(t < lengthS / 2 ? 0 : Math.toRadians(driftDegPerS))),
        t -> UP.plus(new Vector3(2, 0, 1).times(force * flip(t))));
  }

  @Test
  void aRestGivesMeansSpreadsAndTheSigmaOfTheMean() {
    // Given: 4 s, 800 samples; spreads of 0.2, 0.4 and 0 deg/s, 0.02, 0 and 0.01 m/s^2 by turns.
    // Expect: their means over the axes, times root 800 / 799; one sigma of the bias that over
    // root 800 and 0.01 deg/s of wander (our choice).
    TableRest rest = TableRest.of(shaking(4, 0.2, 0.01, 0));
    double n = Math.sqrt(800 / 799.0);
    assertThat(rest.gyroBiasRadPerS().minus(BIAS).norm()).isLessThan(1e-12);
    assertThat(rest.accelMeanMps2().minus(UP).norm()).isLessThan(1e-12);
    assertThat(Math.toDegrees(rest.gyroNoiseRadPerS())).isCloseTo(0.2 * n, within(1e-9));
    assertThat(rest.accelNoiseMps2()).isCloseTo(0.01 * n, within(1e-9));
    assertThat(rest.lengthS()).isCloseTo(3.995, within(1e-9));
    double sigma = Math.hypot(0.2 * n / Math.sqrt(800), 0.01);
    assertThat(Math.toDegrees(rest.gyroBiasSigmaRadPerS())).isCloseTo(sigma, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({
    "4,1.49,0.01,0,true",
    "4,1.51,0.01,0,false",
    "4,0.1,0.34,0,true",
    "4,0.1,0.36,0,false",
    "4,0.1,0.01,0.29,true",
    "4,0.1,0.01,0.31,false",
    "4,0.1,0.01,-0.31,false",
    "1.52,0.1,0.01,0,true",
    "1.48,0.1,0.01,0,false"
  })
  void aRestIsRefusedWhenShortShakenOrDrifting(
      double lengthS, double rate, double force, double drift, boolean taken) {
    // Expect: 1.5 s, 1.5 deg/s and 0.35 m/s^2 of mean spread, 0.3 deg/s between the halves.
    UnitStream stream = shaking(lengthS, rate, force, drift);
    if (taken) {
      assertThat(TableRest.of(stream).lengthS()).isGreaterThan(1.5);
    } else {
      assertThatThrownBy(() -> TableRest.of(stream)).isInstanceOf(CalibrationException.class);
    }
  }

  @Test
  void lostValuesAreLeftOutOfARest() {
    UnitStream stream = shaking(4, 0, 0, 0);
    for (int i = 100; i < 200; i++) {
      stream.gyroColumnRadPerS(1)[i] = Double.NaN;
    }
    TableRest rest = TableRest.of(stream);
    assertThat(rest.gyroBiasRadPerS().minus(BIAS).norm()).isLessThan(1e-12);
    assertThat(rest.gyroNoiseRadPerS()).isLessThan(1e-9);
  }

  @Test
  void aMatrixIsUndoneEvenedAndMeasured() {
    // Expect: the inverse times it is one; without its turn it is symmetric, the halves' sums kept;
    // the largest errors by eye.
    for (Vector3 v : List.of(Vector3.X, Vector3.Y, Vector3.Z)) {
      assertThat(ANY.inverse().times(ANY.times(v)).minus(v).norm()).isLessThan(1e-14);
    }
    AxisMatrix even = ANY.withoutTurn();
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        double mean = (ANY.row(i).get(j) + ANY.row(j).get(i)) / 2;
        assertThat(even.row(i).get(j)).isCloseTo(mean, within(1e-15));
      }
    }
    assertThat(ANY.largestScaleError()).isCloseTo(0.1, within(1e-12));
    assertThat(ANY.largestCrossTalk()).isCloseTo(0.06, within(1e-12));
    AxisMatrix flat = new AxisMatrix(Vector3.X, Vector3.Y, Vector3.Y);
    assertThatThrownBy(flat::inverse).isInstanceOf(CalibrationException.class);
  }

  @Test
  void sixFacesGiveTheTwelveNumbersExactly() {
    // Given: no noise. Expect: the errors put in, nothing left over, and the least spreads: 0.001
    // m/s^2 over root 6, and over 9.80665 root 2. Within 1e-9.
    TableUnit unit = TableUnit.raw(0, 1);
    for (Pose pose : Pose.values()) {
      unit.lieWithUp(pose.up(), 0, 2);
    }
    SixPositions found = SixPositions.of(unit.stream(), TableUnit.G);
    assertThat(found.bias().minus(unit.accelBias).norm()).isLessThan(1e-9);
    for (Vector3 v : List.of(Vector3.X, Vector3.Y, Vector3.Z)) {
      assertThat(found.errors().times(v).minus(unit.accelErrors.times(v)).norm()).isLessThan(1e-9);
    }
    assertThat(found.residualMps2()).isLessThan(1e-9);
    assertThat(found.biasSigmaMps2()).isCloseTo(0.001 / Math.sqrt(6), within(1e-12));
    assertThat(found.errorsSigma()).isCloseTo(0.001 / (9.80665 * Math.sqrt(2)), within(1e-12));
  }

  @Test
  void whatSixFacesLeaveOverIsTheirDisagreement() {
    // Given: exact faces, shown x off by +-e on the two x faces together (so that it is no bias and
    // no scale: the mean of opposite faces must agree for all pairs). Expect: the pairs' means are
    // e, 0, 0 in x; least squares leaves 2 x (2/3 e)^2 + 4 x (1/3 e)^2 = 4/3 e^2 over 6 spare
    // readings.
    double e = 0.03;
    List<UnitStream> stills =
        List.of(Pose.values()).stream()
            .map(
                p ->
                    still(
                        2,
                        t -> Vector3.ZERO,
                        t -> p.up().times(9.8).plus(Vector3.X.times(p.up().x() == 0 ? 0 : e))))
            .toList();
    SixPositions found = SixPositions.ofStills(stills, 9.8);
    assertThat(found.residualMps2()).isCloseTo(Math.sqrt(4 / 3.0 * e * e / 6), within(1e-9));
    assertThat(found.bias().x()).isCloseTo(e / 3, within(1e-9));
    assertThat(found.biasSigmaMps2()).isCloseTo(found.residualMps2() / Math.sqrt(6), within(1e-12));
  }

  private static UnitStream turned(double angleX, double angleY, double angleZ) {
    TableUnit unit = TableUnit.raw(0, 1).lie(2);
    for (Vector3 angle :
        List.of(Vector3.X.times(angleX), Vector3.Y.times(angleY), Vector3.Z.times(angleZ))) {
      unit.turn(angle, 2).lie(2).turn(angle.times(-1), 1.5).lie(2);
    }
    return unit.stream();
  }

  @Test
  void turnsGiveTheGyrosMatrixExactlyAndItsSigma() {
    // Given: a quarter, a half and a whole turn there and back about x, y and z. Expect: the errors
    // put in; one sigma 0.1 deg over the root of the sum of squared turns about that axis.
    double q = Math.PI / 2;
    KnownTurns found = KnownTurns.of(turned(q, 2 * q, -4 * q));
    AxisMatrix truth = TableUnit.raw(0, 1).gyroErrors;
    for (Vector3 v : List.of(Vector3.X, Vector3.Y, Vector3.Z)) {
      assertThat(found.errors().times(v).minus(truth.times(v)).norm()).isLessThan(1e-9);
    }
    assertThat(found.residualRad()).isLessThan(1e-9);
    double least = Math.toRadians(0.1);
    assertThat(found.errorsSigma(0)).isCloseTo(least / (q * Math.sqrt(2)), within(1e-9));
    assertThat(found.errorsSigma(2)).isCloseTo(least / (4 * q * Math.sqrt(2)), within(1e-9));
    assertThat(found.turns().get(4).trueRad()).isCloseTo(-4 * q, within(1e-12));
    assertThat(found.turns().get(4).axis()).isEqualTo(2);
  }

  @ParameterizedTest
  @CsvSource({"96,0,true", "98,0,false", "83.5,0,true", "82,0,false", "90,26,true", "90,32,false"})
  void aTurnCountsWithinEightPercentOfQuartersAndNearlyAboutOneAxis(
      double deg, double asideDeg, boolean counts) {
    // Given: a turn about y with some about x. Expect: 8 % of a quarter, 7.2 deg; cosine 0.95.
    TableUnit perfect =
        new TableUnit(AxisMatrix.IDENTITY, Vector3.ZERO, AxisMatrix.IDENTITY, BIAS, 0, 1);
    UnitStream stream =
        perfect
            .lie(2)
            .turn(new Vector3(Math.toRadians(asideDeg), Math.toRadians(deg), 0), 1)
            .lie(2)
            .stream();
    if (counts) {
      KnownTurns.Turn turn = KnownTurns.turnIn(stream).orElseThrow();
      assertThat(turn.axis()).isEqualTo(1);
      assertThat(Math.toDegrees(turn.trueRad())).isCloseTo(90, within(1e-9));
      assertThat(Math.toDegrees(turn.shownRad().y())).isCloseTo(deg, within(1e-9));
    } else {
      assertThatThrownBy(() -> KnownTurns.turnIn(stream)).isInstanceOf(CalibrationException.class);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {40, 44})
  void lessThanHalfAQuarterIsNoTurn(double deg) {
    UnitStream stream =
        TableUnit.raw(0, 1).lie(2).turn(Vector3.Z.times(Math.toRadians(deg)), 1).lie(2).stream();
    assertThat(KnownTurns.turnIn(stream)).isEmpty();
  }

  private static UnitCalibration made() {
    return new UnitCalibration(
        "TEST-7",
        DAY,
        9.8,
        new Correction(BIAS, ANY),
        new Correction(new Vector3(0.2, -0.1, 0.3), ANY.inverse()),
        new TreeMap<>(),
        new TreeMap<>());
  }

  @Test
  void aCalibrationTakesTheBiasOffAndThenTheMatrix() {
    // Given: any matrices. Expect: matrix (shown - bias), gyro and accelerometer each with its own;
    // a lost value spoils the axes that it reaches.
    UnitStream raw = still(0.1, t -> new Vector3(1, 2, -3), t -> UP);
    raw.gyroColumnRadPerS(2)[5] = Double.NaN;
    UnitStream fixed = made().apply(raw);
    Vector3 rate = ANY.times(new Vector3(1, 2, -3).minus(BIAS));
    Vector3 force = ANY.inverse().times(UP.minus(new Vector3(0.2, -0.1, 0.3)));
    for (int axis = 0; axis < 3; axis++) {
      assertThat(fixed.gyroRadPerS(axis, 4)).isCloseTo(rate.get(axis), within(1e-12));
      assertThat(fixed.accelMps2(axis, 4)).isCloseTo(force.get(axis), within(1e-12));
      assertThat(fixed.gyroRadPerS(axis, 5)).isNaN();
    }
    UnitStream plain = UnitCalibration.none("TEST-7", DAY).apply(raw);
    assertThat(plain.gyroRadPerS(0, 5)).isEqualTo(1);
    assertThat(plain.gyroRadPerS(2, 5)).isNaN();
    assertThat(plain.facts().calibrated()).isFalse();
  }

  @Test
  void eachPartFillsItsOwnNumbersAndFigures() {
    TableRest rest = TableRest.of(shaking(4, 0.2, 0.01, 0));
    KnownTurns turns = KnownTurns.of(turned(Math.PI, Math.PI, Math.PI));
    TableUnit unit = TableUnit.raw(0, 1);
    for (Pose pose : Pose.values()) {
      unit.lieWithUp(pose.up(), 0, 2);
    }
    SixPositions positions = SixPositions.of(unit.stream(), TableUnit.G);
    UnitCalibration all =
        UnitCalibration.none("TEST-7", DAY)
            .with(rest, DAY)
            .with(turns, DAY.plusDays(1))
            .with(positions, 9.81, DAY.plusDays(2))
            .withFigure("more", 3);
    assertThat(all.gyro().bias()).isEqualTo(rest.gyroBiasRadPerS());
    assertThat(all.gyro().matrix()).isEqualTo(turns.errors().inverse());
    assertThat(all.accel().matrix()).isEqualTo(positions.errors().inverse());
    assertThat(all.accel().bias()).isEqualTo(positions.bias());
    assertThat(all.gravityMps2()).isEqualTo(9.81);
    assertThat(all.date()).isEqualTo(DAY.plusDays(2));
    assertThat(all.complete()).isTrue();
    assertThat(all.parts().get("known-turns")).isEqualTo(DAY.plusDays(1));
    assertThat(all.figures())
        .containsEntry("more", 3.0)
        .containsEntry("accel_noise_m_per_s2", rest.accelNoiseMps2())
        .containsEntry("accel_matrix_sigma", positions.errorsSigma())
        .containsEntry("gyro_matrix_sigma_z", turns.errorsSigma(2));
    assertThat(all.figures().get("gyro_noise_deg_per_s"))
        .isCloseTo(Math.toDegrees(rest.gyroNoiseRadPerS()), within(1e-12));
    for (double g : new double[] {9.69, 9.91}) {
      assertThatThrownBy(() -> UnitCalibration.none("TEST-7", DAY).with(positions, g, DAY))
          .isInstanceOf(IllegalArgumentException.class);
    }
    assertThatThrownBy(() -> UnitCalibration.none(" ", DAY))
        .isInstanceOf(CalibrationException.class);
  }

  @Test
  void theEffectIsTheRootMeanSquareOverStillStretches() {
    // Given: two rests with a turn between, seen by a unit off by 0.2 m/s^2 in z and 0.02 rad/s in
    // x, and a calibration that takes half of it off. Expect: 0.2 and 0.1; 0.02 and 0.01.
    TableUnit off =
        new TableUnit(
            AxisMatrix.IDENTITY,
            new Vector3(0, 0, 0.2),
            AxisMatrix.IDENTITY,
            new Vector3(0.02, 0, 0),
            0,
            1);
    UnitStream stream = off.lie(2).turn(Vector3.Z, 1).lie(2).stream();
    UnitCalibration half =
        new UnitCalibration(
            "TEST-7",
            DAY,
            TableUnit.G,
            new Correction(new Vector3(0.01, 0, 0), AxisMatrix.IDENTITY),
            new Correction(new Vector3(0, 0, 0.1), AxisMatrix.IDENTITY),
            new TreeMap<>(),
            new TreeMap<>());
    CalibrationEffect effect = CalibrationEffect.of(half, stream).orElseThrow();
    assertThat(effect.stretches()).isEqualTo(2);
    assertThat(effect.gravityErrorBeforeMps2()).isCloseTo(0.2, within(1e-9));
    assertThat(effect.gravityErrorAfterMps2()).isCloseTo(0.1, within(1e-9));
    assertThat(effect.rateBeforeRadPerS()).isCloseTo(0.02, within(1e-9));
    assertThat(effect.rateAfterRadPerS()).isCloseTo(0.01, within(1e-9));
  }

  @Test
  void theFloorIsTheLowestPointAndWhiteNoiseTheFallBeforeIt() {
    // Given: +1 and -1 by turns, 1024 values a second apart: the deviation of means of m falls from
    // root 2 at once to 0. Expect: the curve by the deviation itself, octave by octave up to 9
    // stretches; white noise the first; bias instability the floor over root(2 ln 2 / pi) = 0.6643.
    double[] values = new double[1024];
    for (int i = 0; i < values.length; i++) {
      values[i] = Math.sin(0.01 * i) + (i % 2 == 0 ? 1 : -1);
    }
    NoiseFigures figures = NoiseFigures.of(values, 0.5);
    assertThat(figures.curve()).hasSize(7);
    NoiseFigures.AllanPoint lowest = figures.curve().get(0);
    int m = 1;
    for (NoiseFigures.AllanPoint point : figures.curve()) {
      assertThat(point.tauS()).isEqualTo(0.5 * m);
      assertThat(point.deviation()).isEqualTo(AllanDeviation.overlapping(values, m));
      lowest = point.deviation() < lowest.deviation() ? point : lowest;
      m *= 2;
    }
    assertThat(figures.floor()).isEqualTo(lowest.deviation());
    assertThat(figures.floorTauS()).isEqualTo(lowest.tauS());
    assertThat(lowest.tauS()).isEqualTo(1);
    assertThat(figures.whiteNoisePerRootS())
        .isCloseTo(figures.curve().get(0).deviation() * Math.sqrt(0.5), within(1e-12));
    assertThat(figures.biasInstability()).isCloseTo(figures.floor() / 0.6643, within(1e-4));
  }

  @ParameterizedTest
  @ValueSource(ints = {35, 36})
  void noiseFiguresNeedThirtySixValues(int n) {
    double[] values = new double[n];
    for (int i = 0; i < n; i++) {
      values[i] = i % 3;
    }
    if (n < 36) {
      assertThatThrownBy(() -> NoiseFigures.of(values, 1)).isInstanceOf(CalibrationException.class);
    } else {
      assertThat(NoiseFigures.of(values, 1).curve()).hasSize(3);
      assertThatThrownBy(() -> NoiseFigures.of(values, 0)).isInstanceOf(CalibrationException.class);
    }
  }

  @Test
  void stillStretchesAreCutByAWindowAtBothEnds() {
    // Given: still, shaken from 2 to 3 s, still to 5 s; windows of 0.2 s. Expect: runs to 2 s and
    // from 3 s, each without 0.2 s at its ends, a window less where one straddles it; shorter than
    // asked for, none.
    UnitStream stream =
        still(
            5,
            t -> BIAS.plus(Vector3.X.times(t >= 2 - 1e-9 && t < 3 - 1e-9 ? flip(t) : 0)),
            t -> UP);
    List<UnitStream> found = StillStretches.of(stream, 0.5);
    assertThat(found).hasSize(2);
    assertThat(found.get(0).timeS(0)).isCloseTo(0.2, within(1e-9));
    assertThat(found.get(0).timeS(found.get(0).size() - 1)).isBetween(1.59, 1.8);
    assertThat(found.get(1).timeS(0)).isBetween(3.19, 3.41);
    assertThat(StillStretches.of(stream, 1.2)).hasSize(2);
    assertThat(StillStretches.of(stream, 2.5)).isEmpty();
    assertThat(StillStretches.runs(stream).get(0).isOver()).isTrue();
    assertThat(StillStretches.runs(stream).get(1).isOver()).isFalse();
  }

  @ParameterizedTest
  @CsvSource({
    "1.4,0,0,true",
    "1.6,0,0,false",
    "0,0.34,0,true",
    "0,0.36,0,false",
    "0,0,4.9,true",
    "0,0,5.1,false"
  })
  void stillIsUnderOneAndAHalfDegreesThirtyFiveHundredthsAndFiveOfMean(
      double rateDeg, double force, double meanDeg, boolean isStill) {
    UnitStream stream =
        still(
            3,
            t -> new Vector3(Math.toRadians(meanDeg), Math.toRadians(rateDeg) * flip(t), 0),
            t -> UP.plus(Vector3.Y.times(force * flip(t))));
    assertThat(StillStretches.of(stream, 1)).hasSize(isStill ? 1 : 0);
  }

  @Test
  void aStepLooksAtItsMarksAndElseAtTheWholeRecording() {
    // Given: rests of two biases, marked twice. Expect: the later mark; without marks the longest.
    UnitStream stream =
        still(12, t -> t < 5 ? BIAS : t < 5.5 ? new Vector3(1, 0, 0) : BIAS.times(2), t -> UP);
    Mark first = new Mark(0.5, 3, RestGuide.TABLE_REST, "", "");
    Mark second = new Mark(6, 3, RestGuide.TABLE_REST, "", "");
    assertThat(bias(stream, List.of(first, second))).isCloseTo(2, within(1e-9));
    assertThat(bias(stream, List.of(first))).isCloseTo(1, within(1e-9));
    assertThat(bias(stream, List.of())).isCloseTo(2, within(1e-9));
    Mark along = new Mark(6, 5, RestGuide.LONG_REST, "", "");
    assertThat(new TableWork(stream, List.of(along)).longRest().timeS(0)).isGreaterThan(6);
  }

  private static double bias(UnitStream stream, List<Mark> marks) {
    return new TableWork(stream, marks).rest().gyroBiasRadPerS().x() / BIAS.x();
  }

  @ParameterizedTest
  @CsvSource({"24.9,true", "25.1,false"})
  void aFaceCountsWithinTwentyFiveDegrees(double deg, boolean counts) {
    double a = Math.toRadians(deg);
    Vector3 shown = new Vector3(Math.sin(a), 0, -Math.cos(a)).times(9.8);
    assertThat(Pose.of(shown).isPresent()).isEqualTo(counts);
    assertThat(Pose.of(new Vector3(0, -9.8, 1))).contains(Pose.Y_DOWN);
    assertThat(Pose.of(Vector3.ZERO)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(doubles = {-91, 91, Double.NaN})
  void aLatitudeBeyondThePolesIsRefused(double latitude) {
    assertThatThrownBy(() -> Gravity.atMps2(latitude, 0))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void deviationsOfTooFewValuesAreNone() {
    double[] few = {1, 2, 3};
    assertThat(AllanDeviation.overlapping(few, 2)).isNaN();
    assertThatThrownBy(() -> AllanDeviation.overlapping(few, 0))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
