package steadyturn.analysis.coach.teaching;

/** A number behind a word, with where it comes from, in the unit of the measure it is held to. */
public record Limit(String name, double value, String unit, String source) {

  public Limit {
    if (!Double.isFinite(value) || source.isBlank()) {
      throw new IllegalArgumentException(
          "limit " + name + ": value " + value + ", source \"" + source + "\"");
    }
  }

  Limit withValue(double other, String otherSource) {
    return new Limit(name, other, unit, otherSource);
  }
}
