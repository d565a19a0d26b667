package steadyturn.analysis.coach.drill;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.measure.MeasureValue;

/**
 * A movement within a marked drill that is no full swing: a slow turn of the pelvis, a half swing
 * of the arms, or both in one.
 *
 * @param timeS when the pelvis had turned furthest or the arms turned round, s on the recording's
 *     axis
 * @param measures what can be said of it, estimated
 */
public record Rehearsal(double timeS, List<MeasureValue> measures) {

  /** Turns round of pelvis and arms closer than this belong to one movement (our choice). */
  private static final double SAME_S = 2;

  public Rehearsal {
    measures = List.copyOf(measures);
  }

  /** The same rehearsal on a time axis that starts earlier by {@code byS}. */
  public Rehearsal later(double byS) {
    return new Rehearsal(timeS + byS, measures);
  }

  /** The value of a measure; empty where this rehearsal has none. */
  Optional<MeasureValue> measure(MeasureAt what) {
    return measures.stream()
        .filter(m -> m.measure() == what.measure() && m.at().equals(what.at()))
        .filter(MeasureValue::given)
        .findFirst();
  }

  /** Slow turns and half swings by time, those of one movement as one. */
  public static List<Rehearsal> together(List<Rehearsal> turns, List<Rehearsal> halfSwings) {
    List<Rehearsal> left = new ArrayList<>(turns);
    List<Rehearsal> all = new ArrayList<>();
    for (Rehearsal half : halfSwings) {
      Optional<Rehearsal> same =
          left.stream()
              .filter(turn -> Math.abs(turn.timeS - half.timeS) < SAME_S)
              .min(Comparator.comparingDouble(turn -> Math.abs(turn.timeS - half.timeS)));
      same.ifPresent(left::remove);
      List<MeasureValue> measures = new ArrayList<>(half.measures);
      same.ifPresent(turn -> measures.addAll(turn.measures));
      all.add(new Rehearsal(half.timeS, measures));
    }
    all.addAll(left);
    all.sort(Comparator.comparingDouble(Rehearsal::timeS));
    return List.copyOf(all);
  }
}
