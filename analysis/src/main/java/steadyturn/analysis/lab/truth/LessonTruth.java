package steadyturn.analysis.lab.truth;

import java.util.List;
import java.util.Optional;
import steadyturn.analysis.lab.unit.UnitClock;
import steadyturn.fusion.rotation.MovingFrame;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;

/**
 * What is true of a simulated lesson.
 *
 * @param handed side the player swings from; poses below are those of this player
 * @param qPelvisUnit true mounting of the pelvis unit: turns unit axes into anatomical pelvis axes
 * @param leverArmUnitM mid-hip from the pelvis unit, in unit axes, m
 * @param standingTiltRad forward tilt of the anatomical pelvis axes in the quiet stance
 * @param aimRad hip line of this player's usual address against square, open positive
 * @param seed the seed it was drawn with
 * @param path the pelvis in the ground at any instant
 */
public record LessonTruth(
    long seed,
    Handedness handed,
    double pelvisWidthMm,
    double pelvisDepthMm,
    Quaternion qPelvisUnit,
    Vector3 leverArmUnitM,
    double standingTiltRad,
    double aimRad,
    List<UnitTruth> units,
    List<SwingTruth> swings,
    PelvisPath path) {

  public LessonTruth {
    units = List.copyOf(units);
    swings = List.copyOf(swings);
  }

  public Optional<UnitTruth> unit(BodyPoint point) {
    return units.stream().filter(u -> u.point() == point).findFirst();
  }

  /** The true pelvis in the ground. Instants are on the recording's common time axis. */
  public static final class PelvisPath {
    private final steadyturn.analysis.lab.body.BodyMotion body;
    private final UnitClock clock;
    private final boolean mirrored;

    public PelvisPath(
        steadyturn.analysis.lab.body.BodyMotion body, UnitClock clock, boolean mirrored) {
      this.body = body;
      this.clock = clock;
      this.mirrored = mirrored;
    }

    private MovingFrame at(double timeS) {
      MovingFrame frame = new MovingFrame();
      body.walker().pelvis(clock.trueS(timeS), frame);
      return frame;
    }

    /** Attitude of the anatomical pelvis axes. */
    public Quaternion qGroundPelvis(double timeS) {
      return mirror(at(timeS).qGroundFrame(), mirrored);
    }

    /** Place of mid-hip, m. */
    public Vector3 midHipM(double timeS) {
      return mirror(at(timeS).placeM(), mirrored);
    }

    /** Velocity of mid-hip, m/s. */
    public Vector3 velocityMps(double timeS) {
      return mirror(at(timeS).velocityMps(), mirrored);
    }
  }

  /** Mirror in the x-z plane, both frames of the rotation mirrored. */
  public static Quaternion mirror(Quaternion q, boolean mirrored) {
    return mirrored ? q.mirroredInXz() : q;
  }

  /** Mirror in the x-z plane. */
  public static Vector3 mirror(Vector3 v, boolean mirrored) {
    return mirrored ? new Vector3(v.x(), -v.y(), v.z()) : v;
  }
}
