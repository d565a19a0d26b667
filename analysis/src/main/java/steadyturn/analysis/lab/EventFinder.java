package steadyturn.analysis.lab;

import java.util.EnumMap;
import java.util.Map;
import java.util.function.DoublePredicate;
import java.util.function.DoubleUnaryOperator;
import steadyturn.analysis.lab.body.BodyMotion;
import steadyturn.analysis.lab.body.Joint;
import steadyturn.analysis.lab.curve.TimeFunction;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.fusion.rotation.MovingFrame;
import steadyturn.ingest.sample.BodyPoint;

/**
 * The exact instants of a swing's key positions, from the true joints, by the definitions of the
 * events. Times in and out are true times, s.
 */
final class EventFinder {

  private static final double STEP_S = 0.001;
  private static final double SLOW_RAD_PER_S = Math.toRadians(8);
  private static final double FAST_RAD_PER_S = Math.toRadians(25);
  private static final double STILL_RAD_PER_S = Math.toRadians(9);

  private final BodyMotion body;
  private final TimeFunction plannedTurn;
  private final PlannedSwing plan;
  private final BodyMotion.Walker walker;
  private final MovingFrame frame = new MovingFrame();

  /**
   * @param plannedTurn pelvis turn without sway and wobble: what remains of it below 5 Hz
   */
  EventFinder(BodyMotion body, TimeFunction plannedTurn, PlannedSwing plan) {
    this.body = body;
    this.plannedTurn = plannedTurn;
    this.plan = plan;
    this.walker = body.walker();
  }

  Map<SwingEvent, Double> find() {
    Map<SwingEvent, Double> events = new EnumMap<>(SwingEvent.class);
    TimeFunction arm = body.joint(Joint.ARM);
    double topS = first(t -> arm.rateAt(t) > 0, plan.topS() - 0.15, plan.impactS());
    double takeawayS = takeaway(arm, topS);
    events.put(SwingEvent.ADDRESS, takeawayS - 0.14);
    events.put(SwingEvent.TAKEAWAY, takeawayS);
    double level = Math.PI / 2;
    events.put(SwingEvent.LEAD_ARM_LEVEL_BACK, first(t -> arm.at(t) < -level, takeawayS, topS));
    events.put(
        SwingEvent.PELVIS_TURNAROUND,
        first(t -> plannedTurn.rateAt(t) > 0, plan.topS() - 0.3, plan.impactS()));
    events.put(SwingEvent.TOP, topS);
    events.put(
        SwingEvent.LEAD_ARM_LEVEL_DOWN, first(t -> arm.at(t) > -level, topS, plan.impactS()));
    events.put(SwingEvent.SHAFT_LEVEL_DOWN, shaftLevel(topS));
    events.put(SwingEvent.IMPACT, plan.impactS());
    events.put(
        SwingEvent.LEAD_ARM_LEVEL_THROUGH,
        first(t -> arm.at(t) > level, plan.impactS(), plan.endS()));
    events.put(SwingEvent.FINISH, finish(arm));
    events.values().removeIf(t -> t.isNaN());
    return events;
  }

  /** The last moment at which the arm turns away at less than 8 deg/s. */
  private double takeaway(TimeFunction arm, double topS) {
    DoubleUnaryOperator rate = t -> -arm.rateAt(t);
    double fastS = first(t -> rate.applyAsDouble(t) > FAST_RAD_PER_S, plan.startS() - 0.02, topS);
    return last(t -> rate.applyAsDouble(t) < SLOW_RAD_PER_S, plan.startS() - 0.1, fastS);
  }

  private double shaftLevel(double topS) {
    return last(t -> shaftUp(t) > 0, topS, plan.impactS());
  }

  private double shaftUp(double timeS) {
    walker.segment(BodyPoint.CLUB_SHAFT, timeS, frame);
    return frame.xAxis().z();
  }

  /** Arm and pelvis have stopped; where the finish is not held, the arm turns back. */
  private double finish(TimeFunction arm) {
    double back = first(t -> arm.rateAt(t) < 0, plan.impactS() + 0.2, plan.holdEndS());
    DoublePredicate moving =
        t ->
            Math.abs(arm.rateAt(t)) > STILL_RAD_PER_S
                || Math.abs(plannedTurn.rateAt(t)) > STILL_RAD_PER_S;
    double still = last(moving, plan.impactS(), Math.min(plan.holdEndS(), plan.endS()));
    return Double.isNaN(back) ? still : Math.min(still, back);
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
