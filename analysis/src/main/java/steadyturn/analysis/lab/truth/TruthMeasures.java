package steadyturn.analysis.lab.truth;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.pelvis.SmallestCircle;
import steadyturn.analysis.swing.SwingEvent;

/**
 * True values of the measures of one swing, from the noise-free motion by the definitions of
 * docs/measures.md. Written apart from the rooms that estimate them. Wrist angles at a key position
 * are absolute where the lesson has a neutral pose, else changes since address; what is kept is a
 * share of changes since address.
 */
final class TruthMeasures {

  private static final double STEP_S = 0.001;
  private static final double RELEASED_RAD = Math.toRadians(15);
  private static final double LEAST_TURN_DEG = 15;
  private static final double LEAST_TURN_FOR_CENTRE_DEG = 20;

  private final SwingTruth swing;
  private final double hipHalfDistanceMm;
  private final Map<SwingEvent, Double> events;
  private final List<TrueMeasure> out = new ArrayList<>();

  private TruthMeasures(SwingTruth swing, double hipHalfDistanceMm) {
    this.swing = swing;
    this.hipHalfDistanceMm = hipHalfDistanceMm;
    this.events = swing.eventsS();
  }

  static List<TrueMeasure> of(SwingTruth swing, double hipHalfDistanceMm) {
    TruthMeasures measures = new TruthMeasures(swing, hipHalfDistanceMm);
    measures.events.forEach(measures::pelvisAt);
    measures.circle();
    measures.wrist();
    measures.tempoAndOrder();
    return List.copyOf(measures.out);
  }

  private void add(Measure measure, String at, double value) {
    if (!Double.isNaN(value)) {
      out.add(new TrueMeasure(measure, at, value));
    }
  }

  private double timeS(SwingEvent event) {
    return events.getOrDefault(event, Double.NaN);
  }

  private void pelvisAt(SwingEvent event, double timeS) {
    PelvisTruth p = swing.at(timeS);
    String at = event.word();
    double turnDeg = Math.toDegrees(p.turnRad());
    double slideMm = 1000 * p.slideM();
    add(Measure.PELVIS_TURN, at, turnDeg);
    add(Measure.PELVIS_SLIDE, at, slideMm);
    add(Measure.PELVIS_THRUST, at, 1000 * p.thrustM());
    add(Measure.PELVIS_LIFT, at, 1000 * p.liftM());
    add(Measure.PELVIS_TILT, at, Math.toDegrees(p.tiltRad() + swing.address().tiltRad()));
    add(
        Measure.PELVIS_SIDETILT,
        at,
        Math.toDegrees(p.sideTiltRad() + swing.address().sideTiltRad()));
    double turnMm = hipHalfDistanceMm * Math.abs(p.turnRad());
    add(Measure.PELVIS_TURN_SHARE, at, 100 * turnMm / (turnMm + Math.abs(slideMm)));
    if (Math.abs(turnDeg) >= LEAST_TURN_DEG) {
      add(Measure.PELVIS_SLIDE_PER_TURN, at, slideMm / turnDeg);
      add(Measure.PELVIS_TURN_TO_SLIDE, at, Math.abs(turnDeg) / Math.abs(slideMm / 10));
    }
    if (Math.abs(turnDeg) >= LEAST_TURN_FOR_CENTRE_DEG) {
      double dy = -1000 * p.thrustM();
      double cot = 1 / Math.tan(p.turnRad() / 2);
      add(Measure.PELVIS_CENTRE_ALONG, at, (slideMm - cot * dy) / 2);
      add(Measure.PELVIS_CENTRE_ACROSS, at, -(dy + cot * slideMm) / 2);
      double chordMm = 2 * Math.abs(Math.sin(p.turnRad() / 2));
      add(Measure.PELVIS_CENTRE_DISTANCE, at, Math.hypot(slideMm, dy) / chordMm);
    }
  }

  private void circle() {
    double fromS = timeS(SwingEvent.TAKEAWAY);
    double toS = timeS(SwingEvent.IMPACT);
    int n = Math.max(1, (int) Math.ceil((toS - fromS) / STEP_S) + 1);
    double[] x = new double[n];
    double[] y = new double[n];
    for (int i = 0; i < n; i++) {
      PelvisTruth p = swing.at(Math.min(toS, fromS + i * STEP_S));
      x[i] = 1000 * p.slideM();
      y[i] = 1000 * p.thrustM();
    }
    add(Measure.PELVIS_CIRCLE, "", SmallestCircle.radius(x, y));
  }

  private void wrist() {
    double zeroCockRad = swing.absoluteWrist() ? 0 : swing.addressCockRad();
    double zeroFlexionRad = swing.absoluteWrist() ? 0 : swing.addressFlexionRad();
    events.forEach(
        (event, timeS) -> {
          add(Measure.WRIST_COCK, event.word(), Math.toDegrees(swing.cockRad(timeS) - zeroCockRad));
          add(
              Measure.WRIST_FLEXION,
              event.word(),
              Math.toDegrees(swing.flexionRad(timeS) - zeroFlexionRad));
        });
    double topS = timeS(SwingEvent.TOP);
    double impactS = timeS(SwingEvent.IMPACT);
    double plateauRad = plateauRad(topS, impactS);
    double releaseS = releaseS(topS, impactS, plateauRad);
    add(Measure.WRIST_RELEASE, "", 1000 * (impactS - releaseS));
    add(Measure.WRIST_RELEASE_PART, "", 100 * (releaseS - topS) / (impactS - topS));
    kept(SwingEvent.LEAD_ARM_LEVEL_DOWN, plateauRad);
    kept(SwingEvent.SHAFT_LEVEL_DOWN, plateauRad);
    double fastestS = highest(t -> -swing.cockRateRadPerS(t), topS, impactS);
    add(Measure.WRIST_RATE, "", Math.toDegrees(-swing.cockRateRadPerS(fastestS)));
    add(Measure.WRIST_RATE_TIME, "", 1000 * (impactS - fastestS));
    double mostS = highest(swing::cockRad, timeS(SwingEvent.TAKEAWAY), impactS);
    add(Measure.WRIST_COCK_MAX, "", Math.toDegrees(swing.cockRad(mostS) - zeroCockRad));
  }

  private void kept(SwingEvent event, double plateauRad) {
    if (!Double.isFinite(timeS(event))) {
      return; // a short swing need not pass there
    }
    double zeroRad = swing.addressCockRad();
    double cockRad = swing.cockRad(timeS(event));
    add(Measure.WRIST_KEPT, event.word(), 100 * (cockRad - zeroRad) / (plateauRad - zeroRad));
  }

  /** 90th percentile of the cock from the top to 40 ms before impact. */
  private double plateauRad(double topS, double impactS) {
    int n = (int) Math.max(2, Math.floor((impactS - 0.04 - topS) / STEP_S));
    double[] cock = new double[n];
    for (int i = 0; i < n; i++) {
      cock[i] = swing.cockRad(topS + (impactS - 0.04 - topS) * i / (n - 1));
    }
    Arrays.sort(cock);
    double place = 0.9 * (n - 1);
    int below = (int) place;
    double rest = place - below;
    return cock[below] * (1 - rest) + cock[Math.min(n - 1, below + 1)] * rest;
  }

  /** Last fall through the plateau less 15 deg; NaN where it never falls so far. */
  private double releaseS(double topS, double impactS, double plateauRad) {
    double bound = plateauRad - RELEASED_RAD;
    if (swing.cockRad(impactS) >= bound) {
      return Double.NaN;
    }
    double t = impactS;
    while (t > topS && swing.cockRad(t) < bound) {
      t -= STEP_S;
    }
    double low = t;
    double high = t + STEP_S;
    for (int i = 0; i < 30; i++) {
      double middle = (low + high) / 2;
      if (swing.cockRad(middle) < bound) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return high;
  }

  private void tempoAndOrder() {
    double takeawayS = timeS(SwingEvent.TAKEAWAY);
    double topS = timeS(SwingEvent.TOP);
    double impactS = timeS(SwingEvent.IMPACT);
    add(Measure.TEMPO_BACK, "", topS - takeawayS);
    add(Measure.TEMPO_DOWN, "", impactS - topS);
    add(Measure.TEMPO_RATIO, "", (topS - takeawayS) / (impactS - topS));
    double armS = highest(swing::armRateRadPerS, topS, impactS);
    add(Measure.ARM_PEAK, "", 1000 * (impactS - armS));
    add(Measure.ORDER_ARM, "", 1000 * (impactS - armS));
    double pelvisS = highest(swing::turnRateRadPerS, topS - 0.1, impactS + 0.05);
    add(Measure.ORDER_PELVIS, "", 1000 * (impactS - pelvisS));
    double handS = highest(swing::handRateRadPerS, topS, impactS);
    add(Measure.ORDER_HAND, "", 1000 * (impactS - handS));
  }

  /** Where a function is highest, by a parabola through the three points around. */
  private static double highest(DoubleUnaryOperator f, double fromS, double toS) {
    double bestS = fromS;
    double best = f.applyAsDouble(fromS);
    for (double t = fromS + STEP_S; t <= toS; t += STEP_S) {
      double value = f.applyAsDouble(t);
      if (value > best) {
        best = value;
        bestS = t;
      }
    }
    double before = f.applyAsDouble(bestS - STEP_S);
    double after = f.applyAsDouble(bestS + STEP_S);
    double bend = before - 2 * best + after;
    double shift = bend < 0 ? 0.5 * (before - after) / bend : 0;
    return Math.min(toS, bestS + STEP_S * Math.max(-1, Math.min(1, shift)));
  }
}
