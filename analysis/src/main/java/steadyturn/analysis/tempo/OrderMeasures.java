package steadyturn.analysis.tempo;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.fusion.attitude.CentredParabola;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.SkinSlip;
import steadyturn.fusion.wear.wrist.UnitMount;
import steadyturn.fusion.wear.wrist.WristAlignment;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Gaps;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * When pelvis, thorax, lead arm and lead hand turn fastest, in ms before impact (positive before).
 * Rates are sizes of the gyroscope's rate below about 15 Hz for the trunk, and across the bone for
 * arm and hand, so that the roll of the forearm does not count.
 */
public record OrderMeasures(
    Recording recording, RestBiases biases, SkinSlip slip, EventTime top, EventTime impact) {

  private static final double TRUNK_HALF_WIDTH_S = 0.03;
  // our choice: what a gap may hide of a peak, near it and anywhere
  private static final double NEAR_S = 0.06;
  private static final double NEAR_GAP_S = 0.022;
  private static final double LONGEST_GAP_S = 0.05;
  // what wobble does to a peak's height, and what soft skin that rings does to two of them, 14 %
  // each with 95 %: our assumptions
  private static final double TRUNK_PART = 0.1;
  private static final double TRUNK_RIVAL_PART = 0.28;

  private static final int FEWEST = 8;

  /** The peak times of the units present; the arm's also as {@link Measure#ARM_PEAK}. */
  public static List<MeasureValue> of(
      Recording recording,
      RestBiases biases,
      Swing swing,
      WristAlignment alignment,
      double handClockSdS) {
    Optional<EventTime> top = swing.event(SwingEvent.TOP);
    Optional<EventTime> impact = swing.event(SwingEvent.IMPACT);
    if (top.isEmpty() || impact.isEmpty()) {
      return List.of(MeasureValue.withheld(Measure.ARM_PEAK, "", MeasureReason.NO_TOP_OR_IMPACT));
    }
    List<MeasureValue> out = new ArrayList<>();
    OrderMeasures order =
        new OrderMeasures(recording, biases, slip(swing), top.get(), impact.get());
    order.trunk(BodyPoint.PELVIS, Measure.ORDER_PELVIS).ifPresent(out::add);
    order.trunk(BodyPoint.THORAX, Measure.ORDER_THORAX).ifPresent(out::add);
    Optional<MeasureValue> arm =
        order.limb(BodyPoint.LEAD_FOREARM, alignment.forearm(), Measure.ORDER_ARM);
    arm.ifPresent(out::add);
    order
        .limb(BodyPoint.LEAD_HAND, alignment.hand(), Measure.ORDER_HAND)
        .map(hand -> hand.widened(1000 * handClockSdS))
        .ifPresent(out::add);
    out.add(
        arm.map(value -> value.as(Measure.ARM_PEAK))
            .orElse(MeasureValue.withheld(Measure.ARM_PEAK, "", MeasureReason.NEEDS_FOREARM)));
    return List.copyOf(out);
  }

  /** A takeaway that was not found lies well before the top, where the order does not look. */
  private static SkinSlip slip(Swing swing) {
    double topS = swing.timeS(SwingEvent.TOP).orElseThrow();
    double impactS = swing.timeS(SwingEvent.IMPACT).orElseThrow();
    double takeawayS = swing.timeS(SwingEvent.TAKEAWAY).orElse(topS - 1);
    return new SkinSlip(takeawayS, topS, impactS, impactS + 1);
  }

  private Optional<MeasureValue> trunk(BodyPoint point, Measure measure) {
    // the trunk may be fastest after impact
    return stretch(point, impact.shownS() + 0.05)
        .map(s -> value(measure, s, trunkPeak(Seen.of(s), biases.radPerS(point))));
  }

  private Optional<MeasureValue> limb(BodyPoint point, UnitMount mount, Measure measure) {
    // the blow rings in arm and hand: nothing after it counts
    return stretch(point, impact.shownS())
        .map(s -> value(measure, s, LimbPeak.of(Seen.of(s), biases.radPerS(point), mount, slip)));
  }

  private Optional<UnitStream> stretch(BodyPoint point, double toS) {
    return recording
        .unit(point)
        .map(s -> s.between(top.timeS() - 0.1, toS))
        .filter(s -> Seen.of(s).size() >= FEWEST);
  }

  /** A peak that may lie where nothing was seen is none. */
  private MeasureValue value(Measure measure, UnitStream stretch, PeakTime peak) {
    Gaps gaps = Gaps.of(stretch, Gaps.Need.RATE);
    double fromS = stretch.timeS(0);
    double toS = stretch.timeS(stretch.size() - 1);
    double nearS =
        gaps.longestS(Math.max(fromS, peak.timeS() - NEAR_S), Math.min(toS, peak.timeS() + NEAR_S));
    double allS = Math.max(gaps.longestS(fromS, toS), impact.shownS() - toS);
    if (nearS > NEAR_GAP_S || allS > LONGEST_GAP_S) {
      return MeasureValue.withheld(measure, "", MeasureReason.PEAK_GAP);
    }
    return MeasureValue.of(
        measure,
        "",
        1000 * (impact.shownS() - peak.timeS()),
        1000 * Math.hypot(peak.sdS(), impact.sdS()),
        impact.grade(),
        impact.why());
  }

  private static PeakTime trunkPeak(UnitStream stretch, Vector3 bias) {
    double[] time = stretch.timeColumnS();
    double[] rate =
        IntStream.range(0, time.length)
            .mapToDouble(i -> LimbPeak.rate(stretch, i).minus(bias).norm())
            .toArray();
    double[] smooth = CentredParabola.of(time, rate, TRUNK_HALF_WIDTH_S);
    return PeakTime.of(time, smooth, TRUNK_PART).beside(time, smooth, TRUNK_RIVAL_PART);
  }
}
