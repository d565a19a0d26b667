package steadyturn.analysis.swing.find;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Recording;

/**
 * A swing drawn at random from a family of movements, with its truth by definition: the takeaway is
 * the last moment before half the way back at which the bone turns away at less than 8 deg/s about
 * the normal of the downswing's plane, the top the last change of that rate from back to forward.
 * Ranges are our choice, wider than what is taught.
 */
final class MadeSwing {

  /** Ways in which people swing. */
  enum Family {
    PLAIN,
    SLOW_ONE_PIECE_START,
    PAUSE_AT_TOP,
    WAGGLE_INTO_TAKEAWAY,
    FORWARD_PRESS,
    LOOP_AT_TOP,
    THREE_QUARTER,
    SLOW_SENIOR,
    FAST_JUNIOR,
    DRIFTING_HIPS
  }

  private static final double STAND_S = 4.5;
  private static final double SLOW_RAD_PER_S = Math.toRadians(8);

  private final Random random;
  private final Family family;
  private final double backRad;
  private final double startS;
  private final double backS;
  private final double turnRoundS;
  private final double impactS;
  private final MadeArm arm;

  MadeSwing(Family family, long seed) {
    this(family, seed, t -> 0);
  }

  /**
   * @param blowG force of the blow over the time since impact, g at the hand
   */
  MadeSwing(Family family, long seed, DoubleUnaryOperator blowG) {
    this.random = new Random(seed);
    this.family = family;
    this.backRad = rad(family == Family.THREE_QUARTER ? in(70, 95) : in(95, 150));
    this.startS = STAND_S + in(0, 0.1);
    this.backS =
        switch (family) {
          case SLOW_ONE_PIECE_START, SLOW_SENIOR -> in(0.9, 1.5);
          case FAST_JUNIOR -> in(0.45, 0.65);
          default -> in(0.6, 1.1);
        };
    double pauseS = family == Family.PAUSE_AT_TOP ? in(0.05, 0.3) : 0;
    this.turnRoundS = startS + backS + pauseS;
    double meanRad = rad(family == Family.SLOW_SENIOR ? in(300, 350) : in(370, 560));
    double downS = backRad / meanRad;
    this.impactS = turnRoundS + downS;
    this.arm =
        new MadeArm(
            seed % 3 == 0 ? Handedness.LEFT : Handedness.RIGHT,
            rad(in(28, 55)),
            plus(inPlane(meanRad, downS), tremble()),
            plus(tilt(downS), tremble()),
            plus(roll(), tremble()),
            cock(),
            turn(),
            t -> 0.02 * Math.sin(0.7 * t),
            t -> blowG.applyAsDouble(t - impactS));
  }

  private double in(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  private static double rad(double deg) {
    return Math.toRadians(deg);
  }

  private static DoubleUnaryOperator plus(DoubleUnaryOperator a, DoubleUnaryOperator b) {
    return t -> a.applyAsDouble(t) + b.applyAsDouble(t);
  }

  /** A standing person: three tones, together about 0.4 deg/s RMS. */
  private DoubleUnaryOperator tremble() {
    double[] hz = {in(0.3, 1), in(1, 3), in(6, 10)};
    double[] phase = {in(0, 6), in(0, 6), in(0, 6)};
    double rate = rad(0.33);
    return t -> {
      double sum = 0;
      for (int k = 0; k < 3; k++) {
        double w = 2 * Math.PI * hz[k];
        sum += rate / w * Math.sin(w * t + phase[k]);
      }
      return sum;
    };
  }

  private MadeCourse inPlane(double meanRadPerS, double downS) {
    double topS = startS + backS;
    MadeCourse course = start();
    double pace = backRad / backS;
    if (family == Family.SLOW_ONE_PIECE_START) {
      double slowS = in(0.3, 0.5) * backS;
      course.via(startS + slowS, -in(0.06, 0.12) * backRad, -in(0.3, 0.6) * pace, -2 * pace);
    } else if (family != Family.PAUSE_AT_TOP) {
      double half = in(0.45, 0.6);
      course.via(startS + half * backS, -in(0.45, 0.6) * backRad, -in(1.4, 1.9) * pace, 0);
    }
    double topBend = in(0.8, 2.2) * meanRadPerS / downS;
    if (family == Family.PAUSE_AT_TOP) {
      course.to(topS, -backRad * in(0.97, 0.995));
      course.via(turnRoundS, -backRad, 0, topBend);
    } else {
      course.via(topS, -backRad, 0, topBend);
    }
    course.via(impactS, rad(in(-4, 6)), in(1.75, 2.1) * meanRadPerS, -rad(in(0, 1500)));
    return course.to(impactS + in(0.35, 0.55), rad(in(100, 160)));
  }

  /** What comes before the movement back. */
  private MadeCourse start() {
    MadeCourse before = MadeCourse.from(0, 0);
    return switch (family) {
      case WAGGLE_INTO_TAKEAWAY ->
          before
              .to(startS - 1.5, 0)
              .to(startS - 1.05, -rad(in(10, 25)))
              .to(startS - 0.75, rad(in(-3, 3)))
              .to(startS - 0.4, -rad(in(8, 20)))
              .via(startS, rad(in(-3, 5)), 0, -rad(in(60, 300)));
      case FORWARD_PRESS ->
          before.to(startS - in(0.35, 0.6), 0).via(startS, rad(in(2, 8)), 0, -rad(in(50, 200)));
      default -> before.to(startS, 0);
    };
  }

  private MadeCourse tilt(double downS) {
    double most = family == Family.LOOP_AT_TOP ? 22 : 8;
    double steeper = rad(in(-most, most));
    return MadeCourse.from(startS, 0)
        .to(startS + in(0.6, 0.95) * backS, steeper)
        .to(turnRoundS + in(0.4, 0.7) * downS, 0)
        .to(impactS, 0)
        .to(impactS + 0.5, rad(in(-15, 15)));
  }

  private MadeCourse roll() {
    return MadeCourse.from(startS + in(0, 0.15), 0)
        .to(turnRoundS - in(0, 0.1), -rad(in(50, 90)))
        .to(impactS - in(0.08, 0.15), -rad(in(40, 90)))
        .to(impactS + in(0.06, 0.12), rad(in(50, 100)))
        .to(impactS + 0.6, rad(in(20, 100)));
  }

  private MadeCourse cock() {
    return MadeCourse.from(startS + in(0, 0.25), 0)
        .to(turnRoundS, rad(in(60, 100)))
        .to(impactS - in(0.09, 0.13), rad(in(60, 100)))
        .to(impactS + 0.03, rad(in(-10, 10)))
        .to(impactS + 0.4, rad(in(40, 90)));
  }

  private DoubleUnaryOperator turn() {
    MadeCourse turn =
        MadeCourse.from(startS + in(-0.05, 0.1), 0)
            .to(turnRoundS - in(0.02, 0.1), -rad(in(35, 55)))
            .via(impactS, rad(in(25, 50)), rad(in(150, 300)), 0)
            .to(impactS + 0.5, rad(in(70, 100)));
    double drift = family == Family.DRIFTING_HIPS ? rad(in(-5, 5)) : 0;
    return t -> turn.applyAsDouble(t) + drift * Math.min(t, startS + 0.5) * (t > 3 ? 1 : 0);
  }

  Recording recording(double rateHz, BodyPoint... points) {
    return arm.recording(impactS + 2.5, rateHz, random.nextLong(), points);
  }

  /** Rate of the bone about the normal of the plane, back negative, deg/s. */
  double rateDegPerS(double t) {
    return Math.toDegrees(arm.azimuthRateRadPerS(t));
  }

  double impactS() {
    return impactS;
  }

  double topS() {
    double t = turnRoundS + 0.6 * (impactS - turnRoundS);
    while (arm.azimuthRateRadPerS(t) > 0) {
      t -= 0.0005;
    }
    return t;
  }

  double takeawayS() {
    double half = startS;
    double t = topS();
    while (t > half && angle(t) < -backRad / 2) {
      t -= 0.0005;
    }
    while (arm.azimuthRateRadPerS(t) < -SLOW_RAD_PER_S) {
      t -= 0.0005;
    }
    return t;
  }

  private double angle(double t) {
    return arm.inPlane().applyAsDouble(t);
  }
}
