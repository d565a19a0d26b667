package steadyturn.analysis.lab;

import steadyturn.analysis.lab.curve.Bursts;
import steadyturn.analysis.lab.curve.Bursts.Window;
import steadyturn.analysis.lab.family.Blow;
import steadyturn.analysis.lab.family.Dice;
import steadyturn.analysis.lab.unit.UnitErrors;
import steadyturn.ingest.sample.BodyPoint;

/**
 * Lays the blow of a ball on every unit, in the shape of the player's {@link Blow}. It shakes the
 * units along their axes and leaves no change of speed.
 */
record BlowShakes(Stage stage, Blow blow, String club, double impactS, Dice dice) {

  private static final double SWELLING_S = 0.035;

  void lay() {
    double hand = blow.handG() * Blow.ofClub(club) * dice.times(0.8, 1.25) * UnitErrors.G_MPS2;
    double tailS = blow.kind() == Blow.Kind.TURF_FIRST ? dice.even(0.03, 0.06) : ringS();
    switch (blow.kind()) {
      case HARD, LIGHT -> all(impactS, ringS(), hand, Window.SHOCK);
      case SLOW -> all(impactS, SWELLING_S, hand, new Window(2, 6));
      case SOFT_FIRST -> {
        double softS = dice.even(0.015, 0.02);
        all(impactS - softS, 2 * softS, hand * dice.even(0.12, 0.22), Window.SMOOTH, 0.6 / softS);
        all(impactS, ringS(), hand, Window.SHOCK);
      }
      case DOUBLE -> {
        all(impactS, ringS(), hand, Window.SHOCK);
        double laterS = impactS + dice.even(0.008, 0.03);
        all(laterS, ringS(), hand * dice.times(0.3, 1.3), Window.SHOCK);
      }
      case TURF_FIRST -> {
        double turf = dice.even(3, 9) * UnitErrors.G_MPS2;
        double earlyS = dice.even(0.004, 0.015);
        all(impactS - earlyS, tailS, turf, Window.SMOOTH, dice.even(40, 80));
        all(impactS, tailS, hand, Window.SHOCK);
      }
    }
  }

  private double ringS() {
    return dice.even(0.01, 0.022);
  }

  private void all(double atS, double lengthS, double hand, Window window) {
    all(atS, lengthS, hand, window, blow.hz());
  }

  private void all(double atS, double lengthS, double hand, Window window, double hz) {
    ring(BodyPoint.CLUB_SHAFT, atS, lengthS, 1.5 * hand, window, hz);
    ring(BodyPoint.LEAD_HAND, atS, lengthS, hand, window, hz);
    ring(BodyPoint.LEAD_FOREARM, atS, lengthS, blow.forearm() * hand, window, hz);
    double laterS = atS + blow.trunkDelayS();
    ring(BodyPoint.THORAX, laterS, lengthS, 1.3 * blow.trunk() * hand, window, hz);
    ring(BodyPoint.PELVIS, laterS, lengthS, blow.trunk() * hand, window, hz);
  }

  private void ring(
      BodyPoint point, double atS, double lengthS, double peakMps2, Window window, double hz) {
    double angle = dice.even(-Math.PI, Math.PI);
    double lift = dice.even(-0.7, 0.7);
    double flat = Math.sqrt(1 - lift * lift);
    double[] along = {flat * Math.cos(angle), flat * Math.sin(angle), lift};
    double ownHz = hz * dice.times(0.85, 1.2);
    Bursts[] rings = stage.rings(point);
    for (int i = 0; i < 3; i++) {
      rings[i].addRing(atS, lengthS, peakMps2 * along[i], ownHz, window);
    }
  }
}
