package steadyturn.ingest.quality;

import java.util.Optional;
import steadyturn.ingest.sample.BodyPoint;

/** What a finding is about: several reasons may belong to one thing that is looked at. */
enum Check {
  LENGTH,
  RATE,
  LOSS,
  GAP,
  SATURATION,
  STUCK,
  FROZEN,
  REST,
  NOISE,
  GYRO_BIAS,
  GRAVITY,
  SWAPPED,
  TURN,
  OVERLAP;

  /** What was found in the unit at a point. */
  static Optional<UnitReport> unit(RecordingReport report, BodyPoint point) {
    return report.units().stream().filter(unit -> unit.facts().point() == point).findFirst();
  }

  static Check of(Finding finding) {
    return switch ((QualityReason) finding.what().code()) {
      case SHORT -> LENGTH;
      case SLOW, RATE -> RATE;
      case LOSS, WILD -> LOSS;
      case GAP -> GAP;
      case TIME_UNIT, FILLED_UP, SMOOTHED -> RATE;
      case GYRO_CUT, SHOCK, ACCEL_CUT, GYRO_CUT_BELOW, ACCEL_CUT_BELOW, GYRO_NARROW, ACCEL_NARROW ->
          SATURATION;
      case GYRO_IN_DEGREES, GYRO_IN_RADIANS, MIRRORED, SIGN, AXES, TURN_SCALE -> TURN;
      case MISSING, CONSTANT, DEAD, HELD -> STUCK;
      case FROZEN -> FROZEN;
      case NO_REST -> REST;
      case NOISE -> NOISE;
      case BIAS -> GYRO_BIAS;
      case GRAVITY, GRAVITY_IN_G, GRAVITY_TAKEN_OUT, GRAVITY_IN_THOUSANDTHS, GRAVITY_FAR -> GRAVITY;
      case SWAPPED, ON_THE_ARM -> SWAPPED;
      case APART, LITTLE_SHARED -> OVERLAP;
    };
  }
}
