package steadyturn.analysis.lab.mistake;

import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import steadyturn.analysis.lesson.Notice;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;

/**
 * What people do wrong when they strap, set up, import or describe units, done to the samples of a
 * lesson; beside each the causes by which it may be called. Knows nothing of how it is noticed.
 */
@SuppressWarnings("ImmutableEnumChecker") // Set.of
public enum Mistake {
  PELVIS_UPSIDE_DOWN("mount.upside-down"),
  PELVIS_FACING_IN("mount.facing-in"),
  PELVIS_UPSIDE_DOWN_FACING_IN("mount.upside-down"),
  PELVIS_ON_ITS_SIDE("mount.on-its-side"),
  FOREARM_TOWARDS_ELBOW("mount.towards-elbow"),
  HAND_TOWARDS_ELBOW("mount.towards-elbow"),
  ARM_TOWARDS_ELBOW("mount.towards-elbow"),
  FOREARM_INSIDE("mount.facing-in"),
  HAND_IN_THE_PALM("mount.facing-in"),
  FOREARM_HAND_EXCHANGED("quality.swapped", "mount.exchanged"),
  PELVIS_HAND_EXCHANGED("quality.swapped", "mount.exchanged", "quality.on-the-arm"),
  PELVIS_FOREARM_EXCHANGED("quality.swapped", "mount.exchanged", "quality.on-the-arm"),
  SIZES_IN_CM("body.size"),
  SIZES_IN_M("body.size"),
  SIZES_IN_INCHES("body.size"),
  DEPTH_1500_MM("body.size"),
  WIDTH_DEPTH_EXCHANGED("body.sizes-exchanged"),
  STATURE_IN_CM("body.size"),
  WRONG_HANDEDNESS("body.side"),
  ARM_CLOCKS_OFF("clock", "swing.hips-out-of-time"),
  FOREARM_CLOCK_OFF("clock"),
  HAND_CLOCK_OFF("clock"),
  ALL_LEFT_HANDED("quality.mirrored"),
  PELVIS_LEFT_HANDED("quality.mirrored"),
  HAND_LEFT_HANDED("quality.mirrored"),
  GYRO_AXIS_REVERSED("quality.sign"),
  ACCEL_AXIS_REVERSED("quality.sign"),
  GYRO_AXES_EXCHANGED("quality.axes"),
  ACCEL_REVERSED("mount.upside-down", "mount.towards-elbow"),
  GYRO_CUT_UNDER_STATED("quality.gyro-cut-below"),
  ACCEL_CUT_UNDER_STATED("quality.accel-cut-below"),
  FILLED_BY_HOLDING("quality.filled-up"),
  FILLED_BY_LINES("quality.filled-up"),
  STATED_5_PCT_FAST("quality.turn-scale"),
  ACCEL_IN_G("quality.gravity-in-g"),
  ACCEL_IN_MG("quality.gravity-in-thousandths"),
  GRAVITY_TAKEN_OUT("quality.gravity-taken-out"),
  GYRO_IN_DEG("quality.gyro-in-degrees"),
  GYRO_DEG_TWICE("quality.gyro-in-radians"),
  TIME_IN_MS("quality.time-unit"),
  TIME_IN_US("quality.time-unit"),
  PELVIS_PUT_BACK_UPSIDE_DOWN("mount.upside-down", "swing."),
  ARM_UNITS_EXCHANGED_BETWEEN("quality.swapped", "mount.exchanged", "swing."),
  GYRO_AXIS_STUCK("quality.held", "quality.constant"),
  GYRO_10_PCT_FAST("quality.turn-scale"),
  GYRO_IN_TURNS("quality.turn-scale"),
  ACCEL_IN_FEET("quality.gravity-far"),
  HAND_GYRO_IN_DEG("quality.gyro-in-degrees"),
  PELVIS_ACCEL_IN_G("quality.gravity-in-g"),
  FILLED_SMOOTHLY("quality.filled-up", "quality.smoothed"),
  HAND_RATE_5_PCT_FAST("clock", "quality.turn-scale"),
  BOTH_ARM_UNITS_ON_THE_HAND("mount.same-place"),
  ALL_FACING_IN("mount.facing-in"),
  PELVIS_AXES_CYCLED("mount.on-its-side", "mount.upside-down", "mount.facing-in"),
  GIRTH_FOR_WIDTH("body.size"),
  BELT_ROUND_THE_HIP("mount.round-the-hip", "mount.facing-in"),
  PELVIS_SLIPS("mount.slipped"),
  FOREARM_SLIPS("mount.slipped"),
  HAND_SLIPS("mount.slipped"),
  ON_THE_TRAIL_ARM("mount.facing-in"),
  OTHER_PLAYER_LATER("body.side", "body.other-side"),
  STEPS_MIXED("step."),
  ORDER_REVERSED("quality.mirrored"),
  GYRO_CUT_AT_HALF("quality.gyro-cut-below"),
  ACCEL_CUT_AT_HALF("quality.accel-cut-below"),
  /** What costs a little or nothing, and need not be called. */
  BEGINS_IN_A_SWING,
  SAMPLES_REPEATED,
  WARMS_UP,
  /** Later than those that need no name, as what is drawn hangs on the place in this list. */
  PELVIS_MIRRORED("mount.turns-against"),
  GYRO_AXIS_DEAD("quality.dead"),
  ACCEL_AXIS_STUCK("quality.held", "quality.constant"),
  BELT_TURNED_BETWEEN("mount.slipped"),
  PELVIS_HAND_EXCHANGED_BETWEEN("mount.exchanged"),
  HALF_RATE_LATER("quality.loss"),
  EACH_SAMPLE_TWICE("quality.filled-up"),
  HAND_GRAVITY_TAKEN_OUT("quality.gravity-taken-out"),
  MARKS_HALF_A_MINUTE_LATE("step."),
  SAMPLES_WILD;

  private final Set<String> causes;

  Mistake(String... causes) {
    this.causes = Set.of(causes);
  }

  /** Codes of the reasons, or their beginnings, that call it by its right name. */
  public Set<String> causes() {
    return causes;
  }

  /** Whether a notice calls it by a right name. */
  boolean isNamed(Notice notice) {
    String code = notice.reason().code().word();
    boolean isSaid = Stream.of("clock.", "step.", "body.").anyMatch(code::startsWith);
    return (notice.refuses() || isSaid) && causes.stream().anyMatch(code::startsWith);
  }

  /** By 12 to 30 deg about any axis, rad. */
  private static Vector3 slip(RandomGenerator draw) {
    Vector3 axis = Vector3.each(k -> draw.nextGaussian()).unit();
    return axis.times(Math.toRadians(12 + 18 * draw.nextDouble()));
  }

  /** Whether the pose is lost that wrist angles count from: then they are changes since address. */
  boolean losesNeutralPose() {
    return this == STEPS_MIXED || this == BEGINS_IN_A_SWING || this == MARKS_HALF_A_MINUTE_LATE;
  }

  /** Whether it is to be called by a name. */
  boolean isToBeNamed() {
    return !causes.isEmpty();
  }

  /** Factor by which all times are longer for it. */
  double ofTime() {
    return this == STATED_5_PCT_FAST ? 1 / 1.05 : 1;
  }

  /** The word of the command line: {@code arm-clocks-off}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The recording with this mistake in it; the seed draws sizes, units and axes. */
  @SuppressWarnings("EnumOrdinal") // only to draw differently
  public Recording in(Recording sound, long seed) {
    RandomGenerator draw = new Well19937c(seed * 64 + ordinal());
    BodyPoint any = sound.units().get(draw.nextInt(sound.units().size())).point();
    int axis = draw.nextInt(3);
    double lateS = (draw.nextBoolean() ? 1 : -1) * (0.05 + 0.25 * draw.nextDouble());
    return switch (this) {
      case PELVIS_UPSIDE_DOWN -> WrongData.flipped(sound, 2, BodyPoint.PELVIS);
      case PELVIS_FACING_IN -> WrongData.flipped(sound, 0, BodyPoint.PELVIS);
      case PELVIS_UPSIDE_DOWN_FACING_IN -> WrongData.flipped(sound, 1, BodyPoint.PELVIS);
      case PELVIS_ON_ITS_SIDE -> WrongData.onItsSide(sound);
      case FOREARM_TOWARDS_ELBOW -> WrongData.flipped(sound, 2, BodyPoint.LEAD_FOREARM);
      case HAND_TOWARDS_ELBOW -> WrongData.flipped(sound, 2, BodyPoint.LEAD_HAND);
      case ARM_TOWARDS_ELBOW ->
          WrongData.flipped(
              WrongData.flipped(sound, 2, BodyPoint.LEAD_FOREARM), 2, BodyPoint.LEAD_HAND);
      case FOREARM_INSIDE -> WrongData.flipped(sound, 0, BodyPoint.LEAD_FOREARM);
      case HAND_IN_THE_PALM -> WrongData.flipped(sound, 0, BodyPoint.LEAD_HAND);
      case FOREARM_HAND_EXCHANGED ->
          WrongData.exchanged(sound, BodyPoint.LEAD_FOREARM, BodyPoint.LEAD_HAND);
      case PELVIS_HAND_EXCHANGED ->
          WrongData.exchanged(sound, BodyPoint.PELVIS, BodyPoint.LEAD_HAND);
      case PELVIS_FOREARM_EXCHANGED ->
          WrongData.exchanged(sound, BodyPoint.PELVIS, BodyPoint.LEAD_FOREARM);
      case SIZES_IN_CM -> WrongData.sized(sound, mm -> mm / 10, mm -> mm / 10, mm -> mm);
      case SIZES_IN_M -> WrongData.sized(sound, mm -> mm / 1000, mm -> mm / 1000, mm -> mm / 1000);
      case SIZES_IN_INCHES ->
          WrongData.sized(sound, mm -> mm / 25.4, mm -> mm / 25.4, mm -> mm / 25.4);
      case DEPTH_1500_MM -> WrongData.sized(sound, mm -> mm, mm -> 1500, mm -> mm);
      case WIDTH_DEPTH_EXCHANGED -> WrongData.sizesExchanged(sound);
      case STATURE_IN_CM -> WrongData.sized(sound, mm -> mm, mm -> mm, mm -> mm / 10);
      case WRONG_HANDEDNESS -> WrongData.otherSide(sound);
      case ARM_CLOCKS_OFF ->
          WrongData.shifted(sound, lateS, BodyPoint.LEAD_FOREARM, BodyPoint.LEAD_HAND);
      case FOREARM_CLOCK_OFF -> WrongData.shifted(sound, lateS, BodyPoint.LEAD_FOREARM);
      case HAND_CLOCK_OFF -> WrongData.shifted(sound, lateS, BodyPoint.LEAD_HAND);
      case ALL_LEFT_HANDED -> WrongData.each(sound, u -> WrongUnit.mapped(u, axis, -1, axis, -1));
      case PELVIS_LEFT_HANDED ->
          WrongData.one(sound, BodyPoint.PELVIS, u -> WrongUnit.mapped(u, axis, -1, axis, -1));
      case HAND_LEFT_HANDED ->
          WrongData.one(sound, BodyPoint.LEAD_HAND, u -> WrongUnit.mapped(u, axis, -1, axis, -1));
      case GYRO_AXIS_REVERSED ->
          WrongData.one(sound, any, u -> WrongUnit.mapped(u, axis, 1, axis, -1));
      case ACCEL_AXIS_REVERSED ->
          WrongData.one(sound, any, u -> WrongUnit.mapped(u, axis, -1, axis, 1));
      case GYRO_AXES_EXCHANGED -> WrongData.one(sound, any, u -> WrongUnit.gyroExchanged(u, axis));
      case ACCEL_REVERSED -> WrongData.each(sound, u -> WrongUnit.scaled(u, -1, 1));
      case GYRO_CUT_UNDER_STATED ->
          WrongData.one(sound, BodyPoint.LEAD_HAND, u -> WrongUnit.cut(u, 1e9, 500));
      case ACCEL_CUT_UNDER_STATED ->
          WrongData.one(sound, BodyPoint.LEAD_HAND, u -> WrongUnit.cut(u, 4 * 9.80665, 1e9));
      case FILLED_BY_HOLDING -> WrongData.each(sound, u -> WrongUnit.filled(u, false));
      case FILLED_BY_LINES -> WrongData.each(sound, u -> WrongUnit.filled(u, true));
      case STATED_5_PCT_FAST -> WrongData.stretched(sound, 1 / 1.05);
      case ACCEL_IN_G -> WrongData.each(sound, u -> WrongUnit.scaled(u, 1 / 9.80665, 1));
      case ACCEL_IN_MG -> WrongData.each(sound, u -> WrongUnit.scaled(u, 1000 / 9.80665, 1));
      case GRAVITY_TAKEN_OUT -> WrongData.each(sound, WrongUnit::withoutGravity);
      case GYRO_IN_DEG -> WrongData.each(sound, u -> WrongUnit.scaled(u, 1, Math.toDegrees(1)));
      case GYRO_DEG_TWICE -> WrongData.each(sound, u -> WrongUnit.scaled(u, 1, Math.toRadians(1)));
      case TIME_IN_MS -> WrongData.each(sound, u -> WrongUnit.times(u, 1e3));
      case TIME_IN_US -> WrongData.each(sound, u -> WrongUnit.times(u, 1e6));
      case PELVIS_PUT_BACK_UPSIDE_DOWN ->
          WrongData.later(sound, WrongData.flipped(sound, 2, BodyPoint.PELVIS));
      case ARM_UNITS_EXCHANGED_BETWEEN ->
          WrongData.later(
              sound, WrongData.exchanged(sound, BodyPoint.LEAD_FOREARM, BodyPoint.LEAD_HAND));
      case GYRO_AXIS_STUCK ->
          WrongData.later(sound, WrongData.one(sound, any, u -> WrongUnit.stuck(u, axis)));
      case GYRO_10_PCT_FAST -> WrongData.one(sound, any, u -> WrongUnit.scaled(u, 1, 1.1));
      case GYRO_IN_TURNS -> WrongData.each(sound, u -> WrongUnit.scaled(u, 1, 1 / (2 * Math.PI)));
      case ACCEL_IN_FEET -> WrongData.each(sound, u -> WrongUnit.scaled(u, 1 / 0.3048, 1));
      case HAND_GYRO_IN_DEG ->
          WrongData.one(sound, BodyPoint.LEAD_HAND, u -> WrongUnit.scaled(u, 1, Math.toDegrees(1)));
      case PELVIS_ACCEL_IN_G ->
          WrongData.one(sound, BodyPoint.PELVIS, u -> WrongUnit.scaled(u, 1 / 9.80665, 1));
      case FILLED_SMOOTHLY -> WrongData.each(sound, WrongUnit::filledSmoothly);
      case HAND_RATE_5_PCT_FAST ->
          WrongData.one(sound, BodyPoint.LEAD_HAND, u -> WrongUnit.times(u, 1 / 1.05));
      case BOTH_ARM_UNITS_ON_THE_HAND -> WrongData.onOnePlace(sound);
      case ALL_FACING_IN ->
          WrongData.flipped(
              WrongData.flipped(
                  WrongData.flipped(sound, 0, BodyPoint.PELVIS), 0, BodyPoint.LEAD_FOREARM),
              0,
              BodyPoint.LEAD_HAND);
      case PELVIS_AXES_CYCLED -> WrongData.one(sound, BodyPoint.PELVIS, WrongUnit::cycled);
      case GIRTH_FOR_WIDTH -> WrongData.sized(sound, mm -> 3.3 * mm, mm -> mm, mm -> mm);
      case BELT_ROUND_THE_HIP ->
          WrongWear.roundTheHip(
              sound, (draw.nextBoolean() ? 1 : -1) * Math.toRadians(30 + 60 * draw.nextDouble()));
      case PELVIS_SLIPS -> WrongWear.slipped(sound, BodyPoint.PELVIS, slip(draw));
      case FOREARM_SLIPS -> WrongWear.slipped(sound, BodyPoint.LEAD_FOREARM, slip(draw));
      case HAND_SLIPS -> WrongWear.slipped(sound, BodyPoint.LEAD_HAND, slip(draw));
      case ON_THE_TRAIL_ARM ->
          WrongData.flipped(
              WrongData.flipped(sound, 0, BodyPoint.LEAD_FOREARM), 0, BodyPoint.LEAD_HAND);
      case OTHER_PLAYER_LATER -> WrongWear.otherSideLater(sound);
      case STEPS_MIXED -> WrongWear.stepsMixed(sound);
      case ORDER_REVERSED -> WrongData.each(sound, WrongWear::backwards);
      case GYRO_CUT_AT_HALF -> WrongData.one(sound, BodyPoint.LEAD_HAND, WrongUnit::gyroCutAtHalf);
      case ACCEL_CUT_AT_HALF ->
          WrongData.one(sound, BodyPoint.LEAD_HAND, WrongUnit::accelCutAtHalf);
      case BEGINS_IN_A_SWING -> WrongWear.begunInASwing(sound);
      case SAMPLES_REPEATED -> WrongData.one(sound, any, u -> WrongWear.repeating(u, draw, 0.03));
      case WARMS_UP -> WrongData.each(sound, u -> WrongWear.warming(u, draw, Math.toRadians(1)));
      case PELVIS_MIRRORED -> WrongData.one(sound, BodyPoint.PELVIS, WrongWear::mirrored);
      case GYRO_AXIS_DEAD -> WrongData.one(sound, any, u -> WrongSamples.dead(u, axis, draw));
      case ACCEL_AXIS_STUCK ->
          WrongData.later(sound, WrongData.one(sound, any, u -> WrongSamples.accelStuck(u, axis)));
      case BELT_TURNED_BETWEEN ->
          WrongWear.slipped(sound, BodyPoint.PELVIS, new Vector3(Math.PI / 2, 0, 0));
      case PELVIS_HAND_EXCHANGED_BETWEEN ->
          WrongData.later(sound, WrongData.exchanged(sound, BodyPoint.PELVIS, BodyPoint.LEAD_HAND));
      case HALF_RATE_LATER -> WrongData.each(sound, WrongSamples::halfRateLater);
      case EACH_SAMPLE_TWICE -> WrongData.each(sound, WrongSamples::twice);
      case HAND_GRAVITY_TAKEN_OUT ->
          WrongData.one(sound, BodyPoint.LEAD_HAND, WrongUnit::withoutGravity);
      case MARKS_HALF_A_MINUTE_LATE -> WrongSamples.marksLate(sound, 30);
      case SAMPLES_WILD -> WrongData.one(sound, any, u -> WrongSamples.wild(u, draw, 0.002));
    };
  }
}
