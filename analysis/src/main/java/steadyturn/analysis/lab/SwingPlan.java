package steadyturn.analysis.lab;

import java.util.EnumMap;
import java.util.Map;
import org.apache.commons.math3.random.RandomGenerator;
import steadyturn.analysis.lab.body.PlayerStyle;
import steadyturn.analysis.lab.body.Trait;
import steadyturn.analysis.swing.SwingKind;

/** The traits one swing will have. */
record SwingPlan(SwingKind kind, String club, Map<Trait, Double> traits) {

  double of(Trait trait) {
    return traits.getOrDefault(trait, 0.0);
  }

  /** Of a trait in degrees, rad. */
  double rad(Trait trait) {
    return Math.toRadians(of(trait));
  }

  /** Of a trait in thousandths (mm, ms), m or s. */
  double milli(Trait trait) {
    return of(trait) / 1000;
  }

  /** The same swing with one trait otherwise. */
  SwingPlan with(Trait trait, double value) {
    Map<Trait, Double> changed = new EnumMap<>(Trait.class);
    changed.putAll(traits);
    changed.put(trait, value);
    return new SwingPlan(kind, club, changed);
  }

  /** Draws a player's means. */
  static Map<Trait, Double> drawPlayer(PlayerStyle style, RandomGenerator random) {
    Map<Trait, Double> means = new EnumMap<>(Trait.class);
    for (Trait trait : Trait.values()) {
      means.put(trait, style.spread(trait).drawPlayer(random));
    }
    return means;
  }

  /** Draws one swing of a player. */
  static SwingPlan draw(
      SwingKind kind,
      String club,
      PlayerStyle style,
      Map<Trait, Double> means,
      RandomGenerator random) {
    Map<Trait, Double> traits = new EnumMap<>(Trait.class);
    for (Trait trait : Trait.values()) {
      double away = style.spread(trait).swingSd() * random.nextGaussian();
      traits.put(trait, means.getOrDefault(trait, 0.0) + away);
    }
    return new SwingPlan(kind, club, traits);
  }
}
