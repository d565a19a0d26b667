package steadyturn.analysis.limits;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import steadyturn.analysis.swing.Swing;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * Whether a unit moved on the body between two swings: a player stands to the ball alike, so the
 * direction up at address stays where it was in the unit. Remembers the swings of one recording,
 * which may come in pieces; a wear step begins anew.
 */
public final class SlipWatch {

  /**
   * Bounds half way between a player who stands a little otherwise (up to 6 deg in simulated
   * lessons) and slips that matter; twice that where a single address on one side says it (our
   * choice), rad.
   */
  private static final double LEAST_RAD = Math.toRadians(11);

  private static final double OF_ONE = 1.7;

  /** So much more than the unit beside it: another club moves forearm and hand together, rad. */
  private static final double ALONE_RAD = Math.toRadians(7);

  /** Of one address in two pieces, s. */
  private static final double SAME_S = 0.5;

  private final Map<BodyPoint, NavigableMap<Double, Vector3>> ups = new EnumMap<>(BodyPoint.class);
  private final NavigableSet<Double> stepsS = new TreeSet<>();

  /** What moved, as far as was seen: asked for at every swing, so looked for once. */
  private List<Slip> slips = List.of();

  /**
   * A unit moved between two swings.
   *
   * @param lastBeforeS takeaway of the last swing before it, s
   * @param firstAfterS takeaway of the first one after it, s
   * @param angleRad by so much at least
   */
  public record Slip(BodyPoint point, double lastBeforeS, double firstAfterS, double angleRad) {

    /** The same in figures. */
    public Reason reason() {
      return Reason.of(
          MountReason.SLIPPED, point, Math.toDegrees(angleRad), lastBeforeS, firstAfterS);
    }
  }

  /** Takes the swings of a recording, or of a further piece of it. */
  public void see(Recording recording, List<Swing> swings) {
    recording.marks().stream()
        .filter(m -> MarkWord.of(m.trialType()).filter(MarkWord::isStep).isPresent())
        .mapToDouble(Mark::onsetS)
        .forEach(stepsS::add);
    for (Stroke stroke : Stroke.all(swings)) {
      for (UnitStream unit : recording.units()) {
        StrokeSeen.of(unit, stroke).ifPresent(its -> add(unit.point(), stroke.takeawayS(), its));
      }
    }
    slips = found();
  }

  private void add(BodyPoint point, double atS, StrokeSeen seen) {
    NavigableMap<Double, Vector3> known = ups.computeIfAbsent(point, p -> new TreeMap<>());
    known.subMap(atS - SAME_S, atS + SAME_S).clear();
    known.put(atS, seen.up());
  }

  /** What moved, the earliest of each unit and wearing. */
  public List<Slip> slips() {
    return slips;
  }

  private List<Slip> found() {
    List<Slip> out = new ArrayList<>();
    for (BodyPoint point : ups.keySet()) {
      wearings(point).forEach(wearing -> slip(point, wearing).ifPresent(out::add));
    }
    return List.copyOf(out);
  }

  /** The units that had moved by a swing and were not set up by wear steps since. */
  public Set<BodyPoint> movedBy(double atS) {
    Set<BodyPoint> out = new HashSet<>();
    for (Slip slip : slips) {
      boolean isSetAnew = stepsS.stream().anyMatch(s -> s > slip.lastBeforeS && s < atS);
      if (slip.firstAfterS <= atS + SAME_S && !isSetAnew) {
        out.add(slip.point);
      }
    }
    return out;
  }

  /** Takeaways between which nobody did a wear step. */
  private List<List<Double>> wearings(BodyPoint point) {
    Map<Double, List<Double>> out = new TreeMap<>();
    for (double atS : of(point).keySet()) {
      double sinceS = Optional.ofNullable(stepsS.lower(atS)).orElse(Double.NEGATIVE_INFINITY);
      out.computeIfAbsent(sinceS, s -> new ArrayList<>()).add(atS);
    }
    return List.copyOf(out.values());
  }

  private NavigableMap<Double, Vector3> of(BodyPoint point) {
    return ups.getOrDefault(point, new TreeMap<>());
  }

  private Optional<Slip> slip(BodyPoint point, List<Double> wearing) {
    double[] angles = angles(point, wearing);
    List<double[]> others = beside(point).stream().map(o -> angles(o, wearing)).toList();
    return IntStream.range(1, wearing.size())
        .filter(k -> others.stream().allMatch(o -> angles[k] - o[k] > ALONE_RAD))
        .filter(k -> isSlip(point, wearing, k, angles[k]))
        .mapToObj(k -> new Slip(point, wearing.get(k - 1), wearing.get(k), angles[k]))
        .findFirst();
  }

  /** Whether the unit sat elsewhere after the first {@code k} swings, by such an angle, rad. */
  private boolean isSlip(BodyPoint point, List<Double> wearing, int k, double angle) {
    int fewer = Math.min(k, wearing.size() - k);
    return angle > LEAST_RAD * (fewer == 1 ? OF_ONE : 1)
        && spread(point, wearing.subList(0, k)) < angle / 2
        && spread(point, wearing.subList(k, wearing.size())) < angle / 2;
  }

  private static List<BodyPoint> beside(BodyPoint point) {
    return switch (point) {
      case LEAD_FOREARM -> List.of(BodyPoint.LEAD_HAND);
      case LEAD_HAND -> List.of(BodyPoint.LEAD_FOREARM);
      default -> List.of();
    };
  }

  /**
   * Angles between the middle directions of the first k swings and of the others, rad; 0 where one
   * was not seen. Each half grows swing by swing, so that a day of swings takes no day.
   */
  private double[] angles(BodyPoint point, List<Double> wearing) {
    List<Double> backwards = new ArrayList<>(wearing);
    Collections.reverse(backwards);
    List<Optional<Vector3>> before = middles(point, wearing);
    List<Optional<Vector3>> after = middles(point, backwards);
    double[] out = new double[wearing.size()];
    for (int k = 1; k < out.length; k++) {
      Optional<Vector3> was = before.get(k - 1);
      Optional<Vector3> is = after.get(out.length - k - 1);
      out[k] = was.isPresent() && is.isPresent() ? angle(was.get(), is.get()) : 0;
    }
    return out;
  }

  /** The middle direction of the first swing, of the first two and so on. */
  private List<Optional<Vector3>> middles(BodyPoint point, List<Double> group) {
    List<RunningMedian> axes = Stream.generate(RunningMedian::new).limit(3).toList();
    List<Optional<Vector3>> out = new ArrayList<>();
    for (double atS : group) {
      Optional<Vector3> up = Optional.ofNullable(of(point).get(atS));
      up.ifPresent(v -> IntStream.range(0, 3).forEach(axis -> axes.get(axis).add(v.get(axis))));
      out.add(
          axes.get(0).isEmpty()
              ? Optional.empty()
              : Optional.of(Vector3.each(axis -> axes.get(axis).value()).unit()));
    }
    return out;
  }

  private double spread(BodyPoint point, List<Double> group) {
    List<Optional<Vector3>> middles = middles(point, group);
    Vector3 middle = middles.get(middles.size() - 1).orElse(Vector3.Z);
    return seen(point, group).stream().mapToDouble(up -> angle(up, middle)).max().orElse(0);
  }

  private List<Vector3> seen(BodyPoint point, List<Double> group) {
    return group.stream().flatMap(t -> Optional.ofNullable(of(point).get(t)).stream()).toList();
  }

  private static double angle(Vector3 a, Vector3 b) {
    return Math.acos(Math.max(-1, Math.min(1, a.dot(b))));
  }
}
