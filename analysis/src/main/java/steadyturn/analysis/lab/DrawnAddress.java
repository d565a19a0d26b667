package steadyturn.analysis.lab;

import java.util.List;
import steadyturn.analysis.lab.body.Joint;
import steadyturn.analysis.lab.family.Dice;

/** Lays what a family's player does at address, up to the first move of the swing. */
record DrawnAddress(Stage stage, LessonSpec spec, Dice dice) {

  /** Gives the true time at which the swing begins. */
  double lay() {
    double stillS = stage.nowS;
    if (spec.habits().contains(Habit.RESTLESS_ADDRESS)) {
      return restless(stillS, stillS + dice.even(0.6, 1.4));
    }
    double startS = stillS + dice.even(0.8, 1.6);
    if (!spec.habits().contains(Habit.RUNNING_WAGGLE)) {
      return startS;
    }
    double halfS = startS + dice.even(0.35, 0.5);
    double endS = halfS + dice.even(0.35, 0.5);
    double arm = Math.toRadians(dice.even(5, 14));
    double cock = Math.toRadians(dice.even(6, 25));
    stage.joint(Joint.ARM).by(startS, halfS, -arm).by(halfS, endS, arm);
    stage.joint(Joint.COCK).by(startS, halfS, cock).by(halfS, endS, -cock);
    return endS + dice.even(-0.06, 0.08);
  }

  /** Weight from foot to foot, then hands and hips press forward and the swing follows. */
  private double restless(double fromS, double toS) {
    for (Joint joint : List.of(Joint.PLACE_X, Joint.PLACE_Y)) {
      for (double atS = fromS; atS < toS - 0.3; atS += dice.even(0.3, 0.6)) {
        stage.joint(joint).by(atS, atS + dice.even(0.25, 0.45), dice.about(0, 0.008));
      }
    }
    stage.joint(Joint.TURN).by(fromS + 0.1, toS - 0.1, dice.about(0, 0.015));
    if (dice.happens(0.5)) {
      return toS + dice.even(0.05, 0.4);
    }
    double pressedS = toS + dice.even(0.25, 0.4);
    stage.joint(Joint.ARM).by(toS, pressedS, Math.toRadians(dice.even(3, 8)));
    stage.joint(Joint.PLACE_X).by(toS, pressedS, dice.even(0.005, 0.02));
    return pressedS + dice.even(0, 0.15);
  }
}
