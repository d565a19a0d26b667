package steadyturn.analysis.lab.family;

import java.util.EnumMap;
import java.util.Map;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;

/**
 * How a family's units are strapped on, degrees.
 *
 * @param leanDeg mean lean of the trunk's units about the hip line: a belt worn high leans
 * @param leanSpreadDeg spread of it between players
 * @param turnDeg spread of every other turn against the nominal mounting
 * @param creepDeg how far a unit turns in a lesson
 * @param creepMm how far it moves
 * @param twist part of the forearm's roll the skin above the wrist does not follow
 */
public record Strap(
    double leanDeg,
    double leanSpreadDeg,
    double turnDeg,
    double creepDeg,
    double creepMm,
    double twist,
    Skin skin) {

  static Strap draw(Dice dice) {
    return new Strap(
        dice.about(4, 5),
        dice.even(2, 5),
        dice.even(2, 4.5),
        dice.even(0, 0.8),
        dice.even(0, 2),
        dice.times(0.01, 0.05),
        Skin.draw(dice));
  }

  /** Belts that lean by 10 to 20 deg and give way during the lesson. */
  Strap slipping(Dice dice) {
    double side = dice.happens(0.75) ? 1 : -1;
    return new Strap(
        side * dice.even(10, 17), 2, turnDeg, dice.even(2, 6), dice.even(3, 10), twist, skin);
  }

  /** Skin over the forearm that follows its roll badly. */
  Strap loose(Dice dice) {
    return new Strap(
        leanDeg, leanSpreadDeg, turnDeg, creepDeg, creepMm, dice.times(0.04, 0.1), skin);
  }

  /** Draws how one player wears them. */
  Map<BodyPoint, Mount> player(Dice dice) {
    Map<BodyPoint, Mount> out = new EnumMap<>(BodyPoint.class);
    for (BodyPoint point : BodyPoint.values()) {
      boolean trunk = point == BodyPoint.PELVIS || point == BodyPoint.THORAX;
      double lean = trunk ? dice.about(leanDeg, leanSpreadDeg) : dice.about(0, turnDeg);
      Vector3 rad =
          new Vector3(dice.about(0, turnDeg), lean, dice.about(0, turnDeg)).times(Math.PI / 180);
      double followed = point == BodyPoint.LEAD_FOREARM ? twist : 0;
      out.put(
          point,
          new Mount(
              rad,
              some(dice, Math.toRadians(creepDeg)),
              some(dice, creepMm / 1000),
              skin.player(dice, trunk, followed)));
    }
    return out;
  }

  private static Vector3 some(Dice dice, double size) {
    Vector3 way = new Vector3(dice.about(0, 1), dice.about(0, 1), dice.about(0, 1));
    return way.times(size / Math.max(0.2, way.norm()));
  }
}
