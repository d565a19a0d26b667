package steadyturn.analysis.measure;

import java.util.List;

/**
 * One quantity over the time of a swing, for plots: equal-length lists; values in {@code unit},
 * spread 1 SD.
 *
 * @param id id of the measure whose time course it is, such as {@code pelvis.turn}
 * @param timeS s on the recording's common axis
 */
public record Curve(
    String id, String unit, List<Double> timeS, List<Double> value, List<Double> sd) {

  public Curve {
    timeS = List.copyOf(timeS);
    value = List.copyOf(value);
    sd = List.copyOf(sd);
    if (timeS.size() != value.size() || timeS.size() != sd.size()) {
      throw new IllegalArgumentException(
          id + ": times, values, spreads " + List.of(timeS.size(), value.size(), sd.size()));
    }
  }
}
