package steadyturn.analysis.lab.family;

import java.util.EnumMap;
import java.util.Map;
import steadyturn.analysis.lab.body.PlayerStyle;
import steadyturn.analysis.lab.body.Trait;
import steadyturn.analysis.lab.body.Variation;

/**
 * A kind of movement: players whose swings resemble each other in size and in course. All ranges
 * are our choice, wider than what one teacher sees.
 *
 * @param style sizes at the key positions
 * @param middle course of a player in the middle of the family
 */
public record ShapeFamily(PlayerStyle style, SwingTiming middle) {

  /** How hurried the players are, and how far they swing back. */
  public enum Tempo {
    ANY(0.68, 1.1, 0.21, 0.33, -158, -128),
    SLOW(1.05, 1.45, 0.29, 0.42, -158, -120),
    FAST_AND_SHORT(0.52, 0.72, 0.18, 0.24, -128, -98);

    @SuppressWarnings("ImmutableEnumChecker") // filled at birth, never handed out
    private final double[] ends;

    Tempo(double... ends) {
      this.ends = ends;
    }
  }

  /** Draws a family. */
  public static ShapeFamily draw(Dice dice, Tempo tempo) {
    double[] ends = tempo.ends;
    PlayerStyle style = new PlayerStyle("drawn", sizes(dice));
    double backS = dice.times(ends[0], ends[1]);
    double downS = dice.times(ends[2], ends[3]);
    double releaseMs = 1000 * downS * dice.even(0.35, 0.7);
    style =
        style
            .with(Trait.BACK_S, Variation.about(backS, 0.05 * backS, 0.02 * backS))
            .with(Trait.DOWN_S, Variation.about(downS, 0.04 * downS, 0.02 * downS))
            .with(Trait.ARM_TOP_DEG, Variation.about(dice.even(ends[4], ends[5]), 4, 2.5))
            .with(Trait.COCK_FINISH_DEG, Variation.about(dice.even(30, 60), 4, 3))
            .with(Trait.COCK_TOP_DEG, Variation.about(dice.even(48, 70), 3, 2))
            .with(Trait.RELEASE_START_MS, Variation.about(releaseMs, 0.07 * releaseMs, 4))
            .with(Trait.RELEASE_LENGTH_MS, Variation.about(releaseMs + dice.even(20, 60), 6, 4));
    return new ShapeFamily(style, timing(dice));
  }

  /** Means moved by a usual spread or so; a player's spread smaller, a swing's of any size. */
  private static Map<Trait, Variation> sizes(Dice dice) {
    Map<Trait, Variation> out = new EnumMap<>(Trait.class);
    for (Trait trait : Trait.values()) {
      Variation usual = trait.usual();
      double spread = Math.min(usual.playerSd(), (usual.high() - usual.low()) / 3.5);
      out.put(
          trait,
          Variation.about(
              dice.about(usual.mean(), spread), 0.6 * spread, dice.even(0.6, 2) * usual.swingSd()));
    }
    return out;
  }

  private static SwingTiming timing(Dice dice) {
    return new SwingTiming(
        dice.times(0.8, 2.4),
        dice.times(0.6, 1.6),
        dice.even(0, 0.2),
        dice.times(0.8, 1.6),
        dice.even(0.66, 0.95),
        dice.even(0.72, 0.97),
        dice.even(1, 2.2),
        dice.about(0.02, 0.04),
        dice.even(0.01, 0.08),
        dice.even(0, 0.35),
        dice.even(0.7, 1),
        dice.even(0.12, 0.2),
        0,
        Math.toRadians(dice.about(0, 5)),
        Math.toRadians(dice.even(0.5, 4)));
  }

  /** Draws the course of one player. */
  public SwingTiming player(Dice dice) {
    return new SwingTiming(
        middle.startPower() * dice.times(0.85, 1.18),
        middle.topPower() * dice.times(0.85, 1.18),
        middle.uneven() * dice.times(0.7, 1.4),
        middle.downPower() * dice.times(0.9, 1.1),
        Math.min(0.97, middle.peakAt() + dice.even(-0.03, 0.03)),
        Math.min(0.98, middle.slowing() + dice.even(-0.03, 0.03)),
        middle.throughPower() * dice.times(0.9, 1.1),
        middle.lateS() + dice.about(0, 0.01),
        middle.wander() * dice.times(0.7, 1.4),
        middle.setFrom() + dice.even(0, 0.05),
        middle.setUntil() - dice.even(0, 0.05),
        middle.rollS() + dice.even(-0.01, 0.01),
        middle.pauseS(),
        middle.loopRad() + Math.toRadians(dice.about(0, 1)),
        middle.playRad() * dice.times(0.7, 1.4));
  }
}
