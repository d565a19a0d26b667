package steadyturn.analysis.limits;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;

/**
 * Holds the values of a swing against what any body does. A value is impossible where its whole
 * interval lies outside; then all that comes from the same units is withheld. It tells nothing
 * where its interval is as long as half of the range; then it is withheld alone. The limits and
 * their sources are in docs/measures.md; they lie well outside all simulated swings.
 */
public final class SwingLimits {

  private static final List<Bound> BOUNDS =
      List.of(
          new Bound(Measure.WRIST_COCK, -70, 115, SwingReason.WRIST_BENT),
          new Bound(Measure.WRIST_COCK_MAX, -70, 115, SwingReason.WRIST_BENT),
          new Bound(Measure.WRIST_FLEXION, -100, 100, SwingReason.WRIST_BENT),
          new Bound(Measure.WRIST_RATE, 0, 3000, SwingReason.WRIST_FAST),
          new Bound(Measure.PELVIS_TURN, -130, 150, SwingReason.HIPS_TURNED),
          new Bound(Measure.PELVIS_SLIDE, -500, 500, SwingReason.HIPS_MOVED),
          new Bound(Measure.PELVIS_THRUST, -400, 400, SwingReason.HIPS_MOVED),
          new Bound(Measure.PELVIS_LIFT, -300, 300, SwingReason.HIPS_MOVED),
          new Bound(Measure.PELVIS_TILT, -50, 90, SwingReason.HIPS_TILTED),
          new Bound(Measure.PELVIS_SIDETILT, -50, 50, SwingReason.HIPS_TILTED),
          new Bound(Measure.TEMPO_BACK, 0.25, 3, SwingReason.TEMPO_TIME),
          new Bound(Measure.TEMPO_DOWN, 0.1, 0.8, SwingReason.TEMPO_TIME),
          new Bound(Measure.TEMPO_RATIO, 0.8, 10, SwingReason.TEMPO));

  /** Mean speed of mid-hip and of its turn from top to impact, m/s and deg/s. */
  private static final double FASTEST_HIPS_MPS = 2.5;

  private static final double FASTEST_TURN_DEG_PER_S = 900;

  /** When the hips turn round, from the top of the hands, s. */
  private static final double EARLIEST_HIPS_S = -0.8;

  // arms that start down by themselves are a fault of bodies, not of clocks
  private static final double LATEST_HIPS_S = 0.12;

  /** Hips that turn less have no moment at which they turn round, deg. */
  private static final double LEAST_TURN_DEG = -10;

  /** No full swing is made with a wrist that hardly moves from takeaway to impact, deg. */
  private static final double LEAST_WRIST_DEG = 12;

  /** Of them no arm is needed. */
  private static final Set<String> EVENTS_OF_BLOW =
      Set.of(SwingEvent.ADDRESS.word(), SwingEvent.IMPACT.word());

  private final int swing;
  private final List<MeasureValue> values;
  private final List<Reason> found = new ArrayList<>();

  private SwingLimits(int swing, List<MeasureValue> values) {
    this.swing = swing;
    this.values = values;
  }

  /** What a measure can be, at any key position, in its unit. */
  private record Bound(Measure measure, double least, double most, SwingReason why) {

    boolean isBroken(MeasureValue value) {
      return value.measure() == measure
          && value.given()
          && (value.high() < least || value.low() > most);
    }

    /** Whether a value is known so little that half of all that bodies do may be it. */
    boolean isBlurred(MeasureValue value) {
      return value.measure() == measure
          && value.isBounded()
          && value.high() - value.low() > (most - least) / 2;
    }
  }

  /** Why a value was withheld by this, if it was. */
  public static Optional<Reason> whyOf(MeasureValue value) {
    return Optional.of(value.why())
        .filter(why -> why.code() instanceof SwingReason || why.code() == MountReason.SAME_PLACE);
  }

  /** The values of a swing, those withheld that come from what no body does. */
  public static List<MeasureValue> kept(
      int swing, List<MeasureValue> values, List<EventTime> events) {
    SwingLimits limits = new SwingLimits(swing, values);
    limits.look(events);
    boolean isSharp = values.stream().noneMatch(SwingLimits::isBlurred);
    return limits.found.isEmpty() && isSharp
        ? values
        : values.stream().map(limits::kept).map(SwingLimits::told).toList();
  }

  private static boolean isBlurred(MeasureValue value) {
    return BOUNDS.stream().anyMatch(bound -> bound.isBlurred(value));
  }

  /** A value that tells nothing is withheld, itself alone. */
  private static MeasureValue told(MeasureValue value) {
    return isBlurred(value)
        ? MeasureValue.withheld(value.measure(), value.at(), MeasureReason.TOO_UNSURE)
        : value;
  }

  private void look(List<EventTime> events) {
    for (Bound bound : BOUNDS) {
      values.stream()
          .filter(bound::isBroken)
          .findFirst()
          .ifPresent(v -> say(bound.why, v.value(), bound.least, bound.most));
    }
    ofSpeed(Measure.PELVIS_SLIDE, FASTEST_HIPS_MPS, 0.001);
    ofSpeed(Measure.PELVIS_THRUST, FASTEST_HIPS_MPS, 0.001);
    ofSpeed(Measure.PELVIS_LIFT, FASTEST_HIPS_MPS, 0.001);
    ofSpeed(Measure.PELVIS_TURN, FASTEST_TURN_DEG_PER_S, 1);
    ofOrder(events);
    ofOnePlace();
  }

  private void say(SwingReason why, double value, double least, double most) {
    found.add(Reason.of(why, swing, value, least, most));
  }

  private Optional<MeasureValue> bounded(Measure measure, SwingEvent at) {
    return values.stream()
        .filter(v -> v.measure() == measure && v.at().equals(at.word()) && v.isBounded())
        .findFirst();
  }

  /** From top to impact, as slow as the intervals allow. */
  private void ofSpeed(Measure measure, double fastest, double unit) {
    Optional<MeasureValue> top = bounded(measure, SwingEvent.TOP);
    Optional<MeasureValue> impact = bounded(measure, SwingEvent.IMPACT);
    Optional<MeasureValue> down =
        values.stream().filter(v -> v.measure() == Measure.TEMPO_DOWN && v.isBounded()).findFirst();
    if (top.isEmpty() || impact.isEmpty() || down.isEmpty()) {
      return;
    }
    double way = Math.abs(impact.get().value() - top.get().value());
    double doubt = MeasureValue.Z95 * Math.hypot(top.get().sd(), impact.get().sd());
    if (unit * (way - doubt) > fastest * down.get().high()) {
      SwingReason why =
          measure == Measure.PELVIS_TURN ? SwingReason.HIPS_TURN_FAST : SwingReason.HIPS_FAST;
      say(why, unit * way / down.get().value(), 0, fastest);
    }
  }

  private void ofOrder(List<EventTime> events) {
    Optional<EventTime> hips = EventTime.of(SwingEvent.PELVIS_TURNAROUND, events);
    Optional<EventTime> hands = EventTime.of(SwingEvent.TOP, events);
    boolean turned =
        bounded(Measure.PELVIS_TURN, SwingEvent.PELVIS_TURNAROUND)
            .filter(turn -> turn.high() < LEAST_TURN_DEG)
            .isPresent();
    if (turned && hips.isPresent() && hands.isPresent()) {
      double lagS = hips.get().timeS() - hands.get().timeS();
      double doubtS = MeasureValue.Z95 * Math.hypot(hips.get().sdS(), hands.get().sdS());
      if (lagS - doubtS > LATEST_HIPS_S || lagS + doubtS < EARLIEST_HIPS_S) {
        say(
            SwingReason.HIPS_OUT_OF_TIME,
            1000 * lagS,
            1000 * EARLIEST_HIPS_S,
            1000 * LATEST_HIPS_S);
      }
    }
  }

  private void ofOnePlace() {
    List<MeasureValue> cocks =
        Stream.of(SwingEvent.TAKEAWAY, SwingEvent.TOP, SwingEvent.IMPACT)
            .flatMap(at -> bounded(Measure.WRIST_COCK, at).stream())
            .toList();
    double most = cocks.stream().mapToDouble(MeasureValue::value).max().orElse(0);
    double least = cocks.stream().mapToDouble(MeasureValue::value).min().orElse(0);
    double sd = cocks.stream().mapToDouble(MeasureValue::sd).max().orElse(0);
    if (cocks.size() == 3 && most - least + MeasureValue.Z95 * sd < LEAST_WRIST_DEG) {
      found.add(Reason.of(MountReason.SAME_PLACE, BodyPoint.LEAD_FOREARM, BodyPoint.LEAD_HAND));
    }
  }

  private MeasureValue kept(MeasureValue value) {
    return found.stream()
        .filter(why -> value.given() && needs(value, why))
        .findFirst()
        .map(why -> MeasureValue.withheld(value.measure(), value.at(), why))
        .orElse(value);
  }

  /** Whether a measure comes from the same units. */
  private static boolean needs(MeasureValue value, Reason why) {
    String id = value.measure().id();
    boolean isOfBlow = EVENTS_OF_BLOW.contains(value.at());
    if (why.code() == MountReason.SAME_PLACE && !(id.startsWith("pelvis.") && isOfBlow)) {
      return true; // when the arm was level, at the top: of an arm that no unit sees
    }
    boolean isOfHips = id.startsWith("pelvis.") || id.equals(Measure.ORDER_PELVIS.id());
    boolean isOfWrist = id.startsWith("wrist.") || id.equals(Measure.ORDER_HAND.id());
    if (why.code() == SwingReason.TEMPO || why.code() == SwingReason.TEMPO_TIME) {
      return true;
    }
    boolean saysWrist =
        why.code() == SwingReason.WRIST_BENT || why.code() == SwingReason.WRIST_FAST;
    return saysWrist ? isOfWrist : isOfHips;
  }
}
