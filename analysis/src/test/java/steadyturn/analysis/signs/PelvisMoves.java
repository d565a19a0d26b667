package steadyturn.analysis.signs;

import java.util.List;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.pelvis.PelvisMeasures;
import steadyturn.analysis.pelvis.PelvisTrack;
import steadyturn.analysis.pelvis.SkinShift;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.strapdown.UnitMotion;
import steadyturn.fusion.wear.pelvis.LeverArm;
import steadyturn.fusion.wear.pelvis.PelvisGeometry;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;

/** Exact movements of a pelvis that wears a unit, written down in ground axes. */
final class PelvisMoves {

  private static final double TURN_RAD = Math.toRadians(30);
  private static final double MOVE_M = 0.06;

  private PelvisMoves() {}

  /** Where the pelvis is once the movement is done, in ground axes. */
  private record Pose(Quaternion qGroundPelvis, Vector3 midHipM) {}

  static double value(String row, String id, Handedness handed) {
    UnitMotion motion = new Motion(address(handed), moved(row, handed), geometry());
    PelvisTrack track = PelvisTrack.of(motion, geometry(), handed, 0, 0, 1);
    EventTime top = new EventTime(SwingEvent.TOP, 2, 0, Grade.MEASURED, Reason.NONE);
    return PelvisMeasures.of(track, List.of(top), 90, SkinShift.assumed(), Reason.NONE, false)
        .stream()
        .filter(m -> m.measure().id().equals(id) && m.at().equals("top"))
        .mapToDouble(MeasureValue::value)
        .findFirst()
        .orElseThrow();
  }

  private static PelvisGeometry geometry() {
    return PelvisGeometry.nominal(LeverArm.of(Player.unmeasured("p1", Handedness.RIGHT)));
  }

  /**
   * A right-handed player has the target to the left, so looks along -y of the ground; a
   * left-handed one looks along +y.
   */
  private static Pose address(Handedness handed) {
    return new Pose(Quaternion.aboutZ(-handed.sign() * Math.PI / 2), Vector3.ZERO);
  }

  private static Pose moved(String row, Handedness handed) {
    double h = handed.sign();
    Quaternion address = address(handed).qGroundPelvis();
    Vector3 towardsTheBall = new Vector3(0, -h, 0);
    return switch (row) {
      // seen from above, opening to the target is counter-clockwise for a right-handed player
      case "S1" -> new Pose(Quaternion.aboutZ(h * TURN_RAD).times(address), Vector3.ZERO);
      case "S2" -> new Pose(Quaternion.aboutZ(-h * TURN_RAD).times(address), Vector3.ZERO);
      case "S3" -> new Pose(address, new Vector3(MOVE_M, 0, 0));
      case "S4" -> new Pose(address, new Vector3(-MOVE_M, 0, 0));
      case "S5" -> new Pose(address, towardsTheBall.times(MOVE_M));
      case "S6" -> new Pose(address, new Vector3(0, 0, MOVE_M));
      // to bow turns the pelvis about its own left axis; z moves to x
      case "S7" -> new Pose(address.times(Quaternion.aboutY(TURN_RAD)), Vector3.ZERO);
      // the lead hip is the left one of a right-handed player; about x, y moves to z
      case "S8" -> new Pose(address.times(Quaternion.aboutX(h * TURN_RAD)), Vector3.ZERO);
      case "S9" -> about(new Vector3(0.1, 0, 0), h, address);
      case "S10" -> about(towardsTheBall.times(0.1), h, address);
      default -> throw new IllegalArgumentException("no movement written down for row " + row);
    };
  }

  /** A backswing turn of 30 deg about a point, from mid-hip at address. */
  private static Pose about(Vector3 pointM, double h, Quaternion address) {
    Quaternion turn = Quaternion.aboutZ(-h * TURN_RAD);
    return new Pose(turn.times(address), pointM.minus(turn.rotate(pointM)));
  }

  /** At address until 1 s, then straight to the second pose, at 100 Hz; nothing is uncertain. */
  private record Motion(Pose address, Pose moved, PelvisGeometry geometry) implements UnitMotion {

    private Pose at(int k) {
      return timeS(k) < 1.5 ? address : moved;
    }

    @Override
    public int size() {
      return 251;
    }

    @Override
    public double timeS(int k) {
      return 0.01 * k;
    }

    @Override
    public Quaternion qLevelUnit(int k) {
      return at(k).qGroundPelvis().times(geometry.qUnitPelvis().conjugate());
    }

    @Override
    public Vector3 positionM(int k) {
      return at(k).midHipM().minus(qLevelUnit(k).rotate(geometry.leverArmUnitM()));
    }

    @Override
    public int parameters() {
      return 1;
    }

    @Override
    public double[][] covariance() {
      return new double[1][1];
    }

    @Override
    public double[][] sensitivity(int k) {
      return new double[9][1];
    }
  }
}
