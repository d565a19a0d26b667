package steadyturn.analysis.coach.teaching;

import java.util.Arrays;
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
      throw TeachingException.of(
          "\"%s\" is no condition. Write it like \"pelvis.turn at top above turn-little\".", text);
    }
    return new Need(
        position(m.group(2), m.group(3)),
        m.group(1) != null,
        m.group(4).equals("above"),
        m.group(5));
  }

  static MeasureAt position(String measureId, String at) {
    Measure measure =
        Measure.ofId(measureId)
            .orElseThrow(
                () ->
                    new TeachingException(
                        "there is no measure \"" + measureId + "\". docs/measures.md lists them."));
    boolean known =
        at.equals("swing") || Arrays.stream(SwingEvent.values()).anyMatch(e -> e.word().equals(at));
    if (!known) {
      throw TeachingException.of(
          "there is no position \"%s\". Use one like top or impact, or swing for all of it.", at);
    }
    return new MeasureAt(measure, at.equals("swing") ? "" : at);
  }
}
