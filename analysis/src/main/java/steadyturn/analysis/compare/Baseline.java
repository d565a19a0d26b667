package steadyturn.analysis.compare;

import java.util.List;
import java.util.Optional;

/**
 * A player's own usual swing, against which a new swing or a new lesson is held. Progress over
 * lessons is a {@link GroupComparison} with a group a lesson.
 *
 * @param usual one entry a measure and key position with three values or more
 */
public record Baseline(List<Usual> usual) {

  public Baseline {
    usual = List.copyOf(usual);
  }

  /** Takes the usual values from a group of swings. */
  public static Baseline of(SwingGroup swings, List<MeasureAt> looks) {
    return new Baseline(
        looks.stream()
            .map(what -> usual(what, GroupSummary.of(swings, what, ErrorSplit.defaults())))
            .flatMap(Optional::stream)
            .toList());
  }

  private static Optional<Usual> usual(MeasureAt what, GroupSummary g) {
    return g.count() < GroupComparison.FEWEST_SWINGS
        ? Optional.empty()
        : Optional.of(new Usual(what, g.count(), g.mean(), Math.max(g.spread(), g.ownError())));
  }

  /** The usual value of a measure at a key position, where there is one. */
  public Optional<Usual> usual(MeasureAt what) {
    return usual.stream().filter(u -> u.what().equals(what)).findFirst();
  }
}
