package steadyturn.fusion.displace;

import java.util.List;
import steadyturn.ingest.sample.UnitStream;

/**
 * One unit over one swing: its samples from the first anchor to the last and what is known along
 * the way.
 *
 * @param samples the unit's samples of the stretch, 3 at least
 * @param anchors rests, in time order; the first holds the start
 * @param stance weak bounds of place; empty unless a rest is missing
 */
public record SwingSpan(UnitStream samples, List<Anchor> anchors, List<StanceBound> stance) {

  public SwingSpan {
    anchors = List.copyOf(anchors);
    stance = List.copyOf(stance);
    if (samples.size() < 3) {
      throw new IllegalArgumentException("a swing needs 3 samples or more, has " + samples.size());
    }
    if (anchors.isEmpty()) {
      throw new IllegalArgumentException("a swing needs a rest to start from, has none");
    }
  }

  /** The same swing with other knowledge along the way. */
  public SwingSpan with(List<Anchor> otherAnchors, List<StanceBound> otherStance) {
    return new SwingSpan(samples, otherAnchors, otherStance);
  }
}
