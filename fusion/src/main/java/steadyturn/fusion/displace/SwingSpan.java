package steadyturn.fusion.displace;

import java.util.List;
import steadyturn.fusion.strapdown.StrapdownSamples;
import steadyturn.ingest.sample.UnitStream;

/**
 * One unit over one swing: its samples from the first anchor to the last and what is known along
 * the way.
 *
 * @param stream the unit's samples of the stretch
 * @param samples the same, made ready; {@link #LEAST_SAMPLES} at least
 * @param anchors rests, in time order; the first holds the start
 * @param stance weak bounds of place; empty unless a rest is missing
 */
public record SwingSpan(
    UnitStream stream, StrapdownSamples samples, List<Anchor> anchors, List<StanceBound> stance) {

  /** Fewer whole samples than this are no movement. */
  public static final int LEAST_SAMPLES = 3;

  public SwingSpan {
    anchors = List.copyOf(anchors);
    stance = List.copyOf(stance);
    if (samples.size() < LEAST_SAMPLES) {
      throw new IllegalArgumentException(
          "a swing needs " + LEAST_SAMPLES + " samples or more, has " + samples.size());
    }
    if (anchors.isEmpty()) {
      throw new IllegalArgumentException("a swing needs a rest to start from, has none");
    }
  }

  /** A stretch with what is known along it. */
  public static SwingSpan of(UnitStream stream, List<Anchor> anchors, List<StanceBound> stance) {
    return new SwingSpan(stream, StrapdownSamples.of(stream), anchors, stance);
  }

  /** The same swing with other knowledge along the way. */
  public SwingSpan with(List<Anchor> otherAnchors, List<StanceBound> otherStance) {
    return new SwingSpan(stream, samples, otherAnchors, otherStance);
  }
}
