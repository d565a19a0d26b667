package steadyturn.analysis.coach;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.apache.commons.math3.stat.StatUtils;
import steadyturn.analysis.compare.ErrorSplit;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.compare.SwingGroup;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Curve;
import steadyturn.analysis.measure.MeasureValue;

/**
 * A player's swings held against a model: one swing or a set, the player's own or another's. Every
 * value is free of handedness, so left and right compare as they are.
 */
public record ModelComparison(List<ModelGap> gaps, List<ModelCurve> curves) {

  private static final double STEP = 1;

  public ModelComparison {
    gaps = List.copyOf(gaps);
    curves = List.copyOf(curves);
  }

  /** Compares at key positions and along the curves that both have. */
  public static ModelComparison of(SwingGroup model, SwingGroup player, List<MeasureAt> looks) {
    List<ModelGap> gaps =
        looks.stream().flatMap(what -> gap(model, player, what).stream()).toList();
    return new ModelComparison(gaps, curves(swings(model), swings(player)));
  }

  private static Optional<ModelGap> gap(SwingGroup model, SwingGroup player, MeasureAt what) {
    GroupSummary m = GroupSummary.of(model, what, ErrorSplit.defaults());
    GroupSummary p = GroupSummary.of(player, what, ErrorSplit.defaults());
    if (m.count() == 0 || p.count() == 0) {
      return Optional.empty();
    }
    double difference = p.mean() - m.mean();
    double half = Math.hypot(halfWidth(m), halfWidth(p));
    double spread = Math.max(p.spread(), p.ownError());
    return Optional.of(
        new ModelGap(
            what,
            m.mean(),
            p.mean(),
            difference - half,
            difference + half,
            p.count() < 3 || spread == 0
                ? OptionalDouble.empty()
                : OptionalDouble.of(difference / spread)));
  }

  /** Of a single swing: what the tool knows of it; its player's spread is not known. */
  private static double halfWidth(GroupSummary g) {
    return g.count() >= 3
        ? g.halfWidthOfMean()
        : MeasureValue.Z95 * Math.hypot(g.ownError(), g.sharedError());
  }

  private static List<SwingResult> swings(SwingGroup group) {
    return group.swings().stream().map(s -> s.swing()).toList();
  }

  private static List<ModelCurve> curves(List<SwingResult> model, List<SwingResult> player) {
    List<SwingResult> all = new ArrayList<>(model);
    all.addAll(player);
    Landmarks landmarks = Landmarks.sharedBy(all);
    if (!landmarks.usable()) {
      return List.of();
    }
    return sharedIds(all).stream().map(id -> curve(id, landmarks, model, player)).toList();
  }

  private static Set<String> sharedIds(List<SwingResult> swings) {
    Set<String> ids = new LinkedHashSet<>();
    swings.get(0).curves().forEach(c -> ids.add(c.id()));
    swings.forEach(s -> ids.retainAll(s.curves().stream().map(Curve::id).toList()));
    return ids;
  }

  private static ModelCurve curve(
      String id, Landmarks landmarks, List<SwingResult> model, List<SwingResult> player) {
    List<Double> places = new ArrayList<>();
    List<Double> models = new ArrayList<>();
    List<Double> players = new ArrayList<>();
    List<Double> spreads = new ArrayList<>();
    for (double p = landmarks.firstPlace(); p <= landmarks.lastPlace() + 1e-9; p += STEP) {
      double[] m = at(id, landmarks, model, p);
      double[] x = at(id, landmarks, player, p);
      places.add(p);
      models.add(StatUtils.mean(m));
      players.add(StatUtils.mean(x));
      spreads.add(spread(x));
    }
    return new ModelCurve(id, places, models, players, spreads);
  }

  private static Curve curve(String id, SwingResult swing) {
    return swing.curves().stream().filter(c -> c.id().equals(id)).findFirst().orElseThrow();
  }

  private static double[] at(
      String id, Landmarks landmarks, List<SwingResult> swings, double place) {
    return swings.stream()
        .mapToDouble(s -> Landmarks.valueAt(curve(id, s), landmarks.timeAtS(s, place)))
        .toArray();
  }

  private static double spread(double[] x) {
    return x.length < 2 ? Double.NaN : Math.sqrt(StatUtils.variance(x));
  }
}
