package steadyturn.analysis.coach;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import steadyturn.analysis.coach.teaching.Limit;
import steadyturn.analysis.coach.teaching.Need;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.compare.ErrorSplit;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.compare.SwingGroup;
import steadyturn.analysis.compare.TypicalError;

/** Holds conditions against a group of swings of one lesson. */
final class Witness {

  private static final int FEWEST = 3;
  private static final int MOST_MORE = 40;

  private final SwingGroup swings;
  private final Teaching teaching;
  private final Map<Need, Evidence> heard = new HashMap<>();

  Witness(SwingGroup swings, Teaching teaching) {
    this.swings = swings;
    this.teaching = teaching;
  }

  List<Evidence> of(List<Need> needs) {
    return needs.stream().map(need -> heard.computeIfAbsent(need, this::of)).toList();
  }

  /** All hold, one surely does not, or not sure yet. */
  static Certainty together(List<Evidence> evidence) {
    if (evidence.stream().anyMatch(e -> e.holds() == Certainty.NO)) {
      return Certainty.NO;
    }
    return evidence.stream().allMatch(e -> e.holds() == Certainty.YES)
        ? Certainty.YES
        : Certainty.NOT_SURE_YET;
  }

  private Evidence of(Need need) {
    GroupSummary group = GroupSummary.of(swings, need.what(), ErrorSplit.defaults());
    Limit limit = teaching.limit(need.limit());
    if (group.count() < FEWEST) {
      return new Evidence(
          need,
          limit,
          need.ofSpread() ? group.spread() : group.mean(),
          Double.NEGATIVE_INFINITY,
          Double.POSITIVE_INFINITY,
          Certainty.NOT_SURE_YET,
          OptionalInt.of(FEWEST - group.count()));
    }
    return need.ofSpread() ? spread(need, limit, group) : mean(need, limit, group);
  }

  private static Evidence mean(Need need, Limit limit, GroupSummary group) {
    double half = group.halfWidthOfMean();
    double away = Math.abs(group.mean() - limit.value());
    OptionalInt more = half > away ? moreSwings(group, away) : OptionalInt.empty();
    double low = group.mean() - half;
    double high = group.mean() + half;
    return new Evidence(need, limit, group.mean(), low, high, holds(need, limit, low, high), more);
  }

  /** Fewest more swings that make the interval narrow enough, by halving; empty when too many. */
  private static OptionalInt moreSwings(GroupSummary group, double away) {
    int low = 0;
    int high = MOST_MORE;
    if (group.withCount(group.count() + high).halfWidthOfMean() > away) {
      return OptionalInt.empty();
    }
    while (high - low > 1) {
      int middle = (low + high) / 2;
      boolean enough = group.withCount(group.count() + middle).halfWidthOfMean() <= away;
      low = enough ? low : middle;
      high = enough ? middle : high;
    }
    return OptionalInt.of(high);
  }

  private static Evidence spread(Need need, Limit limit, GroupSummary group) {
    double[] ends = TypicalError.interval(group.spread(), group.count() - 1);
    OptionalInt more = OptionalInt.empty();
    Certainty holds = holds(need, limit, ends[0], ends[1]);
    for (int n = 1; n <= MOST_MORE && holds == Certainty.NOT_SURE_YET && more.isEmpty(); n++) {
      double[] then = TypicalError.interval(group.spread(), group.count() + n - 1);
      if (holds(need, limit, then[0], then[1]) != Certainty.NOT_SURE_YET) {
        more = OptionalInt.of(n);
      }
    }
    return new Evidence(need, limit, group.spread(), ends[0], ends[1], holds, more);
  }

  private static Certainty holds(Need need, Limit limit, double low, double high) {
    boolean allAbove = low > limit.value();
    boolean allBelow = high < limit.value();
    if (!allAbove && !allBelow) {
      return Certainty.NOT_SURE_YET;
    }
    return allAbove == need.above() ? Certainty.YES : Certainty.NO;
  }
}
