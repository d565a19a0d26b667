package steadyturn.analysis.coach;

import java.util.List;
import java.util.Optional;

/**
 * What to tell the player: one thing, at most two more, and what is already good.
 *
 * @param swings full swings it rests on
 * @param asks names of the questions about set-up
 * @param priority the one thing; empty when nothing is beyond doubt
 * @param further at most two more
 * @param good what is already good
 * @param open what looks like a finding and is not sure yet
 */
public record Advice(
    int swings,
    List<String> asks,
    Optional<RuleFinding> priority,
    List<RuleFinding> further,
    List<RuleFinding> good,
    List<RuleFinding> open) {

  public Advice {
    asks = List.copyOf(asks);
    further = List.copyOf(further);
    good = List.copyOf(good);
    open = List.copyOf(open);
    if (further.size() > 2) {
      throw new IllegalArgumentException("at most two further points, got " + further.size());
    }
  }
}
