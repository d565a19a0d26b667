package steadyturn.analysis.coach.drill;

import java.util.List;
import java.util.Optional;
import steadyturn.analysis.coach.teaching.Drill;
import steadyturn.analysis.coach.teaching.Drill.Band;
import steadyturn.analysis.compare.ErrorSplit;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.compare.Margins;
import steadyturn.analysis.compare.SwingGroup;

/**
 * Which drills a player gets, each with a goal to be reached from where the player stands. A drill
 * whose goal the full swings have reached is left out; where that leaves none, the first one stays
 * without a number.
 */
public final class DrillChoice {

  private DrillChoice() {}

  /** The drills that are left of some, in their order, with the goals of this player. */
  public static List<Drill> of(List<Drill> drills, SwingGroup swings) {
    List<Drill> left = drills.stream().flatMap(drill -> ahead(drill, swings).stream()).toList();
    return left.isEmpty() ? drills.stream().limit(1).map(DrillChoice::open).toList() : left;
  }

  private static Drill open(Drill drill) {
    return drill.withGoal(Band.of(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY));
  }

  /** The drill with what can be reached next; empty where its goal is reached. */
  static Optional<Drill> ahead(Drill drill, SwingGroup swings) {
    GroupSummary now = GroupSummary.of(swings, drill.judgedBy(), ErrorSplit.defaults());
    double mean = now.mean();
    if (!(mean < drill.low() || mean > drill.high())) {
      return now.count() == 0 ? Optional.of(drill) : Optional.empty();
    }
    boolean below = mean < drill.low();
    double away = below ? drill.low() - mean : mean - drill.high();
    double step = step(away, now.detectableAgainst(drill.reps()), drill.high() - drill.low());
    double unit = Margins.of(drill.judgedBy().measure()) / 2;
    Band next =
        below
            ? Band.of(Math.min(up(mean + step, unit), middle(drill)), drill.high())
            : Band.of(drill.low(), Math.max(-up(step - mean, unit), middle(drill)));
    return Optional.of(drill.withGoal(next));
  }

  /**
   * Half the way and at least what so many repetitions can show; not beyond the goal, but where
   * that would be too little to show.
   */
  private static double step(double away, double detectable, double width) {
    double half = Math.max(detectable, away / 2);
    return Math.max(Math.min(half, away), Math.min(detectable, away + width / 2));
  }

  /** To a number that can be said, away from where the player stands. */
  private static double up(double value, double unit) {
    return Math.ceil(value / unit - 1e-9) * unit;
  }

  private static double middle(Drill drill) {
    return (drill.low() + drill.high()) / 2;
  }
}
