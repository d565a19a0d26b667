package steadyturn.analysis.lab.body;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * A kind of player: how each trait is spread over the players of that kind and over one player's
 * swings. Traits not named have their usual spread.
 */
public record PlayerStyle(String name, Map<Trait, Variation> named) {

  public PlayerStyle {
    named = Map.copyOf(named);
  }

  public Variation spread(Trait trait) {
    return named.getOrDefault(trait, trait.usual());
  }

  /** The same kind with one trait spread otherwise. */
  public PlayerStyle with(Trait trait, Variation spread) {
    Map<Trait, Variation> more = new EnumMap<>(Trait.class);
    more.putAll(named);
    more.put(trait, spread);
    return new PlayerStyle(name, more);
  }

  /** The same kind with a trait at one value for each player, and no spread over the swings. */
  public PlayerStyle withFixed(Trait trait, double value) {
    return with(trait, new Variation(value, 0, 0, value, value));
  }

  /** Every trait at its mean: one player, all swings alike. */
  public PlayerStyle withoutSpread() {
    PlayerStyle out = this;
    for (Trait trait : Trait.values()) {
      out = out.with(trait, spread(trait).fixed());
    }
    return out;
  }

  /** All of them. */
  public static List<PlayerStyle> all() {
    return List.of(mixed(), steadyTurner(), slider(), earlyRelease(), lateRelease(), fastTempo());
  }

  /** All sorts of players, over the whole range of turn and slide. */
  public static PlayerStyle mixed() {
    return new PlayerStyle("mixed", Map.of());
  }

  /** Turns well around a point that stays. */
  public static PlayerStyle steadyTurner() {
    return new PlayerStyle("steady-turner", Map.of())
        .with(Trait.TURN_TOP_DEG, Variation.about(-48, 3, 2))
        .with(Trait.TURN_IMPACT_DEG, Variation.about(44, 3, 2))
        .with(Trait.SLIDE_TOP_MM, Variation.about(-8, 6, 6))
        .with(Trait.SLIDE_IMPACT_MM, Variation.about(60, 8, 7));
  }

  /** Turns little and slides, away in the backswing and to the target in the downswing. */
  public static PlayerStyle slider() {
    return new PlayerStyle("slider", Map.of())
        .with(Trait.TURN_TOP_DEG, Variation.about(-30, 3, 3))
        .with(Trait.TURN_IMPACT_DEG, Variation.about(28, 3, 3))
        .with(Trait.SLIDE_TOP_MM, Variation.about(-64, 6, 9))
        .with(Trait.SLIDE_IMPACT_MM, Variation.about(128, 6, 9));
  }

  /** Lets the wrists go early: a cast. */
  public static PlayerStyle earlyRelease() {
    return new PlayerStyle("early-release", Map.of())
        .with(Trait.RELEASE_START_MS, Variation.about(215, 8, 6))
        .with(Trait.RELEASE_LENGTH_MS, Variation.about(255, 8, 6));
  }

  /** Keeps the angle until late. */
  public static PlayerStyle lateRelease() {
    return new PlayerStyle("late-release", Map.of())
        .with(Trait.RELEASE_START_MS, Variation.about(112, 5, 4))
        .with(Trait.RELEASE_LENGTH_MS, Variation.about(152, 5, 4));
  }

  /** Hurries back and down. */
  public static PlayerStyle fastTempo() {
    return new PlayerStyle("fast-tempo", Map.of())
        .with(Trait.BACK_S, Variation.about(0.62, 0.03, 0.02))
        .with(Trait.DOWN_S, Variation.about(0.225, 0.008, 0.006));
  }

  /** Down in 0.18 to 0.22 s and released late enough for that: shorter than usual (our choice). */
  public static PlayerStyle shortDownswing() {
    return new PlayerStyle("short-downswing", Map.of())
        .with(Trait.BACK_S, Variation.about(0.62, 0.03, 0.02))
        .with(Trait.DOWN_S, Variation.about(0.2, 0.008, 0.005))
        .with(Trait.RELEASE_START_MS, Variation.about(120, 8, 5))
        .with(Trait.RELEASE_LENGTH_MS, Variation.about(160, 8, 5));
  }

  /** Takes time back and down: about 1.1 and 0.36 s. */
  public static PlayerStyle slowTempo() {
    return new PlayerStyle("slow-tempo", Map.of())
        .with(Trait.BACK_S, Variation.about(1.1, 0.05, 0.03))
        .with(Trait.DOWN_S, Variation.about(0.36, 0.015, 0.01));
  }
}
