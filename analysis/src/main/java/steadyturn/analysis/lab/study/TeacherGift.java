package steadyturn.analysis.lab.study;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.apache.commons.math3.random.RandomGenerator;
import steadyturn.analysis.lab.Draws;
import steadyturn.analysis.lab.SyntheticLesson;
import steadyturn.analysis.lab.truth.LessonTruth;
import steadyturn.analysis.lab.unit.UnitErrors;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * What a teacher can give besides the wear steps, laid over a finished lesson: of errors that are
 * drawn here and known to nothing that is judged.
 */
enum TeacherGift {
  /** The hand unit laid on a ruler between front and back bony point while the player stands. */
  RULER {
    @Override
    SyntheticLesson over(SyntheticLesson lesson, RandomGenerator random) {
      return ruler(lesson, random);
    }
  },
  /** The depth callipered over the worn pelvis unit. */
  WORN_DEPTH {
    @Override
    SyntheticLesson over(SyntheticLesson lesson, RandomGenerator random) {
      return wornDepth(lesson, random);
    }
  };

  /** A bony point is found by touch within so much, mm (1 SD, our assumption). */
  private static final double TOUCH_MM = 5;

  /** A case laid along a ruler by hand, rad (1 SD, our assumption). */
  private static final double LAID_RAD = Math.toRadians(1);

  /** The back dimples lie so far from the middle, mm, and that varies (our assumption). */
  private static final double DIMPLE_ASIDE_MM = 45;

  private static final double DIMPLE_ASIDE_SD_MM = 6;

  /** Mid-hip strays so far from where a regression on the hip bones lays it, mm. */
  private static final double REGRESSION_SD_MM = 6;

  /** From the outer face of a case to its chip, mm: half a case of 10 to 14 mm. */
  private static final double FACE_MM = 6;

  private static final double FACE_SD_MM = 1.5;
  private static final double CALLIPER_SD_MM = 2;

  /** So long a unit is in the teacher's hand before and after it lies, s. */
  private static final double HANDLED_S = 0.3;

  /** The lesson with what the teacher gave. */
  SyntheticLesson to(SyntheticLesson lesson) {
    return over(lesson, Draws.of(lesson.truth().seed(), "gift " + name(), 0));
  }

  abstract SyntheticLesson over(SyntheticLesson lesson, RandomGenerator random);

  private static SyntheticLesson wornDepth(SyntheticLesson lesson, RandomGenerator random) {
    LessonTruth truth = lesson.truth();
    double aheadMm = 1000 * truth.qPelvisUnit().rotate(truth.leverArmUnitM()).x();
    double behindFrontMm = 0.24 * truth.pelvisDepthMm() + 9.9; // Harrington et al. 2007
    double wornMm =
        aheadMm
            + behindFrontMm
            + REGRESSION_SD_MM * random.nextGaussian()
            + FACE_MM
            + FACE_SD_MM * random.nextGaussian()
            + CALLIPER_SD_MM * random.nextGaussian();
    Player p = lesson.recording().player();
    Player measured =
        new Player(
            p.id(),
            p.handed(),
            p.pelvisWidthMm(),
            p.pelvisDepthMm(),
            p.statureMm(),
            OptionalDouble.of(Math.rint(wornMm)));
    Recording r = lesson.recording();
    return new SyntheticLesson(new Recording(r.id(), measured, r.units(), r.marks()), truth);
  }

  /** In the seconds of the quiet stance the hand unit lies on the ruler instead of on the hand. */
  private static SyntheticLesson ruler(SyntheticLesson lesson, RandomGenerator random) {
    Recording r = lesson.recording();
    Mark stance =
        r.marks().stream()
            .filter(mark -> mark.trialType().equals("quiet-stance"))
            .findFirst()
            .orElseThrow();
    Mark tilt = new Mark(stance.onsetS(), stance.durationS(), "tilt", stance.club(), stance.note());
    double middleS = (stance.onsetS() + stance.endS()) / 2;
    Vector3 along = alongRuler(lesson.truth(), middleS, random);
    List<UnitStream> units =
        r.units().stream()
            .map(u -> u.point() == BodyPoint.LEAD_HAND ? laid(u, tilt, along, lesson.truth()) : u)
            .toList();
    List<Mark> marks = Stream.concat(r.marks().stream(), Stream.of(tilt)).toList();
    return new SyntheticLesson(new Recording(r.id(), r.player(), units, marks), lesson.truth());
  }

  /** The ruler's direction from back to front as the unit's x axis feels it, up being 1. */
  private static Vector3 alongRuler(LessonTruth truth, double timeS, RandomGenerator random) {
    double asideMm =
        truth.pelvisWidthMm() / 2 - DIMPLE_ASIDE_MM - DIMPLE_ASIDE_SD_MM * random.nextGaussian();
    double heightMm = Math.sqrt(2) * TOUCH_MM * random.nextGaussian();
    Quaternion qGroundPelvis = truth.path().qGroundPelvis(timeS);
    Vector3 ruler =
        qGroundPelvis.rotate(new Vector3(truth.pelvisDepthMm(), asideMm, heightMm)).unit();
    double slopeRad = Math.asin(ruler.z()) + LAID_RAD * random.nextGaussian();
    double rollRad = LAID_RAD * random.nextGaussian();
    return new Vector3(
        Math.sin(slopeRad),
        Math.cos(slopeRad) * Math.sin(rollRad),
        Math.cos(slopeRad) * Math.cos(rollRad));
  }

  /** The unit's own noise about where it lies; its bias stays in both. */
  private static UnitStream laid(UnitStream hand, Mark tilt, Vector3 upUnit, LessonTruth truth) {
    UnitErrors errors = truth.unit(BodyPoint.LEAD_HAND).orElseThrow().errors();
    int from = hand.indexAt(tilt.onsetS());
    int to = hand.indexAt(tilt.endS());
    int handled = (int) Math.round(HANDLED_S / hand.usualStepS());
    double[][] force = new double[3][];
    double[][] rate = new double[3][];
    for (int axis = 0; axis < 3; axis++) {
      double lies = UnitErrors.G_MPS2 * component(upUnit, axis) + errors.accelBiasMps2()[axis];
      force[axis] = about(hand.accelColumnMps2(axis), from, to, lies, handled);
      rate[axis] =
          about(hand.gyroColumnRadPerS(axis), from, to, errors.gyroBiasRadPerS()[axis], handled);
    }
    return new UnitStream(hand.facts(), hand.timeColumnS(), force, rate);
  }

  private static double component(Vector3 v, int axis) {
    return axis == 0 ? v.x() : axis == 1 ? v.y() : v.z();
  }

  /**
   * A column of which a stretch is replaced by its quick changes about a level; nobody saw the unit
   * being laid there and taken up again.
   */
  private static double[] about(double[] column, int from, int to, double level, int handled) {
    double[] out = column.clone();
    Arrays.fill(out, Math.max(0, from - handled), Math.min(out.length, to + handled), Double.NaN);
    for (int i = from; i < to; i++) {
      // a difference of neighbours holds the noise twice, and next to nothing of the arm's sway
      double quick = (column[i] - column[Math.max(from, i - 1)]) / Math.sqrt(2);
      out[i] = Double.isNaN(column[i]) ? column[i] : level + (Double.isNaN(quick) ? 0 : quick);
    }
    return out;
  }
}
