package steadyturn.analysis.limits;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * When a club was swung, whatever the units say of side and direction: of the swings found, or,
 * where none could be found because something is wrong, of the fast moments after a still one.
 */
record Stroke(double takeawayS, double topS, double impactS) {

  private static final int MOST = 12;

  /** A stroke's arm comes above this, rad/s; our choice, as the finder's. */
  private static final double FAST_RAD_PER_S = Math.toRadians(500);

  private static final double SAME_S = 3;

  /** A hand may be fast on the way back already: the fastest moment comes within this after it. */
  private static final double PEAK_WITHIN_S = 1.3;

  private static final double TOP_FROM_S = 0.6;
  private static final double TOP_TO_S = 0.12;

  /** Still is slower than this for so long, not longer ago than that. */
  private static final double STILL_RAD_PER_S = Math.toRadians(15);

  private static final double STILL_S = 0.5;
  private static final double LONGEST_S = 3.5;

  /** Of some swings that were found, spread over them. */
  static List<Stroke> of(List<Swing> swings) {
    return some(all(swings));
  }

  /** Of all swings that were found. */
  static List<Stroke> all(List<Swing> swings) {
    return swings.stream().flatMap(Stroke::of).toList();
  }

  private static List<Stroke> some(List<Stroke> all) {
    int every = 1 + (all.size() - 1) / MOST;
    return IntStream.range(0, all.size()).filter(i -> i % every == 0).mapToObj(all::get).toList();
  }

  private static Stream<Stroke> of(Swing swing) {
    Optional<Double> takeawayS = swing.timeS(SwingEvent.TAKEAWAY);
    Optional<Double> topS = swing.timeS(SwingEvent.TOP);
    Optional<Double> impactS = swing.timeS(SwingEvent.IMPACT);
    return takeawayS.isPresent() && topS.isPresent() && impactS.isPresent()
        ? Stream.of(new Stroke(takeawayS.get(), topS.get(), impactS.get()))
        : Stream.empty();
  }

  /** What may be strokes, by the fastest unit, whatever it is called. */
  static List<Stroke> fast(Recording recording) {
    return some(
        recording.units().stream()
            .max(Comparator.comparingDouble(Stroke::fastestRadPerS))
            .map(Stroke::fast)
            .orElse(List.of()));
  }

  private static double fastestRadPerS(UnitStream unit) {
    double[] x = unit.gyroColumnRadPerS(0);
    double[] y = unit.gyroColumnRadPerS(1);
    double[] z = unit.gyroColumnRadPerS(2);
    double most = 0;
    for (int i = 0; i < x.length; i++) {
      double square = x[i] * x[i] + y[i] * y[i] + z[i] * z[i];
      most = square > most ? square : most; // a lost value is none
    }
    return Math.sqrt(most);
  }

  private static List<Stroke> fast(UnitStream arm) {
    List<Stroke> out = new ArrayList<>();
    double notBeforeS = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < arm.size(); i++) {
      if (arm.timeS(i) >= notBeforeS && arm.gyroNormRadPerS(i) > FAST_RAD_PER_S) {
        double peakS = extreme(arm, arm.timeS(i), arm.timeS(i) + PEAK_WITHIN_S, 1);
        double topS = extreme(arm, peakS - TOP_FROM_S, peakS - TOP_TO_S, -1);
        double stillS = lastStillS(arm, topS);
        if (topS - stillS < LONGEST_S) {
          out.add(new Stroke(stillS, topS, peakS));
        }
        notBeforeS = peakS + SAME_S;
      }
    }
    return out;
  }

  /** The instant of the largest rate of a stretch, or of the smallest. */
  private static double extreme(UnitStream arm, double fromS, double toS, int sign) {
    return IntStream.range(arm.indexAt(fromS), arm.indexAt(toS))
        .filter(arm::hasRate)
        .boxed()
        .max((a, b) -> sign * Double.compare(arm.gyroNormRadPerS(a), arm.gyroNormRadPerS(b)))
        .map(arm::timeS)
        .orElse(fromS);
  }

  /** The end of the last still stretch before an instant; long ago where there is none. */
  private static double lastStillS(UnitStream arm, double beforeS) {
    double endS = Double.NaN;
    for (int i = arm.indexAt(beforeS) - 1; i >= 0 && beforeS - arm.timeS(i) < LONGEST_S; i--) {
      boolean isStill = arm.gyroNormRadPerS(i) < STILL_RAD_PER_S;
      if (!isStill) {
        endS = Double.NaN;
      } else if (Double.isNaN(endS)) {
        endS = arm.timeS(i);
      } else if (endS - arm.timeS(i) > STILL_S) {
        return endS;
      }
    }
    return Double.NEGATIVE_INFINITY;
  }
}
