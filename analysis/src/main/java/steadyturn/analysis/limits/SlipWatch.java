package steadyturn.analysis.limits;

import java.util.ArrayList;
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
import steadyturn.analysis.swing.Swing;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.Averages;
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
  }

  private void add(BodyPoint point, double atS, StrokeSeen seen) {
    NavigableMap<Double, Vector3> known = ups.computeIfAbsent(point, p -> new TreeMap<>());
    known.subMap(atS - SAME_S, atS + SAME_S).clear();
    known.put(atS, seen.up());
  }

  /** What moved, the earliest of each unit and wearing. */
  public List<Slip> slips() {
    List<Slip> out = new ArrayList<>();
    for (BodyPoint point : ups.keySet()) {
      wearings(point).forEach(wearing -> slip(point, wearing).ifPresent(out::add));
    }
    return out;
  }

  /** The units that had moved by a swing and were not set up by wear steps since. */
  public Set<BodyPoint> movedBy(double atS) {
    Set<BodyPoint> out = new HashSet<>();
    for (Slip slip : slips()) {
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
    return IntStream.range(1, wearing.size())
        .mapToObj(k -> slip(point, wearing.subList(0, k), wearing.subList(k, wearing.size())))
        .flatMap(Optional::stream)
        .findFirst();
  }

  private Optional<Slip> slip(BodyPoint point, List<Double> before, List<Double> after) {
    double angle = between(point, before, after);
    int fewer = Math.min(before.size(), after.size());
    boolean isFar = angle > LEAST_RAD * (fewer == 1 ? OF_ONE : 1);
    boolean isSteady = Math.max(spread(point, before), spread(point, after)) < angle / 2;
    boolean isAlone =
        beside(point).stream().allMatch(o -> angle - between(o, before, after) > ALONE_RAD);
    double lastBeforeS = before.get(before.size() - 1);
    double firstAfterS = after.get(0);
    return isFar && isSteady && isAlone
        ? Optional.of(new Slip(point, lastBeforeS, firstAfterS, angle))
        : Optional.empty();
  }

  private static List<BodyPoint> beside(BodyPoint point) {
    return switch (point) {
      case LEAD_FOREARM -> List.of(BodyPoint.LEAD_HAND);
      case LEAD_HAND -> List.of(BodyPoint.LEAD_FOREARM);
      default -> List.of();
    };
  }

  /** Angle between the middle directions of two groups, rad; 0 where one was not seen. */
  private double between(BodyPoint point, List<Double> before, List<Double> after) {
    Optional<Vector3> was = middle(point, before);
    Optional<Vector3> is = middle(point, after);
    return was.isPresent() && is.isPresent() ? angle(was.get(), is.get()) : 0;
  }

  private double spread(BodyPoint point, List<Double> group) {
    Vector3 middle = middle(point, group).orElse(Vector3.Z);
    return seen(point, group).stream().mapToDouble(up -> angle(up, middle)).max().orElse(0);
  }

  private Optional<Vector3> middle(BodyPoint point, List<Double> group) {
    List<Vector3> all = seen(point, group);
    return all.isEmpty()
        ? Optional.empty()
        : Optional.of(
            Vector3.each(
                    axis -> Averages.median(all.stream().mapToDouble(v -> v.get(axis)).toArray()))
                .unit());
  }

  private List<Vector3> seen(BodyPoint point, List<Double> group) {
    return group.stream().flatMap(t -> Optional.ofNullable(of(point).get(t)).stream()).toList();
  }

  private static double angle(Vector3 a, Vector3 b) {
    return Math.acos(Math.max(-1, Math.min(1, a.dot(b))));
  }
}
