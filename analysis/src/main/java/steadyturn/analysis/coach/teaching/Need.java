package steadyturn.analysis.coach.teaching;

import java.util.Arrays;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.swing.SwingEvent;

/**
 * One condition of a rule, as a teacher writes it: {@code pelvis.turn at top above turn-little},
 * {@code spread of pelvis.turn at top below turn-even}; {@code at swing} for a measure of the whole
 * swing.
 *
 * @param ofSpread looks at the spread from swing to swing instead of the mean
 * @param above whether the value must lie above the limit, else below
 * @param limit name of the limit
 */
public record Need(MeasureAt what, boolean ofSpread, boolean above, String limit) {

  private static final Pattern FORM =
      Pattern.compile("(spread of )?(\\S+) at (\\S+) (above|below) (\\S+)");

  /** Reads a condition. */
  static Need read(String text) {
    Matcher m = FORM.matcher(text.strip());
    if (!m.matches()) {
      throw new TeachingException(
          "\""
              + text
              + "\" is no condition. Write it like \"pelvis.turn at top above turn-little\".");
    }
    return new Need(
        position(m.group(2), m.group(3)),
        m.group(1) != null,
        m.group(4).equals("above"),
        m.group(5));
  }

  static MeasureAt position(String measureId, String at) {
    Optional<Measure> measure =
        Arrays.stream(Measure.values()).filter(m -> m.id().equals(measureId)).findFirst();
    if (measure.isEmpty()) {
      throw new TeachingException(
          "there is no measure \"" + measureId + "\". docs/measures.md lists them.");
    }
    boolean known =
        at.equals("swing") || Arrays.stream(SwingEvent.values()).anyMatch(e -> e.word().equals(at));
    if (!known) {
      throw new TeachingException(
          "there is no position \""
              + at
              + "\". Use one like top or impact, or swing for all of it.");
    }
    return new MeasureAt(measure.get(), at.equals("swing") ? "" : at);
  }
}
