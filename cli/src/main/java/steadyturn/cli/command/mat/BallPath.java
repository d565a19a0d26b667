package steadyturn.cli.command.mat;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Curve;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.cli.output.json.Json;

/**
 * The course of a swing as the page draws and replays it: the curves of the analysis at its own
 * instants, rounded, from before the takeaway to after the impact.
 */
final class BallPath {

  private static final double BEFORE_S = 0.3;
  private static final double AFTER_S = 0.8;
  private static final List<Measure> SHOWN =
      List.of(Measure.PELVIS_TURN, Measure.PELVIS_SLIDE, Measure.PELVIS_THRUST, Measure.WRIST_COCK);

  private BallPath() {}

  /** Times in s since impact; empty where the pelvis has no curves. */
  static Optional<ObjectNode> of(SwingResult swing) {
    double impactS = swing.timeS(SwingEvent.IMPACT);
    double fromS = swing.timeS(SwingEvent.TAKEAWAY) - BEFORE_S;
    if (curve(swing, Measure.PELVIS_TURN).isEmpty() || !(fromS < impactS)) {
      return Optional.empty();
    }
    ObjectNode node = Json.object();
    for (SwingEvent event : List.of(SwingEvent.TAKEAWAY, SwingEvent.TOP, SwingEvent.IMPACT)) {
      Json.number(node, event.word(), round(swing.timeS(event) - impactS, 1e4));
    }
    for (Measure measure : SHOWN) {
      curve(swing, measure)
          .ifPresent(curve -> course(node.putObject(measure.id()), curve, fromS, impactS));
    }
    pin(swing).ifPresent(pin -> node.set("pin", pin));
    return Optional.of(node);
  }

  private static Optional<Curve> curve(SwingResult swing, Measure measure) {
    return swing.curves().stream().filter(curve -> curve.id().equals(measure.id())).findFirst();
  }

  private static void course(ObjectNode node, Curve curve, double fromS, double impactS) {
    ArrayNode times = node.putArray("t");
    ArrayNode values = node.putArray("v");
    ArrayNode spreads = node.putArray("sd");
    for (int k = 0; k < curve.timeS().size(); k++) {
      double atS = curve.timeS().get(k);
      if (atS >= fromS && atS <= impactS + AFTER_S && Double.isFinite(curve.value().get(k))) {
        times.add(round(atS - impactS, 1e3));
        values.add(round(curve.value().get(k), 10));
        spreads.add(round(curve.sd().get(k), 10));
      }
    }
  }

  /** The point turned about on the way to the top: towards the target, towards the ball, mm. */
  private static Optional<ArrayNode> pin(SwingResult swing) {
    Optional<MeasureValue> along = given(swing, Measure.PELVIS_CENTRE_ALONG);
    Optional<MeasureValue> across = given(swing, Measure.PELVIS_CENTRE_ACROSS);
    return along.isPresent() && across.isPresent()
        ? Optional.of(
            Json.object()
                .arrayNode()
                .add(round(along.get().value(), 1))
                .add(round(across.get().value(), 1))
                .add(round(MeasureValue.Z95 * along.get().sd(), 1)))
        : Optional.empty();
  }

  private static Optional<MeasureValue> given(SwingResult swing, Measure measure) {
    return swing.measure(measure, "top").filter(MeasureValue::isBounded);
  }

  private static double round(double value, double parts) {
    return Math.rint(value * parts) / parts;
  }
}
