package steadyturn.fusion.displace;

import java.util.List;
import steadyturn.fusion.strapdown.Bridge;
import steadyturn.fusion.strapdown.StrapdownSamples;
import steadyturn.ingest.sample.UnitStream;

/**
 * One unit over one swing: its samples from the first anchor to the last and what is known along
 * the way. Small to keep: spans of one stream share its samples.
 *
 * @param stream the unit's samples of the stretch, and maybe some around it
 * @param from the first of them that belongs to the span
 * @param to behind the last one
 * @param bridges over the gaps of the span
 * @param anchors rests, in time order; the first holds the start
 * @param stance weak bounds of place; empty unless a rest is missing
 */
public record SwingSpan(
    UnitStream stream,
    int from,
    int to,
    List<Bridge> bridges,
    List<Anchor> anchors,
    List<StanceBound> stance) {

  /** Fewer whole samples than this are no movement. */
  public static final int LEAST_SAMPLES = 3;

  public SwingSpan {
    bridges = List.copyOf(bridges);
    anchors = List.copyOf(anchors);
    stance = List.copyOf(stance);
    if (anchors.isEmpty()) {
      throw new IllegalArgumentException("a swing needs a rest to start from, has none");
    }
  }

  /** A whole stretch with what is known along it. */
  public static SwingSpan of(UnitStream stream, List<Anchor> anchors, List<StanceBound> stance) {
    return of(stream, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, anchors, stance);
  }

  /** The samples with fromS &lt;= time &lt; toS with what is known along them. */
  public static SwingSpan of(
      UnitStream stream, double fromS, double toS, List<Anchor> anchors, List<StanceBound> stance) {
    StrapdownSamples samples = StrapdownSamples.of(stream.between(fromS, toS));
    if (samples.size() < LEAST_SAMPLES) {
      throw new IllegalArgumentException(
          "a swing needs " + LEAST_SAMPLES + " samples or more, has " + samples.size());
    }
    return new SwingSpan(
        stream, stream.indexAt(fromS), stream.indexAt(toS), samples.bridges(), anchors, stance);
  }

  /** The samples made ready for a pass. */
  StrapdownSamples samples() {
    return StrapdownSamples.of(stream, from, to, bridges);
  }

  /** The same swing with other knowledge along the way. */
  public SwingSpan with(List<Anchor> otherAnchors, List<StanceBound> otherStance) {
    return new SwingSpan(stream, from, to, bridges, otherAnchors, otherStance);
  }
}
