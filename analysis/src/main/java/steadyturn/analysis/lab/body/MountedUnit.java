package steadyturn.analysis.lab.body;

import steadyturn.analysis.lab.curve.TimeFunction;
import steadyturn.analysis.lab.unit.UnitErrors;
import steadyturn.analysis.lab.unit.UnitPath;
import steadyturn.fusion.rotation.MovingFrame;
import steadyturn.fusion.rotation.MovingFrame.FixedTurn;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;

/**
 * A unit strapped to a segment: the true motion it feels. From the segment outward: offset of the
 * unit, skin shifts (three slides, three small turns, in segment axes), the way to the table, the
 * true mounting.
 *
 * @param offsetM place of the unit in segment axes, m
 * @param qSegmentUnit true mounting, alignment error included
 * @param shifts slides along segment x, y, z, m, then turns about x, y, z, rad: skin and shock
 * @param carry way between body and table
 */
public record MountedUnit(
    BodyPoint point,
    BodyMotion body,
    Vector3 offsetM,
    Quaternion qSegmentUnit,
    TimeFunction[] shifts,
    Carry carry) {

  /**
   * The way from the body (share 0) to the table (share 1): a turn about one axis and a straight
   * move, both in segment axes.
   */
  public record Carry(TimeFunction share, Vector3 turnRad, Vector3 moveM) {
    /** A unit that is worn from the first sample to the last. */
    public static final Carry NONE =
        new Carry(TimeFunction.constant(0), Vector3.ZERO, Vector3.ZERO);
  }

  /** The path as a unit samples it; one a thread. */
  public UnitPath path() {
    MovingFrame frame = new MovingFrame();
    Placer placer = placer();
    return (timeS, force, rate) -> {
      placer.place(timeS, frame);
      frame.specificForceMps2(UnitErrors.G_MPS2, force);
      frame.rateRadPerS(rate);
    };
  }

  /** Sets a frame to the unit's own at an instant. */
  public interface Placer {
    void place(double timeS, MovingFrame out);
  }

  /** A placer with its own scratch; one a thread. */
  public Placer placer() {
    BodyMotion.Walker walker = body.walker();
    double[] vra = new double[3];
    double angle = carry.turnRad.norm();
    // takes z to the axis of the carrying turn
    Quaternion qSegmentAxis = angle > 0 ? toAxis(carry.turnRad.unit()) : Quaternion.IDENTITY;
    FixedTurn toAxis = FixedTurn.of(qSegmentAxis);
    FixedTurn fromAxis = FixedTurn.of(qSegmentAxis.conjugate().times(qSegmentUnit));
    FixedTurn mounting = FixedTurn.of(qSegmentUnit);
    return (timeS, out) -> {
      walker.segment(point, timeS, out);
      out.shift(offsetM.x(), offsetM.y(), offsetM.z());
      shift(timeS, out, vra);
      vra[0] = vra[1] = vra[2] = 0;
      carry.share.addTo(timeS, vra);
      if (vra[0] == 0 && vra[1] == 0) {
        out.turnFixed(mounting);
        return;
      }
      for (int axis = 0; axis < 3; axis++) {
        double m = carry.moveM.get(axis);
        out.slide(axis, m * vra[0], m * vra[1], m * vra[2]);
      }
      out.turnFixed(toAxis);
      out.turnZ(angle * vra[0], angle * vra[1], angle * vra[2]);
      out.turnFixed(fromAxis);
    };
  }

  private void shift(double timeS, MovingFrame out, double[] vra) {
    for (int i = 0; i < shifts.length; i++) {
      vra[0] = vra[1] = vra[2] = 0;
      shifts[i].addTo(timeS, vra);
      if (vra[0] == 0 && vra[1] == 0 && vra[2] == 0) {
        continue;
      }
      switch (i) {
        case 3 -> out.turnX(vra[0], vra[1], vra[2]);
        case 4 -> out.turnY(vra[0], vra[1], vra[2]);
        case 5 -> out.turnZ(vra[0], vra[1], vra[2]);
        default -> out.slide(i, vra[0], vra[1], vra[2]);
      }
    }
  }

  private static Quaternion toAxis(Vector3 axis) {
    Vector3 other = Math.abs(axis.x()) < 0.6 ? Vector3.X : Vector3.Y;
    Vector3 x = other.minus(axis.times(axis.dot(other))).unit();
    return Quaternion.fromAxes(x, axis.cross(x), axis);
  }
}
