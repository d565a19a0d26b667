package steadyturn.analysis.coach.teaching;

/**
 * A number behind a word, in the unit of the measure it is held to.
 *
 * @param source where it comes from; blank where the teacher set it
 */
public record Limit(String name, double value, String unit, String source) {

  public Limit {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("limit " + name + ": value " + value);
    }
  }

  Limit withValue(double other, String otherSource) {
    return new Limit(name, other, unit, otherSource);
  }
}
