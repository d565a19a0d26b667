package steadyturn.analysis.lab.family;

import java.util.Locale;

/** What is the matter in a lesson; members of all families are drawn anew for each. */
public enum Situation {
  STANDARD("all wear steps, still address, finish held"),
  FINISH_LEFT("finish left at once"),
  FINISH_WANDERS("finish that never comes to rest"),
  ADDRESS_DRIFTS("address drifts at 3 to 12 cm/s"),
  ADDRESS_RESTLESS("small steps at a short address, forward press"),
  ADDRESS_WAGGLES("waggle that runs into the takeaway"),
  NO_WEAR_STEPS("no wear step done"),
  SOFT_BLOWS("blows that are soft at first or swell"),
  DOUBLE_BLOWS("two blows, or turf before the ball"),
  POOR_UNITS("loud, uncalibrated, slow units that lose packets"),
  FINE_UNITS("quiet units at 1000 Hz"),
  SLIPPING_BELT("belt that leans by 10 to 20 deg and creeps"),
  LOOSE_WRIST("wrist axes far from square, twisting skin and wrist"),
  SLOW_AND_PAUSING("slow swings, pauses at the top"),
  FAST_AND_SHORT("fast swings of three-quarter length");

  private final String what;

  Situation(String what) {
    this.what = what;
  }

  /** In plain words. */
  public String what() {
    return what;
  }

  /** The word of the command line: {@code finish-left}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Draws a kind of movement as the situation has it. */
  public ShapeFamily shape(Dice dice) {
    return ShapeFamily.draw(
        dice,
        switch (this) {
          case SLOW_AND_PAUSING -> ShapeFamily.Tempo.SLOW;
          case FAST_AND_SHORT -> ShapeFamily.Tempo.FAST_AND_SHORT;
          default -> ShapeFamily.Tempo.ANY;
        });
  }

  /** Draws a kind of error as the situation has it. */
  public ErrorFamily errors(Dice dice) {
    ErrorFamily usual = ErrorFamily.draw(dice);
    return switch (this) {
      case SOFT_BLOWS -> usual.with(dice.one(Blow.Kind.SOFT_FIRST, Blow.Kind.SLOW));
      case DOUBLE_BLOWS -> usual.with(dice.one(Blow.Kind.DOUBLE, Blow.Kind.TURF_FIRST));
      case POOR_UNITS -> usual.with(Chip.poor(dice));
      case FINE_UNITS -> usual.with(Chip.fine(dice));
      case SLIPPING_BELT -> usual.slipping(dice);
      case LOOSE_WRIST -> usual.looseWrist(dice);
      default -> usual;
    };
  }
}
