package steadyturn.fusion.orientation;

import java.util.Arrays;
import java.util.Random;
import java.util.function.DoubleFunction;
import steadyturn.fusion.orientation.LivelyMotion.Rests;
import steadyturn.fusion.orientation.LivelyMotion.Spline;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** Draws a movement of some liveliness and a unit with errors, and what the unit shows of it. */
final class LivelyTrial {

  private static final double LENGTH_S = 70;
  private static final double FULL_ACCEL = 16 * 9.80665;
  private static final double FULL_RATE = Math.toRadians(2000);

  /**
   * A kind of trial.
   *
   * @param peakG largest acceleration of the movement, g
   * @param rateHz samples a second
   * @param noise factor on the unit's noise
   * @param errors factor on its bias, bias walk, scale, cross-talk and g-sensitivity
   * @param wayFactor 1: movements of a hand or an arm; more: wider ones, up to a run
   * @param rests whether it rests before and in between
   */
  record Kind(
      double peakG, double rateHz, double noise, double errors, double wayFactor, boolean rests) {}

  private final Kind kind;
  private final Random random;
  private final Rests rests;
  private final LivelyMotion motion;

  private LivelyTrial(Kind kind, long seed) {
    this.kind = kind;
    random = new Random(seed);
    rests = drawRests();
    motion = drawMotion();
  }

  static BroadTrial draw(Kind kind, long seed) {
    return new LivelyTrial(kind, seed).trial(kind + " " + seed);
  }

  private Rests drawRests() {
    if (!kind.rests) {
      return new Rests(new double[0], new double[0]);
    }
    double first = 25 + 10 * random.nextDouble();
    double second = 48 + 10 * random.nextDouble();
    return new Rests(new double[] {-9, first, second}, new double[] {3, first + 2.5, second + 2.5});
  }

  private LivelyMotion drawMotion() {
    double peak = kind.peakG * 9.81;
    double peakRate = Math.toRadians(300 * kind.peakG * (0.5 + random.nextDouble()));
    peakRate = Math.min(peakRate + Math.toRadians(50), Math.toRadians(1900));
    double knotS = 0.12 + 0.28 * random.nextDouble();
    Spline[] angle = LivelyMotion.draw(random, knotS, LENGTH_S, rests);
    LivelyMotion turning = new LivelyMotion(angle, still(), Vector3.ZERO);
    double scale = 1;
    for (int round = 0; round < 4; round++) {
      double factor = peakRate / peak(turning::rateRadPerS);
      scale *= factor;
      double by = scale;
      Spline[] scaled = Arrays.stream(angle).map(s -> s.times(by)).toArray(Spline[]::new);
      turning = new LivelyMotion(scaled, still(), Vector3.ZERO);
      if (round == 3) {
        angle = scaled;
      }
    }
    // how much of the peak is turning about a distant point: a hand that shakes or an arm that
    // swings
    double share = random.nextBoolean() ? 0.8 : 0.1;
    Vector3 way = new Vector3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian());
    way = way.times(1 / way.norm());
    LivelyMotion arm = new LivelyMotion(angle, still(), way);
    double armM = Math.min(0.9, share * peak / peak(arm::accelMps2));
    double restOfPeak = peak - armM * peak(arm::accelMps2);
    double wayM = kind.wayFactor * (0.1 + 1.1 * random.nextDouble() * random.nextDouble());
    double knotOfPlaceS = Math.max(0.08, Math.min(1.5, Math.sqrt(3 * wayM / restOfPeak)));
    Spline[] place = LivelyMotion.draw(random, knotOfPlaceS, LENGTH_S, rests);
    LivelyMotion moving = new LivelyMotion(still(), place, Vector3.ZERO);
    double grow = restOfPeak / peak(moving::accelMps2);
    place = Arrays.stream(place).map(s -> s.times(grow)).toArray(Spline[]::new);
    return new LivelyMotion(angle, place, way.times(armM));
  }

  private static Spline[] still() {
    Spline zero = new Spline(1000, new double[8]);
    return new Spline[] {zero, zero, zero};
  }

  private static double peak(DoubleFunction<Vector3> of) {
    double peak = 0;
    for (double t = 0; t < LENGTH_S; t += 0.01) {
      peak = Math.max(peak, of.apply(t).norm());
    }
    return peak;
  }

  private BroadTrial trial(String name) {
    double dt = 1 / kind.rateHz;
    int n = (int) (LENGTH_S * kind.rateHz);
    // a unit shows the value at the instant, the mean of its step, or of its own low-pass; that
    // delay is no filter's to find, so truth is told where the mean of a step would stand
    double[] windows = {0, dt, 0.002 + 0.006 * random.nextDouble()};
    double windowS = windows[random.nextInt(3)];
    double lateS = 0.5 * (dt - windowS);
    LivelyChip gyro = LivelyChip.gyro(random, kind);
    LivelyChip accel = LivelyChip.accel(random, kind);
    double[] time = new double[n];
    double[][] force = new double[3][n];
    double[][] rate = new double[3][n];
    double[][] truth = new double[4][n];
    boolean[] moving = new boolean[n];
    for (int i = 0; i < n; i++) {
      time[i] = i * dt;
      Vector3 f = Vector3.ZERO;
      Vector3 w = Vector3.ZERO;
      for (int k = 0; k < 5; k++) {
        double at = time[i] - windowS * (k + 0.5) / 5;
        f = f.plus(motion.forceMps2(at).times(0.2));
        w = w.plus(motion.rateRadPerS(at).times(0.2));
      }
      Vector3 showsRate = gyro.shows(w, f, dt, FULL_RATE);
      Vector3 showsForce = accel.shows(f, Vector3.ZERO, dt, FULL_ACCEL);
      Quaternion q = motion.qEarthUnit(time[i] + lateS);
      double[] parts = {q.w(), q.x(), q.y(), q.z()};
      for (int c = 0; c < 4; c++) {
        truth[c][i] = parts[c];
      }
      for (int axis = 0; axis < 3; axis++) {
        rate[axis][i] = showsRate.get(axis);
        force[axis][i] = showsForce.get(axis);
      }
      moving[i] = !rests.at(time[i]);
    }
    UnitFacts facts =
        new UnitFacts(BodyPoint.LEAD_HAND, "", kind.rateHz, FULL_ACCEL, FULL_RATE, false);
    return new BroadTrial(name, new UnitStream(facts, time, force, rate), truth, moving);
  }
}
