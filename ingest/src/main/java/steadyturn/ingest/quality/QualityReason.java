package steadyturn.ingest.quality;

import java.util.List;
import java.util.Set;
import steadyturn.ingest.reason.ReasonCode;

/** What can be said of a unit's stream. */
@SuppressWarnings("ImmutableEnumChecker") // List.of
public enum QualityReason implements ReasonCode {
  SHORT("samples", "lengthS"),
  SLOW("rateHz"),
  RATE("rateHz", "statedHz"),
  TIME_UNIT("rateHz", "statedHz"),
  FILLED_UP("rateHz", "trueHz"),
  SMOOTHED("rateHz"),
  LOSS("lostPct"),
  WILD("samples"),
  GAP("count", "longestS"),
  GYRO_CUT("samples", "fullScaleDegPerS"),
  GYRO_NARROW("fullScaleDegPerS"),
  ACCEL_NARROW("fullScaleG"),
  GYRO_CUT_BELOW("seenDegPerS", "statedDegPerS"),
  ACCEL_CUT_BELOW("seenG", "statedG"),
  GYRO_IN_DEGREES,
  GYRO_IN_RADIANS,
  MIRRORED,
  SIGN("channel"),
  AXES,
  /** Gravity turns so many times as far as the gyroscope says. */
  TURN_SCALE("times"),
  SHOCK("samples", "fullScaleG"),
  ACCEL_CUT("samples", "fullScaleG", "longestS"),
  NO_REST,
  NOISE("gyroDegPerS", "accelMps2"),
  BIAS("biasDegPerS"),
  GRAVITY("normMps2"),
  GRAVITY_IN_G("normMps2"),
  GRAVITY_TAKEN_OUT("normMps2"),
  GRAVITY_IN_THOUSANDTHS("normMps2"),
  GRAVITY_FAR("normMps2"),
  MISSING("channel"),
  CONSTANT("channel"),
  DEAD("channel"),
  HELD("channel", "heldS"),
  FROZEN("frozenS"),
  SWAPPED("unit", "times", "other"),
  ON_THE_ARM("unit", "other"),
  APART("fromS", "toS", "other", "otherFromS", "otherToS"),
  LITTLE_SHARED("fromS", "toS", "other", "otherFromS", "otherToS");

  /**
   * Which unit is where: a guess from all movements, which the swings decide where there are any.
   */
  public static final Set<ReasonCode> OF_PLACES = Set.of(SWAPPED, ON_THE_ARM);

  private final List<String> args;

  QualityReason(String... args) {
    this.args = List.of(args);
  }

  @Override
  public List<String> args() {
    return args;
  }
}
