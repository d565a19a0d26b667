package steadyturn.fusion.attitude;

import steadyturn.fusion.trial.ConstantsTable;

/** The numbers of this room against their sources, in constants.csv. */
class AttitudeConstantsTest extends ConstantsTable {

  @Override
  protected double value(String id) {
    LevelTrack.Spreads raw = LevelTrack.Spreads.RAW;
    LevelTrack.Spreads calibrated = LevelTrack.Spreads.CALIBRATED;
    return switch (id) {
      case "raw-tilt-sd" -> Math.toDegrees(raw.tiltRad());
      case "raw-bias-sd" -> Math.toDegrees(raw.biasRadPerS());
      case "raw-scale-sd" -> raw.scale();
      case "calibrated-tilt-sd" -> Math.toDegrees(calibrated.tiltRad());
      case "calibrated-bias-sd" -> Math.toDegrees(calibrated.biasRadPerS());
      case "calibrated-scale-sd" -> calibrated.scale();
      case "longest-repair" -> PeakRepair.LONGEST_S;
      case "highest-repair" -> PeakRepair.HIGHEST;
      default -> throw new IllegalArgumentException("no constant " + id);
    };
  }
}
