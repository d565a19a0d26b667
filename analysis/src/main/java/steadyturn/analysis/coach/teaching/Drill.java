package steadyturn.analysis.coach.teaching;

import java.util.List;
import java.util.Map;
import steadyturn.analysis.compare.MeasureAt;

/**
 * An exercise with a number to reach.
 *
 * @param worksOn turn, slide, circle, release or tempo
 * @param goal the band a repetition should lie in, in the unit of the measure
 * @param reps how many to do in one go
 * @param cautions names of cautions; those that go with every drill come first
 */
public record Drill(
    String name, String worksOn, MeasureAt judgedBy, Band goal, int reps, List<String> cautions) {

  /** Cautions that go with every drill. */
  static final List<String> ALWAYS = List.of("warm-up", "pain", "space");

  public Drill {
    cautions = List.copyOf(cautions);
    if (reps < 1) {
      throw new TeachingException(name + ": " + reps + " repetitions");
    }
  }

  /**
   * A band as the teacher wrote it: each end a number or the name of a limit.
   *
   * @param low its lower end; NaN while a named limit is not known
   * @param high its upper end
   */
  public record Band(String from, String to, double low, double high) {

    public Band {
      if (low >= high) {
        throw new TeachingException("the goal is between " + from + " and " + to);
      }
    }

    /** Between two numbers. */
    public static Band of(double low, double high) {
      return new Band(Double.toString(low), Double.toString(high), low, high);
    }

    static Band named(String from, String to) {
      return new Band(from, to, Double.NaN, Double.NaN);
    }

    Band with(Map<String, Limit> limits) {
      return new Band(from, to, value(from, limits), value(to, limits));
    }

    private static double value(String written, Map<String, Limit> limits) {
      if (limits.containsKey(written)) {
        return limits.get(written).value();
      }
      try {
        return Double.parseDouble(written);
      } catch (NumberFormatException e) {
        return Double.NaN; // a limit of the file that this one goes on top of
      }
    }

    boolean isKnown() {
      return Double.isFinite(low) && Double.isFinite(high);
    }
  }

  /** Lower end of the goal; minus infinity where it has no number. */
  public double low() {
    return goal.low;
  }

  /** Upper end of the goal; infinite where it has no number. */
  public double high() {
    return goal.high;
  }

  /** Whether the goal is a number to reach. */
  public boolean hasNumber() {
    return goal.isKnown();
  }

  /** The same exercise with another goal. */
  public Drill withGoal(Band other) {
    return new Drill(name, worksOn, judgedBy, other, reps, cautions);
  }
}
