package steadyturn.analysis.lab.study;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * What many dropouts did, in numbers.
 *
 * @param name which of them
 * @param cases how many
 * @param values values that the swings they touch have without them
 * @param moved those that moved by more than their half-width
 * @param inSilence moved so, and neither wider, graded worse nor flagged
 * @param missed given, but the interval does not hold the value of the twin
 * @param needed values that lose samples they can need
 * @param withheld those of them that are withheld
 * @param withheldForNothing withheld though they lose none
 * @param widened median growth of the intervals of values that lose samples and are given
 * @param widenedForNothing values that lose none and whose interval grows by half or more
 * @param elsewhere values of other swings that moved by more than half of their half-width
 * @param swingsLost swings not found any more, in silence, for nothing, and invented ones
 * @param failures lessons without any result
 */
public record DropoutRow(
    String name,
    int cases,
    int values,
    int moved,
    int inSilence,
    int missed,
    int needed,
    int withheld,
    int withheldForNothing,
    double widened,
    int widenedForNothing,
    int elsewhere,
    int swingsLost,
    int lostInSilence,
    int lostForNothing,
    int swingsInvented,
    int failures) {

  private static final double GREW = 1.5;
  // our choice: swings of a lesson share clocks and the units' errors, and a short lesson moves a
  // bit
  private static final double UNCHANGED = 0.5;
  private static final double FEW = 0.01;

  static DropoutRow of(String name, List<DropoutOutcome> outcomes) {
    List<DropoutChange> changes = outcomes.stream().flatMap(o -> o.changes().stream()).toList();
    List<DropoutChange> elsewhere = outcomes.stream().flatMap(o -> o.elsewhere().stream()).toList();
    return new DropoutRow(
        name,
        outcomes.size(),
        changes.size(),
        count(changes, c -> c.moved() > 1),
        count(changes, DropoutChange::withoutAWord),
        count(changes, DropoutChange::missed),
        count(changes, DropoutChange::touched),
        count(changes, c -> c.touched() && c.with().isEmpty()),
        count(
            Stream.concat(changes.stream(), elsewhere.stream()).toList(),
            DropoutChange::withheldForNothing),
        medianWidened(changes),
        count(changes, c -> !c.touched() && c.widened() > GREW),
        count(elsewhere, c -> c.moved() > UNCHANGED),
        outcomes.stream().mapToInt(DropoutOutcome::swingsLost).sum(),
        outcomes.stream().mapToInt(DropoutOutcome::lostInSilence).sum(),
        outcomes.stream().mapToInt(DropoutOutcome::lostForNothing).sum(),
        outcomes.stream().mapToInt(DropoutOutcome::swingsInvented).sum(),
        (int) outcomes.stream().filter(o -> !o.failure().isEmpty()).count());
  }

  private static int count(List<DropoutChange> changes, Predicate<DropoutChange> which) {
    return (int) changes.stream().filter(which).count();
  }

  private static double medianWidened(List<DropoutChange> changes) {
    List<Double> grown = new ArrayList<>();
    changes.stream()
        .filter(c -> c.touched() && c.with().isPresent())
        .forEach(c -> grown.add(c.widened()));
    grown.sort(Comparator.naturalOrder());
    return grown.isEmpty() ? Double.NaN : grown.get(grown.size() / 2);
  }

  /** Percent of the values given that miss their twin. */
  public double missedPct() {
    return 100.0 * missed / Math.max(1, values);
  }

  /**
   * Whether what has to hold does: nothing moves in silence, at most 5 % miss their twin, next to
   * nothing is withheld for nothing, none is lost or invented, and every lesson has a result.
   */
  public boolean reached() {
    return inSilence == 0
        && missedPct() <= 5
        && withheldForNothing <= FEW * values
        && elsewhere <= FEW * values
        && lostInSilence + lostForNothing + swingsInvented + failures == 0;
  }
}
