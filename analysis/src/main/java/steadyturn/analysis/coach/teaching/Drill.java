package steadyturn.analysis.coach.teaching;

import java.util.List;
import steadyturn.analysis.compare.MeasureAt;

/**
 * An exercise with a number to reach.
 *
 * @param worksOn turn, slide, circle, release or tempo
 * @param low lower end of the band a repetition should lie in, in the unit of the measure
 * @param high upper end
 * @param reps how many to do in one go
 * @param cautions names of cautions; those that go with every drill come first
 */
public record Drill(
    String name,
    String worksOn,
    MeasureAt judgedBy,
    double low,
    double high,
    int reps,
    List<String> cautions) {

  /** Cautions that go with every drill. */
  static final List<String> ALWAYS = List.of("warm-up", "pain", "space");

  public Drill {
    cautions = List.copyOf(cautions);
    if (!(low < high) || reps < 1) {
      throw new TeachingException(
          name + ": between " + low + " and " + high + ", " + reps + " repetitions");
    }
  }
}
