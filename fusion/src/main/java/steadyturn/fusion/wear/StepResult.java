package steadyturn.fusion.wear;

/**
 * How a wear step went.
 *
 * @param step the word of the events file, such as {@code quiet-stance}
 * @param used whether it was good enough to be used
 * @param quality the figure it was judged by, in {@code unit}
 * @param limit the figure it had to keep
 * @param unit unit of both
 * @param advice empty when used, else what to do again and why
 */
public record StepResult(
    String step, boolean used, double quality, double limit, String unit, String advice) {

  public static StepResult good(String step, double quality, double limit, String unit) {
    return new StepResult(step, true, quality, limit, unit, "");
  }

  public static StepResult again(
      String step, double quality, double limit, String unit, String advice) {
    return new StepResult(step, false, quality, limit, unit, advice);
  }
}
