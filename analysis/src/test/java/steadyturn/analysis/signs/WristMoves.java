package steadyturn.analysis.signs;

import java.util.List;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.analysis.wrist.WristClocks;
import steadyturn.analysis.wrist.WristMotion;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.wrist.WristSteps;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** Exact movements of a hand against a forearm that is held still, fingers down. */
final class WristMoves {

  private static final double RATE_HZ = 200;
  private static final int SAMPLES = 800;
  private static final double TAKEAWAY_S = 1.5;
  private static final double TOP_S = 2.5;
  private static final double BEND_RAD = Math.toRadians(30);
  private static final double G_MPS2 = 9.81;

  private WristMoves() {}

  static double value(String row, String id, Handedness handed) {
    Recording recording =
        new Recording(
            "invented",
            Player.unmeasured("p1", handed),
            List.of(
                stream(BodyPoint.LEAD_FOREARM, Vector3.ZERO),
                stream(BodyPoint.LEAD_HAND, bendAxis(row, handed))),
            List.of());
    WristMotion motion =
        WristMotion.of(
                recording,
                RestBiases.of(recording),
                swing(),
                WristSteps.NONE,
                WristClocks.within(0.0001))
            .orElseThrow();
    int k = motion.indexAt(TOP_S + 0.2);
    return id.equals("wrist.cock") ? motion.cockDeg(k) : motion.flexionDeg(k);
  }

  /**
   * The axis the hand turns about, in hand axes: x to the fingers, z out of the back of the hand. A
   * left hand seen from its back, fingers up, has the thumb to the right, so bending to it is
   * clockwise: about -z; a right hand bends about +z. To the palm, x moves to -z: about +y, on
   * either hand.
   */
  private static Vector3 bendAxis(String row, Handedness handed) {
    return switch (row) {
      case "S11" -> Vector3.Z.times(-handed.sign());
      case "S12" -> Vector3.Y;
      default -> throw new IllegalArgumentException("no movement written down for row " + row);
    };
  }

  private static UnitStream stream(BodyPoint point, Vector3 axis) {
    double[] timeS = new double[SAMPLES];
    double[][] accelMps2 = new double[3][SAMPLES];
    double[][] gyroRadPerS = new double[3][SAMPLES];
    for (int i = 0; i < SAMPLES; i++) {
      timeS[i] = i / RATE_HZ;
      boolean bends = timeS[i] > TAKEAWAY_S && timeS[i] <= TOP_S;
      double part = Math.min(1, Math.max(0, (timeS[i] - TAKEAWAY_S) / (TOP_S - TAKEAWAY_S)));
      Quaternion qForearmHand = Quaternion.fromRotationVector(axis.times(part * BEND_RAD));
      // the fingers hang down, so up is -x of the forearm
      Vector3 force = qForearmHand.conjugate().rotate(Vector3.X.times(-G_MPS2));
      Vector3 rate = axis.times(bends ? BEND_RAD / (TOP_S - TAKEAWAY_S) : 0);
      for (int c = 0; c < 3; c++) {
        accelMps2[c][i] = force.get(c);
        gyroRadPerS[c][i] = rate.get(c);
      }
    }
    return new UnitStream(UnitFacts.plain(point, RATE_HZ), timeS, accelMps2, gyroRadPerS);
  }

  private static Swing swing() {
    return new Swing(
        1,
        SwingKind.HIT,
        "",
        0.5,
        3.9,
        List.of(
            at(SwingEvent.TAKEAWAY, TAKEAWAY_S),
            at(SwingEvent.TOP, TOP_S),
            at(SwingEvent.IMPACT, 3)),
        List.of());
  }

  private static EventTime at(SwingEvent event, double timeS) {
    return new EventTime(event, timeS, 0.001, Grade.MEASURED, Reason.NONE);
  }
}
