package steadyturn.analysis.lab.family;

/**
 * A kind of body and of equipment: players whose units are wrong in alike ways.
 *
 * @param aimDeg spread of the hip line at address against square
 */
public record ErrorFamily(
    Stance stance,
    Pelvis pelvis,
    Strap strap,
    Wrist wrist,
    Chip chip,
    Blow.Kind blow,
    double aimDeg) {

  /** Draws a family as one would meet it, with no special trouble. */
  public static ErrorFamily draw(Dice dice) {
    return new ErrorFamily(
        Stance.draw(dice),
        Pelvis.draw(dice),
        Strap.draw(dice),
        Wrist.draw(dice),
        Chip.draw(dice),
        dice.one(Blow.Kind.HARD, Blow.Kind.HARD, Blow.Kind.SLOW, Blow.Kind.LIGHT),
        dice.even(1, 3));
  }

  ErrorFamily with(Blow.Kind kind) {
    return new ErrorFamily(stance, pelvis, strap, wrist, chip, kind, aimDeg);
  }

  ErrorFamily with(Chip other) {
    return new ErrorFamily(stance, pelvis, strap, wrist, other, blow, aimDeg);
  }

  ErrorFamily slipping(Dice dice) {
    return new ErrorFamily(stance, pelvis, strap.slipping(dice), wrist, chip, blow, aimDeg);
  }

  ErrorFamily looseWrist(Dice dice) {
    return new ErrorFamily(
        stance, pelvis, strap.loose(dice), wrist.loose(dice), chip, blow, aimDeg);
  }

  /** Draws one player. */
  public WornBody player(Dice dice) {
    return new WornBody(
        stance,
        pelvis.player(dice),
        strap.player(dice),
        wrist.player(dice),
        Blow.draw(dice, blow),
        chip);
  }
}
