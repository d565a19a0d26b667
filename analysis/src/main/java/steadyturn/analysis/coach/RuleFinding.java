package steadyturn.analysis.coach;

import java.util.List;
import java.util.OptionalInt;
import steadyturn.analysis.coach.drill.DrillChoice;
import steadyturn.analysis.coach.teaching.Consequence;
import steadyturn.analysis.coach.teaching.Drill;
import steadyturn.analysis.coach.teaching.Rule;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.compare.SwingGroup;
import steadyturn.ingest.reason.Worded;

/**
 * A rule held against a lesson.
 *
 * @param evidence one entry a condition
 * @param chain what it tends to cause, in order, each with what the units saw of it
 * @param moreSwings swings that would probably settle it; empty when it is settled or when more
 *     swings cannot
 */
public record RuleFinding(
    Rule rule, Certainty found, List<Evidence> evidence, List<Link> chain, OptionalInt moreSwings) {

  public RuleFinding {
    evidence = List.copyOf(evidence);
    chain = List.copyOf(chain);
  }

  /** The drills that are still ahead of this player, with the goals to be reached next. */
  public List<Drill> drills(Teaching teaching, SwingGroup swings) {
    return DrillChoice.of(rule.drills().stream().map(teaching::drill).toList(), swings);
  }

  /**
   * One step of the chain.
   *
   * @param kind how the units know of it
   * @param evidence what they saw; empty for something to look for
   */
  public record Link(Consequence consequence, Seen kind, List<Evidence> evidence) {

    public Link {
      evidence = List.copyOf(evidence);
    }
  }

  /** What the units know of a consequence. */
  public enum Seen implements Worded {
    /** They saw it. */
    SEEN,
    /** They saw that it does not happen. */
    NOT_SEEN,
    /** They cannot tell yet. */
    NOT_SURE_YET,
    /** They saw what it follows from. */
    TENDENCY,
    /** They cannot see it: look for it in a picture. */
    LOOK;
  }
}
