package steadyturn.analysis.swing.find;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import steadyturn.ingest.sample.Handedness;

/** What an arm does on a practice ground besides full swings; sizes are our choice. */
enum OtherMove {
  /** The club goes to and fro over the ball, and taps the ground. */
  WAGGLES,
  /** Arms swing along the way, in a plane that stands upright. */
  WALKING,
  /** Bending down, pressing a peg into the ground, standing up. */
  TEEING_UP,
  /** Rubbing the club head dry: the forearm rolls to and fro, fast. */
  CLEANING_THE_CLUB,
  /** Back to level and down again at half speed. */
  HALF_MOVES,
  /** A chip: short and slow. */
  CHIPS,
  /** Half way back and through, not fast. */
  PITCHES,
  /** A whole swing before the mirror, slowly. */
  SLOW_SWINGS;

  MadeArm made(long seed) {
    Random random = new Random(seed);
    double lean = this == WALKING ? 0 : in(random, 30, 55);
    return new MadeArm(
        seed % 2 == 0 ? Handedness.RIGHT : Handedness.LEFT,
        lean,
        inPlane(random),
        MadeCourse.none(),
        roll(random),
        this == WAGGLES ? tone(random, 0.5, 1.5) : MadeCourse.none(),
        MadeCourse.none(),
        MadeCourse.none(),
        this == WAGGLES ? t -> Math.abs(t % 1.3 - 0.7) < 0.004 ? 8 : 0 : MadeCourse.none());
  }

  /** In rad, from two bounds in deg. */
  private static double in(Random random, double lowDeg, double highDeg) {
    return Math.toRadians(lowDeg + (highDeg - lowDeg) * random.nextDouble());
  }

  private static DoubleUnaryOperator tone(Random random, double size, double hz) {
    double phase = 6 * random.nextDouble();
    return t -> size * Math.sin(2 * Math.PI * hz * t + phase);
  }

  private DoubleUnaryOperator inPlane(Random random) {
    return switch (this) {
      case WAGGLES -> tone(random, in(random, 8, 20), 1.5);
      case WALKING -> tone(random, in(random, 20, 40), 0.9);
      case TEEING_UP -> strokes(random, 20, 0, 3, 60);
      case CLEANING_THE_CLUB -> tone(random, in(random, 5, 15), 0.6);
      case HALF_MOVES -> strokes(random, 90, 0, 0.9, 280);
      case CHIPS -> strokes(random, 40, 40, 0.6, 280);
      case PITCHES -> strokes(random, 80, 80, 0.8, 440);
      case SLOW_SWINGS -> strokes(random, 120, 120, 1.6, 400);
    };
  }

  private DoubleUnaryOperator roll(Random random) {
    return this == CLEANING_THE_CLUB
        ? tone(random, in(random, 20, 40), 4.5)
        : tone(random, 0.05, 0.4);
  }

  /** Back and through three times; the fastest rate in deg/s. */
  private static MadeCourse strokes(
      Random random, double backDeg, double throughDeg, double backS, double fastDegPerS) {
    MadeCourse course = MadeCourse.from(0, 0);
    for (double t = 1.5; t < 10; t += 3.2) {
      double back = -backDeg * (0.9 + 0.2 * random.nextDouble());
      course.to(t, 0).to(t + backS, Math.toRadians(back));
      // a minimum-jerk movement is 1.875 times as fast as its mean
      double wayS = 1.875 * (throughDeg - back) / fastDegPerS;
      course.to(t + backS + wayS, Math.toRadians(throughDeg));
      course.to(t + backS + wayS + 0.6, Math.toRadians(throughDeg * 0.8));
    }
    return course;
  }
}
