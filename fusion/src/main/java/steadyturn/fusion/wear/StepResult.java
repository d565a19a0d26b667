package steadyturn.fusion.wear;

import steadyturn.ingest.reason.Reason;

/**
 * How a wear step went.
 *
 * @param step the word of the events file, such as {@code quiet-stance}
 * @param used whether it was good enough to be used
 * @param quality the figure it was judged by, in {@code unit}
 * @param limit the figure it had to keep
 * @param unit unit of both
 * @param why none when used, else why it is to be done again
 */
public record StepResult(
    String step, boolean used, double quality, double limit, String unit, Reason why) {

  public static StepResult good(String step, double quality, double limit, String unit) {
    return new StepResult(step, true, quality, limit, unit, Reason.NONE);
  }

  public static StepResult again(
      String step, double quality, double limit, String unit, Reason why) {
    return new StepResult(step, false, quality, limit, unit, why);
  }
}
