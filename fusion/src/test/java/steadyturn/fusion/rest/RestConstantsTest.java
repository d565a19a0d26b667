package steadyturn.fusion.rest;

import steadyturn.fusion.trial.ConstantsTable;

/** The numbers of this room against their sources, in constants.csv. */
class RestConstantsTest extends ConstantsTable {

  @Override
  protected double value(String id) {
    String[] words = id.split("-", 2);
    RestSettings rest = words[0].equals("address") ? RestSettings.address() : RestSettings.finish();
    return switch (words[1]) {
      case "window" -> rest.windowS();
      case "rate" -> Math.toDegrees(rest.rateRmsRadPerS());
      case "accel" -> rest.accelSdMps2();
      case "minimum" -> rest.minimumS();
      case "longest" -> rest.longestS();
      default -> throw new IllegalArgumentException("no constant " + id);
    };
  }
}
