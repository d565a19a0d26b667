package steadyturn.analysis.compare;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import steadyturn.ingest.recording.disk.Shipped;

/**
 * How the measuring error of one swing splits into a part that all swings of a lesson share and a
 * part of its own. The shared part (unit errors, lever arm, alignment) cancels between clubs of the
 * same lesson, apart from a leftover; between lessons it does not cancel at all.
 *
 * @param shares shared part of the error variance of a measure at a key position, 0..1
 * @param leftover what is left of the shared error between groups of one lesson, as a part of its
 *     standard deviation, because the groups move differently
 */
public record ErrorSplit(Map<MeasureAt, Double> shares, double leftover) {

  private static final String TABLE = "shared-error.csv";

  private static final ErrorSplit MEASURED = new ErrorSplit(read(), 0.1);

  public ErrorSplit {
    shares = Map.copyOf(shares);
    shares.values().forEach(ErrorSplit::checked);
    checked(leftover);
  }

  private static void checked(double part) {
    if (!(part >= 0 && part <= 1)) {
      throw new IllegalArgumentException("parts lie in 0..1, one was " + part);
    }
  }

  /**
   * The shares measured on simulated lessons (shared-error.csv beside this class): of calibrated
   * and of raw units the larger, and of that the upper end of its 95 % interval, so that intervals
   * of means are rather too wide. Leftover 0.1, our choice, because groups rarely differ by more
   * than a tenth in how far and how fast they move.
   */
  public static ErrorSplit defaults() {
    return MEASURED;
  }

  /**
   * Shared part of the error variance of a measure at a key position; where that position was not
   * measured, the largest of the others; all of it for a measure that was not.
   */
  public double sharedPart(MeasureAt what) {
    return Optional.ofNullable(shares.get(what))
        .orElseGet(
            () ->
                shares.entrySet().stream()
                    .filter(each -> each.getKey().measure() == what.measure())
                    .mapToDouble(Map.Entry::getValue)
                    .max()
                    .orElse(1));
  }

  private static Map<MeasureAt, Double> read() {
    Map<MeasureAt, Double> shares = new LinkedHashMap<>();
    for (SharedErrorRow row : rows()) {
      shares.merge(row.what(), row.high(), Math::max);
    }
    return shares;
  }

  /** The rows of the table, as measured. */
  public static List<SharedErrorRow> rows() {
    return Shipped.text(ErrorSplit.class, TABLE)
        .lines()
        .filter(line -> !line.startsWith("#") && !line.startsWith("units,"))
        .map(SharedErrorRow::read)
        .toList();
  }
}
