package steadyturn.analysis.lab;

import java.util.EnumMap;
import java.util.Map;
import java.util.function.DoublePredicate;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import steadyturn.analysis.lab.body.BodyMotion;
import steadyturn.analysis.lab.body.Joint;
import steadyturn.analysis.lab.curve.TimeFunction;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.fusion.rotation.MovingFrame;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;

/**
 * The exact instants of a swing's key positions, from the moving bones, by the definitions of the
 * events. Times in and out are true times, s.
 */
final class EventFinder {

  private static final double STEP_S = 0.001;
  private static final double SLOW_RAD_PER_S = Math.toRadians(8);
  private static final double STILL_RAD_PER_S = Math.toRadians(10);
  private static final double STILL_FOR_S = 0.25;

  /** A bell with its second moment taken out that is this wide halves the power at 5 Hz. */
  private static final double BELL_S = 1.47 / (2 * Math.PI * 5);

  private final BodyMotion body;
  private final PlannedSwing plan;
  private final BodyMotion.Walker walker;
  private final MovingFrame frame = new MovingFrame();
  private final double[] rate = new double[3];
  private final Vector3 normal;

  EventFinder(BodyMotion body, PlannedSwing plan) {
    this.body = body;
    this.plan = plan;
    this.walker = body.walker();
    this.normal = normal();
  }

  Map<SwingEvent, Double> find() {
    Map<SwingEvent, Double> events = new EnumMap<>(SwingEvent.class);
    double impactS = plan.impactS();
    double downS = fastest(this::inPlane, plan.topS(), impactS);
    double topS = last(t -> inPlane(t) <= 0, plan.startS(), downS);
    double takeawayS = last(t -> -inPlane(t) < SLOW_RAD_PER_S, plan.startS() - 2, halfBackS(topS));
    events.put(SwingEvent.ADDRESS, takeawayS - 0.14);
    events.put(SwingEvent.TAKEAWAY, takeawayS);
    events.put(SwingEvent.LEAD_ARM_LEVEL_BACK, first(t -> up(t) > 0, takeawayS, topS));
    events.put(SwingEvent.PELVIS_TURNAROUND, turnaround(topS));
    events.put(SwingEvent.TOP, topS);
    events.put(SwingEvent.LEAD_ARM_LEVEL_DOWN, first(t -> up(t) < 0, topS, impactS));
    events.put(SwingEvent.SHAFT_LEVEL_DOWN, last(t -> shaftUp(t) > 0, topS, impactS));
    events.put(SwingEvent.IMPACT, impactS);
    events.put(SwingEvent.LEAD_ARM_LEVEL_THROUGH, first(t -> up(t) > 0, impactS, plan.holdEndS()));
    events.put(SwingEvent.FINISH, finish());
    events.values().removeIf(t -> t.isNaN());
    return events;
  }

  /** Normal of the plane the lead forearm sweeps from the top to impact, forward positive. */
  private Vector3 normal() {
    Vector3 sum = Vector3.ZERO;
    for (double t = plan.topS(); t < plan.impactS(); t += 2 * STEP_S) {
      sum = sum.plus(sweep(t));
    }
    return sum.unit();
  }

  /** How the forearm's length turns, rad/s in the ground; its turning about itself left out. */
  private Vector3 sweep(double timeS) {
    walker.attitude(BodyPoint.LEAD_FOREARM, timeS, frame);
    frame.rateRadPerS(rate);
    return frame.qGroundFrame().rotate(new Vector3(0, rate[1], rate[2]));
  }

  private double inPlane(double timeS) {
    return sweep(timeS).dot(normal);
  }

  /** When the arm has gone half of its way back. */
  private double halfBackS(double topS) {
    double wayLeft = 0;
    for (double t = plan.startS(); t < topS; t += STEP_S) {
      wayLeft -= inPlane(t) / 2;
    }
    double t = topS;
    while (wayLeft > 0 && t > plan.startS()) {
      t -= STEP_S;
      wayLeft += inPlane(t);
    }
    return t;
  }

  private double up(double timeS) {
    walker.attitude(BodyPoint.LEAD_FOREARM, timeS, frame);
    return frame.xAxis().z();
  }

  private double shaftUp(double timeS) {
    walker.attitude(BodyPoint.CLUB_SHAFT, timeS, frame);
    return frame.xAxis().z();
  }

  /** Where the turn, with what is faster than 5 Hz averaged away, is least. */
  private double turnaround(double topS) {
    TimeFunction turn = body.joint(Joint.TURN);
    double[] bell =
        IntStream.rangeClosed(-20, 20)
            .mapToDouble(i -> i * i / 25.0)
            .map(u2 -> (3 - u2) * Math.exp(-u2 / 2))
            .toArray();
    DoubleUnaryOperator rising =
        t -> {
          double sum = 0;
          for (int i = -20; i <= 20; i++) {
            sum += bell[i + 20] * turn.rateAt(t + i * BELL_S / 5);
          }
          return sum;
        };
    double openingS = fastest(rising, topS - 0.1, plan.impactS() + 0.1);
    return last(t -> rising.applyAsDouble(t) <= 0, plan.startS(), openingS);
  }

  /** From when on arm and pelvis keep still for a while; NaN where they do not. */
  private double finish() {
    double stillS = Double.NaN;
    for (double t = plan.impactS() + 0.1; t < plan.holdEndS(); t += 2 * STEP_S) {
      if (sweep(t).norm() > STILL_RAD_PER_S
          || Math.abs(body.joint(Joint.TURN).rateAt(t)) > STILL_RAD_PER_S) {
        stillS = Double.NaN;
      } else if (Double.isNaN(stillS)) {
        stillS = t;
      } else if (t - stillS > STILL_FOR_S) {
        return stillS;
      }
    }
    return Double.NaN;
  }

  private static double fastest(DoubleUnaryOperator speed, double fromS, double toS) {
    double bestS = fromS;
    double best = Double.NEGATIVE_INFINITY;
    for (double t = fromS; t <= toS; t += 2 * STEP_S) {
      double now = speed.applyAsDouble(t);
      bestS = now > best ? t : bestS;
      best = Math.max(best, now);
    }
    return bestS;
  }

  /** First instant at which a condition becomes true; NaN if it never does. */
  private static double first(DoublePredicate condition, double fromS, double toS) {
    if (condition.test(fromS)) {
      return Double.NaN;
    }
    for (double t = fromS + STEP_S; t <= toS; t += STEP_S) {
      if (condition.test(t)) {
        return halve(condition, t - STEP_S, t);
      }
    }
    return Double.NaN;
  }

  /** Last instant up to which a condition was true; NaN if it never was. */
  private static double last(DoublePredicate condition, double fromS, double toS) {
    for (double t = toS; t > fromS; t -= STEP_S) {
      if (condition.test(t)) {
        return halve(condition.negate(), t, t + STEP_S);
      }
    }
    return Double.NaN;
  }

  private static double halve(DoublePredicate condition, double beforeS, double afterS) {
    double low = beforeS;
    double high = afterS;
    for (int i = 0; i < 40; i++) {
      double middle = 0.5 * (low + high);
      if (condition.test(middle)) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return high;
  }
}
