package steadyturn.analysis.tempo;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.fusion.attitude.CentredMean;
import steadyturn.fusion.attitude.CentredParabola;
import steadyturn.fusion.attitude.PeakRepair;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.WristAlignment;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;
import steadyturn.ingest.words.Words;

/**
 * When pelvis, thorax, lead arm and lead hand turn fastest, in ms before impact (positive before).
 * Rates are sizes of the gyroscope's rate below about 15 Hz for the trunk, and across the bone for
 * arm and hand, so that the roll of the forearm does not count.
 */
public final class OrderMeasures {

  private static final double TRUNK_HALF_WIDTH_S = 0.03;
  private static final double ARM_HALF_WIDTH_S = 0.008;
  // what skin and wobble do to a peak's height: our assumption
  private static final double TRUNK_PART = 0.1;
  private static final double ARM_PART = 0.01;

  private final Recording recording;
  private final RestBiases biases;
  private final EventTime top;
  private final EventTime impact;

  private OrderMeasures(Recording recording, RestBiases biases, EventTime top, EventTime impact) {
    this.recording = recording;
    this.biases = biases;
    this.top = top;
    this.impact = impact;
  }

  /** The peak times of the units present; the arm's also as {@link Measure#ARM_PEAK}. */
  public static List<MeasureValue> of(
      Recording recording, RestBiases biases, Swing swing, WristAlignment alignment) {
    Optional<EventTime> top = swing.event(SwingEvent.TOP);
    Optional<EventTime> impact = swing.event(SwingEvent.IMPACT);
    if (top.isEmpty() || impact.isEmpty()) {
      return List.of(
          MeasureValue.withheld(Measure.ARM_PEAK, "", Words.say("why.no-top-or-impact")));
    }
    List<MeasureValue> out = new ArrayList<>();
    OrderMeasures order = new OrderMeasures(recording, biases, top.get(), impact.get());
    Vector3 forearm = alignment.qForearmUnitForearm().rotate(Vector3.X);
    Vector3 hand = alignment.qHandUnitHand().rotate(Vector3.X);
    order.trunk(BodyPoint.PELVIS, Measure.ORDER_PELVIS).ifPresent(out::add);
    order.trunk(BodyPoint.THORAX, Measure.ORDER_THORAX).ifPresent(out::add);
    order.limb(BodyPoint.LEAD_FOREARM, forearm, Measure.ORDER_ARM).ifPresent(out::add);
    order.limb(BodyPoint.LEAD_HAND, hand, Measure.ORDER_HAND).ifPresent(out::add);
    out.add(
        order
            .limb(BodyPoint.LEAD_FOREARM, forearm, Measure.ARM_PEAK)
            .orElse(MeasureValue.withheld(Measure.ARM_PEAK, "", Words.say("why.needs-forearm"))));
    return List.copyOf(out);
  }

  private Optional<MeasureValue> trunk(BodyPoint point, Measure measure) {
    // the trunk may be fastest after impact
    return value(measure, point, Vector3.ZERO, impact.timeS() + 0.05, TRUNK_HALF_WIDTH_S);
  }

  private Optional<MeasureValue> limb(BodyPoint point, Vector3 longAxisUnit, Measure measure) {
    // the blow rings in arm and hand: nothing after it counts
    return value(measure, point, longAxisUnit, impact.timeS(), ARM_HALF_WIDTH_S);
  }

  private Optional<MeasureValue> value(
      Measure measure, BodyPoint point, Vector3 longAxisUnit, double toS, double halfWidthS) {
    return recording
        .unit(point)
        .map(s -> s.between(top.timeS() - 0.1, toS))
        .filter(s -> s.size() >= 8)
        .map(s -> peak(s, biases.radPerS(point), longAxisUnit, halfWidthS))
        .map(
            p ->
                MeasureValue.of(
                    measure,
                    "",
                    1000 * (impact.timeS() - p.timeS()),
                    1000 * Math.hypot(p.sdS(), impact.sdS()),
                    impact.grade(),
                    impact.why()));
  }

  private static PeakTime peak(
      UnitStream cut, Vector3 bias, Vector3 longAxisUnit, double halfWidthS) {
    PeakRepair.Repaired repaired = PeakRepair.repair(cut);
    UnitStream stretch = repaired.stream();
    double[] rate = new double[stretch.size()];
    for (int i = 0; i < rate.length; i++) {
      rate[i] = across(stretch, i, bias, longAxisUnit);
    }
    double[] time = stretch.timeColumnS();
    double part = halfWidthS == TRUNK_HALF_WIDTH_S ? TRUNK_PART : ARM_PART;
    double[] smooth =
        halfWidthS == TRUNK_HALF_WIDTH_S
            ? CentredParabola.of(time, rate, halfWidthS)
            : CentredMean.of(time, rate, halfWidthS);
    PeakTime peak = PeakTime.of(time, smooth, part);
    double cutS = repaired.cuts().stream().mapToDouble(c -> c.toS() - c.fromS()).max().orElse(0);
    return new PeakTime(peak.timeS(), Math.hypot(peak.sdS(), cutS / 3), peak.value());
  }

  private static double across(UnitStream stream, int i, Vector3 bias, Vector3 longAxisUnit) {
    Vector3 rate =
        new Vector3(stream.gyroRadPerS(0, i), stream.gyroRadPerS(1, i), stream.gyroRadPerS(2, i))
            .minus(bias);
    double size = rate.minus(longAxisUnit.times(rate.dot(longAxisUnit))).norm();
    return Double.isNaN(size) ? 0 : size;
  }
}
