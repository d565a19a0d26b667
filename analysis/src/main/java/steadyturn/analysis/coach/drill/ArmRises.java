package steadyturn.analysis.coach.drill;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.coach.drill.ArmRise.At;
import steadyturn.fusion.filter.RestDetectorSettings;
import steadyturn.fusion.filter.kalman.KalmanSettings;
import steadyturn.fusion.orientation.OrientationMethod;
import steadyturn.fusion.orientation.OrientationRun;
import steadyturn.fusion.orientation.OrientationTrack;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.wrist.WristAlignment;
import steadyturn.ingest.sample.UnitStream;

/**
 * Finds rises of the lead arm at any speed: it hangs, goes up away from the target to about level
 * or higher, and comes down again in a plane that leans like that of a swing.
 */
final class ArmRises {

  private static final double STEP_S = 0.01;

  /** Our choice: an arm at address hangs lower than this, an arm half way back is higher. */
  private static final double HANGING_RAD = Math.toRadians(-35);

  /** Our choice: level within what a person takes for level. */
  private static final double ABOUT_LEVEL_RAD = Math.toRadians(-20);

  /** Our choice: the arm crosses level only where it rose past it by more than the error of it. */
  private static final double PAST_LEVEL_RAD = Math.toRadians(5);

  /** Our choice: wide about the lean of a swing plane, as for full swings. */
  private static final double LEAST_LEAN = Math.sin(Math.toRadians(8));

  private static final double MOST_LEAN = Math.sin(Math.toRadians(80));

  /** The plane is that of the last part of the way down, s. */
  private static final double PLANE_S = 0.15;

  /** The last moment slower than this is the start of the movement, as for full swings. */
  private static final double LOW_RAD_PER_S = Math.toRadians(8);

  /** What is faster than this moves; how soon after the start tells how sure that is. */
  private static final double HIGH_RAD_PER_S = Math.toRadians(25);

  /** Our choice: longer than any rehearsal from leaving the address to coming back. */
  private static final double LONGEST_S = 8;

  /** Our choice: an arm that waits trembles by as much. */
  private static final double TREMBLE_RAD_PER_S = Math.toRadians(2);

  /** Sway, an arm that hung askew in its pose, and the filter: our assumption. */
  private static final double LEVEL_SD_RAD = Math.toRadians(2);

  /** Hands lead or lag by 8 deg at a ball that is not there, as for full swings. */
  private static final double BALL_SD_RAD = Math.toRadians(8);

  private static final double SLOWEST_RAD_PER_S = Math.toRadians(30);
  private static final double BACK_WITHIN_S = 2.5;

  private final double startS;
  private final Vector3[] bone;
  private final double levelSdRad;
  private final int handSign;

  private ArmRises(OrientationTrack track, Vector3 longAxisUnit, double sdRad, int handSign) {
    this.startS = track.timeS()[0];
    int n = (int) Math.floor((track.timeS()[track.size() - 1] - startS) / STEP_S) + 1;
    this.bone = new Vector3[n];
    for (int i = 0; i < n; i++) {
      bone[i] = track.qEarthUnitAt(timeS(i)).rotate(longAxisUnit);
    }
    this.levelSdRad = Math.hypot(LEVEL_SD_RAD, sdRad);
    this.handSign = handSign;
  }

  static List<ArmRise> of(UnitStream forearm, WristAlignment alignment, int handSign) {
    KalmanSettings worn = KalmanSettings.with(RestDetectorSettings.worn());
    OrientationTrack track = new OrientationRun(worn).run(forearm, OrientationMethod.OFFLINE);
    Vector3 longAxis = alignment.qForearmUnitForearm().rotate(Vector3.X);
    return new ArmRises(track, longAxis, alignment.longAxisSdRad(), handSign).find();
  }

  private double timeS(int i) {
    return startS + i * STEP_S;
  }

  private double elevationRad(int i) {
    return Math.asin(Math.max(-1, Math.min(1, bone[i].z())));
  }

  private List<ArmRise> find() {
    List<ArmRise> found = new ArrayList<>();
    int from = -1;
    double highest = 0;
    for (int i = 1; i < bone.length - 1; i++) {
      boolean hangs = elevationRad(i) < HANGING_RAD;
      if (from >= 0 && hangs) {
        if (highest > ABOUT_LEVEL_RAD && timeS(i) - timeS(from) < LONGEST_S) {
          rise(from, i).ifPresent(found::add);
        }
        from = -1;
      } else if (from < 0 && !hangs && elevationRad(i - 1) < HANGING_RAD) {
        from = i;
        highest = elevationRad(i);
      }
      highest = Math.max(highest, elevationRad(i));
    }
    return found;
  }

  /** Reads the rise between two moments at which the arm hangs; empty where it is no swing back. */
  private Optional<ArmRise> rise(int from, int to) {
    Vector3 normal = Vector3.ZERO;
    for (int i = Math.max(1, to - (int) (PLANE_S / STEP_S)); i < to; i++) {
      normal = normal.plus(bone[i - 1].cross(bone[i + 1]));
    }
    double lean = handSign * normal.unit().z();
    if (!(lean > LEAST_LEAN && lean < MOST_LEAN)) {
      return Optional.empty();
    }
    Vector3 axis = normal.unit();
    int top = to - 1;
    while (top > from && rateRadPerS(top, axis) > 0) {
      top--;
    }
    Optional<At> takeaway = takeaway(from);
    if (takeaway.isEmpty() || top <= from) {
      return Optional.empty();
    }
    At turnsRound = turnsRound(top, axis);
    return Optional.of(
        new ArmRise(
            takeaway.get(), turnsRound, levelDown(top, to), back(to, takeaway.get().timeS())));
  }

  /** Where the rate passes zero after sample {@code top}. */
  private At turnsRound(int top, Vector3 axis) {
    double before = rateRadPerS(top, axis);
    double slope = (rateRadPerS(top + 1, axis) - before) / STEP_S;
    return new At(
        timeS(top) - before / slope,
        Math.max(STEP_S / 2, TREMBLE_RAD_PER_S / Math.max(slope, 0.1)));
  }

  private double rateRadPerS(int i, Vector3 normal) {
    return bone[i - 1].cross(bone[i + 1]).dot(normal) / (2 * STEP_S);
  }

  private double speedRadPerS(int i) {
    return bone[i + 1].minus(bone[i - 1]).norm() / (2 * STEP_S);
  }

  /** The line through two speeds, back to zero; empty where the arm never was that slow. */
  private Optional<At> takeaway(int from) {
    int high = from;
    while (high > 1 && speedRadPerS(high) > HIGH_RAD_PER_S) {
      high--;
    }
    int low = high;
    while (low > 1 && speedRadPerS(low) > LOW_RAD_PER_S) {
      low--;
    }
    if (low <= 1 || elevationRad(low) > HANGING_RAD) {
      return Optional.empty();
    }
    double slope = (HIGH_RAD_PER_S - LOW_RAD_PER_S) / Math.max(STEP_S, timeS(high) - timeS(low));
    return Optional.of(new At(timeS(low), Math.hypot(STEP_S, TREMBLE_RAD_PER_S / slope)));
  }

  private Optional<At> levelDown(int top, int to) {
    int level = to;
    while (level > top && elevationRad(level) < 0) {
      level--;
    }
    double highest = 0;
    for (int i = top; i <= level; i++) {
      highest = Math.max(highest, elevationRad(i));
    }
    if (level <= top || highest < PAST_LEVEL_RAD) {
      return Optional.empty();
    }
    double before = elevationRad(level);
    double slope = (before - elevationRad(level + 1)) / STEP_S;
    return Optional.of(new At(timeS(level) + before / slope, levelSdRad / slope));
  }

  /** Where a ball would be: nearest to the address while the arm moves on. */
  private At back(int to, double takeawayS) {
    Vector3 address = bone[Math.max(0, (int) ((takeawayS - startS) / STEP_S))];
    int best = to;
    int last = Math.min(bone.length - 2, to + (int) (BACK_WITHIN_S / STEP_S));
    for (int i = to; i <= last && speedRadPerS(i) > HIGH_RAD_PER_S; i++) {
      best = bone[i].dot(address) > bone[best].dot(address) ? i : best;
    }
    double speed = Math.max(SLOWEST_RAD_PER_S, speedRadPerS(Math.min(best, bone.length - 2)));
    return new At(timeS(best), BALL_SD_RAD / speed);
  }
}
