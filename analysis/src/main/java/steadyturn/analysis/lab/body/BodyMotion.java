package steadyturn.analysis.lab.body;

import java.util.EnumMap;
import java.util.Map;
import steadyturn.analysis.lab.curve.TimeFunction;
import steadyturn.fusion.rotation.MovingFrame;
import steadyturn.fusion.rotation.MovingFrame.FixedTurn;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;

/**
 * Every joint of a right-handed player over true time, and the frames of the segments that follow.
 * The pelvis turns about the vertical, then lead hip up, then forward about its own hip line. The
 * lead arm's attitude is given in the ground, not against the chest; its shoulder rides on the
 * chest, the elbow stays straight. Hand axes: x to the fingers, z out of the back of the hand.
 */
@SuppressWarnings("EnumOrdinal") // joints are looked up ten times a sample
public final class BodyMotion {

  private static final double QUARTER = Math.PI / 2;
  private static final double CHEST_FROM_HIP_M = 0.15;

  /** Arm plane upright, arm hanging: x down, y to the target, z to the ball. */
  private static final FixedTurn STANDING_ARM =
      FixedTurn.of(Quaternion.fromAxes(new Vector3(0, 0, -1), Vector3.X, new Vector3(0, -1, 0)));

  private final TimeFunction[] joints;
  private final BodySizes sizes;
  private final boolean squareWrist;
  private final FixedTurn toFlexion;
  private final FixedTurn fromFlexion;
  private final FixedTurn toCock;
  private final FixedTurn fromCock;

  public BodyMotion(BodySizes sizes, WristAxes wrist, Map<Joint, TimeFunction> joints) {
    this.sizes = sizes;
    this.squareWrist = wrist.equals(WristAxes.SQUARE);
    this.toFlexion = FixedTurn.of(wrist.qFlexion());
    this.fromFlexion = FixedTurn.of(wrist.qFlexion().conjugate());
    this.toCock = FixedTurn.of(wrist.qCock());
    this.fromCock = FixedTurn.of(wrist.qCock().conjugate());
    Map<Joint, TimeFunction> sorted = new EnumMap<>(joints);
    this.joints = new TimeFunction[Joint.values().length];
    for (Joint joint : Joint.values()) {
      this.joints[joint.ordinal()] = sorted.getOrDefault(joint, TimeFunction.constant(0));
    }
  }

  public BodySizes sizes() {
    return sizes;
  }

  public TimeFunction joint(Joint joint) {
    return joints[joint.ordinal()];
  }

  /** A walker of the chains; one a thread. */
  public Walker walker() {
    return new Walker(this);
  }

  /** Walks the chains for one instant after another; keeps its scratch, so one a thread. */
  public static final class Walker {
    private final BodyMotion motion;
    private final double[] vra = new double[3];
    private final MovingFrame shoulder = new MovingFrame();

    private Walker(BodyMotion motion) {
      this.motion = motion;
    }

    private double[] joint(Joint joint, double timeS) {
      vra[0] = vra[1] = vra[2] = 0;
      motion.joints[joint.ordinal()].addTo(timeS, vra);
      return vra;
    }

    /** Sets {@code out} to the frame of the segment that carries a body point. */
    public void segment(BodyPoint point, double timeS, MovingFrame out) {
      switch (point) {
        case PELVIS -> pelvis(timeS, out);
        case THORAX -> chest(timeS, out);
        case LEAD_FOREARM -> forearm(timeS, out);
        case LEAD_HAND -> hand(timeS, out);
        case CLUB_SHAFT -> shaft(timeS, out);
      }
    }

    /**
     * As {@link #segment}, but for the place: how arm, hand and club stand and turn does not ask
     * the trunk.
     */
    public void attitude(BodyPoint point, double timeS, MovingFrame out) {
      if (point == BodyPoint.PELVIS || point == BodyPoint.THORAX) {
        segment(point, timeS, out);
        return;
      }
      out.setGround();
      arm(timeS, out);
      if (point != BodyPoint.LEAD_FOREARM) {
        wrist(timeS, out);
      }
      if (point == BodyPoint.CLUB_SHAFT) {
        bend(timeS, out);
      }
    }

    /** Anatomical pelvis axes at mid-hip. */
    public void pelvis(double timeS, MovingFrame out) {
      out.setGround();
      double[] j = joint(Joint.PLACE_X, timeS);
      out.slide(0, j[0], j[1], j[2]);
      j = joint(Joint.PLACE_Y, timeS);
      out.slide(1, j[0], j[1], j[2]);
      j = joint(Joint.PLACE_Z, timeS);
      out.slide(2, j[0], j[1], j[2]);
      joint(Joint.HEADING, timeS);
      motion.joints[Joint.TURN.ordinal()].addTo(timeS, vra);
      out.turnZ(vra[0] - QUARTER, vra[1], vra[2]);
      j = joint(Joint.SIDE_TILT, timeS);
      out.turnX(j[0], j[1], j[2]);
      j = joint(Joint.TILT, timeS);
      out.turnY(j[0], j[1], j[2]);
    }

    private void chest(double timeS, MovingFrame out) {
      pelvis(timeS, out);
      out.shift(0, 0, CHEST_FROM_HIP_M);
      double[] j = joint(Joint.TRUNK_BEND, timeS);
      out.turnY(j[0], j[1], j[2]);
      j = joint(Joint.TRUNK_TURN, timeS);
      out.turnZ(j[0], j[1], j[2]);
    }

    private void forearm(double timeS, MovingFrame out) {
      chest(timeS, shoulder);
      shoulder.shift(0, motion.sizes.shoulderOutM(), motion.sizes.shoulderUpM() - CHEST_FROM_HIP_M);
      out.setGround();
      out.setPlace(shoulder);
      arm(timeS, out);
    }

    /** From the ground's axes to the forearm's. */
    private void arm(double timeS, MovingFrame out) {
      double[] j = joint(Joint.HEADING, timeS);
      out.turnZ(j[0], j[1], j[2]);
      j = joint(Joint.PLANE, timeS);
      out.turnX(j[0], j[1], j[2]);
      out.turnFixed(STANDING_ARM);
      j = joint(Joint.ARM, timeS);
      out.turnZ(j[0], j[1], j[2]);
      j = joint(Joint.ROLL, timeS);
      out.turnX(j[0] - QUARTER, j[1], j[2]);
    }

    private void hand(double timeS, MovingFrame out) {
      forearm(timeS, out);
      out.shift(motion.sizes.armM(), 0, 0);
      wrist(timeS, out);
    }

    private void wrist(double timeS, MovingFrame out) {
      double[] j = joint(Joint.FLEXION, timeS);
      turn(out, motion.toFlexion);
      out.turnY(j[0], j[1], j[2]);
      turn(out, motion.fromFlexion);
      j = joint(Joint.COCK, timeS);
      turn(out, motion.toCock);
      out.turnZ(-j[0], -j[1], -j[2]);
      turn(out, motion.fromCock);
      j = joint(Joint.PLAY, timeS);
      out.turnX(j[0], j[1], j[2]);
    }

    private void turn(MovingFrame out, FixedTurn turn) {
      if (!motion.squareWrist) {
        out.turnFixed(turn);
      }
    }

    private void shaft(double timeS, MovingFrame out) {
      hand(timeS, out);
      bend(timeS, out);
    }

    private void bend(double timeS, MovingFrame out) {
      double[] j = joint(Joint.CLUB_BEND, timeS);
      out.turnZ(-j[0], -j[1], -j[2]);
    }
  }
}
