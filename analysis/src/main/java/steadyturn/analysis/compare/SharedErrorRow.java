package steadyturn.analysis.compare;

import java.util.List;
import steadyturn.analysis.measure.Measure;

/**
 * How much of the error variance of a measure the swings of a lesson share, as measured: the
 * intraclass correlation of the errors.
 *
 * @param units grade of the units, {@code calibrated} or {@code raw}
 * @param lessons number of lessons
 * @param swings number of swings in all
 * @param share estimate, 0 at least
 * @param low lower end of its 95 % interval
 * @param high upper end
 * @param betweenSd standard deviation of the part that is the same in a lesson, in the measure's
 *     unit
 * @param withinSd standard deviation of each swing's own part
 */
public record SharedErrorRow(
    String units,
    MeasureAt what,
    int lessons,
    int swings,
    double share,
    double low,
    double high,
    double betweenSd,
    double withinSd) {

  static SharedErrorRow read(String line) {
    List<String> cells = List.of(line.split(",", -1));
    Measure measure =
        Measure.ofId(cells.get(1))
            .orElseThrow(() -> new IllegalArgumentException("no measure " + cells.get(1)));
    return new SharedErrorRow(
        cells.get(0),
        new MeasureAt(measure, cells.get(2)),
        Integer.parseInt(cells.get(3)),
        Integer.parseInt(cells.get(4)),
        Double.parseDouble(cells.get(5)),
        Double.parseDouble(cells.get(6)),
        Double.parseDouble(cells.get(7)),
        Double.parseDouble(cells.get(8)),
        Double.parseDouble(cells.get(9)));
  }
}
