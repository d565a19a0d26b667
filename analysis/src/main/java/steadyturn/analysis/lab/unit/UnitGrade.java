package steadyturn.analysis.lab.unit;

/**
 * How good a unit is. The sizes of the last two are those of low-cost silicon units as data sheets
 * give them (from memory, common range); see docs/simulator.md.
 */
@SuppressWarnings("ImmutableEnumChecker") // Size is a record of numbers
public enum UnitGrade {
  /** Without any error and without steps of a converter: the physics alone. */
  PERFECT(
      Size.NONE, Size.NONE, Size.NONE, Size.NONE, Size.NONE, Size.NONE, Size.NONE, Size.NONE,
      Size.NONE, Size.NONE, false),
  /** Near ideal: errors 10-50 times below those of a calibrated unit. */
  IDEAL(
      Size.between(2e-4, 4e-4),
      Size.between(0.005, 0.02),
      Size.between(0.1, 0.2),
      Size.sd(0.01),
      Size.sd(0.01),
      Size.sd(0.002),
      Size.between(5, 10),
      Size.sd(0.1),
      Size.sd(0.005),
      Size.sd(0.005),
      true),
  /** Corrected by a six-position and turn-table calibration of this very unit. */
  CALIBRATED(
      Size.between(0.005, 0.01),
      Size.between(0.5, 3),
      Size.between(5, 10),
      Size.sd(0.2),
      Size.sd(0.15),
      Size.sd(0.1),
      Size.between(100, 200),
      Size.sd(3),
      Size.sd(0.1),
      Size.sd(0.1),
      true),
  /** As it comes from the shop. */
  RAW(
      Size.between(0.005, 0.01),
      Size.between(0.5, 3),
      Size.between(5, 10),
      Size.between(0.3, 1),
      Size.between(0.3, 1),
      Size.sd(0.1),
      Size.between(100, 200),
      Size.between(10, 40),
      Size.sd(0.5),
      Size.between(0.3, 1),
      true);

  final Size gyroNoiseDegPerSRtHz;
  final Size gyroBiasDegPerS;
  final Size gyroInstabilityDegPerH;
  final Size gyroScalePct;
  final Size gyroMisalignmentDeg;
  final Size gyroDegPerSPerG;
  final Size accelNoiseUgRtHz;
  final Size accelBiasMg;
  final Size accelScalePct;
  final Size accelMisalignmentDeg;
  final boolean quantized;

  UnitGrade(
      Size gyroNoiseDegPerSRtHz,
      Size gyroBiasDegPerS,
      Size gyroInstabilityDegPerH,
      Size gyroScalePct,
      Size gyroMisalignmentDeg,
      Size gyroDegPerSPerG,
      Size accelNoiseUgRtHz,
      Size accelBiasMg,
      Size accelScalePct,
      Size accelMisalignmentDeg,
      boolean quantized) {
    this.gyroNoiseDegPerSRtHz = gyroNoiseDegPerSRtHz;
    this.gyroBiasDegPerS = gyroBiasDegPerS;
    this.gyroInstabilityDegPerH = gyroInstabilityDegPerH;
    this.gyroScalePct = gyroScalePct;
    this.gyroMisalignmentDeg = gyroMisalignmentDeg;
    this.gyroDegPerSPerG = gyroDegPerSPerG;
    this.accelNoiseUgRtHz = accelNoiseUgRtHz;
    this.accelBiasMg = accelBiasMg;
    this.accelScalePct = accelScalePct;
    this.accelMisalignmentDeg = accelMisalignmentDeg;
    this.quantized = quantized;
  }

  /** Whether a stream of such a unit counts as calibrated. */
  public boolean calibrated() {
    return this != RAW;
  }
}
