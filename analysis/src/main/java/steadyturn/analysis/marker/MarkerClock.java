package steadyturn.analysis.marker;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Curve;
import steadyturn.analysis.measure.Measure;
import steadyturn.ingest.sample.Averages;

/**
 * How the cameras' clock lies on the units': found where both turn alike, first for the whole
 * recording, then swing by swing, as clocks drift.
 *
 * @param offsetS markers' time minus ours at our time 0
 * @param rate markers' seconds a second of ours
 * @param missDeg RMS by which the two turns differ once they lie on each other
 */
record MarkerClock(double offsetS, double rate, double missDeg) {

  private static final double COARSE_S = 0.02;
  private static final int COARSE_STRIDE = 4;
  private static final double FINE_S = 0.001;
  private static final double NEAR_S = 0.15;

  /** Clocks of two devices differ by less (our assumption). */
  private static final double LARGEST_SKEW = 500e-6;

  double markersS(double oursS) {
    return offsetS + rate * oursS;
  }

  /** A swing's turn over time, rad in the sense of the ground, thinned. */
  private record Turn(double[] timeS, double[] turnRad) {

    /** Every so many instants of it. */
    Turn every(int stride) {
      int n = (timeS.length + stride - 1) / stride;
      double[] fewer = new double[n];
      double[] turns = new double[n];
      for (int i = 0; i < n; i++) {
        fewer[i] = timeS[i * stride];
        turns[i] = turnRad[i * stride];
      }
      return new Turn(fewer, turns);
    }

    /** Sum of squares about the mean: what it costs where the markers do not see it. */
    double alone() {
      double mean = Averages.mean(turnRad, 0, turnRad.length);
      double squares = 0;
      for (double t : turnRad) {
        squares += (t - mean) * (t - mean);
      }
      return squares;
    }
  }

  static MarkerClock of(List<SwingResult> swings, int h, PelvisMarkers markers) {
    List<Turn> turns = swings.stream().flatMap(s -> turn(s, h).stream()).toList();
    if (turns.isEmpty()) {
      throw new PelvisMarkers.MarkerException("the recording has no swing whose turn is known");
    }
    double first = turns.get(0).timeS()[0];
    double last = turns.get(turns.size() - 1).timeS()[0];
    List<Turn> few = turns.stream().map(t -> t.every(COARSE_STRIDE)).toList();
    double whole = best(few, markers, markers.timeS()[0] - last, end(markers) - first, COARSE_S);
    if (Double.isNaN(whole)) {
      throw new PelvisMarkers.MarkerException("the markers see none of the recording's swings");
    }
    List<double[]> seen = new ArrayList<>();
    for (Turn turn : turns) {
      double near = best(List.of(turn), markers, whole - NEAR_S, whole + NEAR_S, FINE_S);
      if (!Double.isNaN(near)) {
        seen.add(new double[] {turn.timeS()[0], near});
      }
    }
    double[] line = line(seen);
    MarkerClock found = new MarkerClock(line[0], 1 + line[1], 0);
    return new MarkerClock(
        found.offsetS,
        found.rate,
        Math.toDegrees(
            found.missRad(turns, turns.stream().mapToDouble(Turn::alone).toArray(), markers)));
  }

  private static List<Turn> turn(SwingResult swing, int h) {
    return swing.curves().stream()
        .filter(c -> c.id().equals(Measure.PELVIS_TURN.id()))
        .map(c -> thinned(c, h))
        .toList();
  }

  /** Some 100 instants a second are enough to lay it on another. */
  private static Turn thinned(Curve curve, int h) {
    List<Double> timeS = new ArrayList<>();
    List<Double> turnRad = new ArrayList<>();
    double next = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < curve.timeS().size(); i++) {
      if (curve.timeS().get(i) >= next && !Double.isNaN(curve.value().get(i))) {
        timeS.add(curve.timeS().get(i));
        turnRad.add(h * Math.toRadians(curve.value().get(i)));
        next = curve.timeS().get(i) + 0.0099;
      }
    }
    return new Turn(
        timeS.stream().mapToDouble(t -> t).toArray(),
        turnRad.stream().mapToDouble(t -> t).toArray());
  }

  private static double end(PelvisMarkers markers) {
    return markers.timeS()[markers.timeS().length - 1];
  }

  /** The offset at which the turns differ least; NaN where they never meet. */
  private static double best(
      List<Turn> turns, PelvisMarkers markers, double from, double until, double step) {
    double[] alone = turns.stream().mapToDouble(Turn::alone).toArray();
    double best = Double.NaN;
    double least = Double.POSITIVE_INFINITY;
    for (double offset = from; offset <= until; offset += step) {
      double miss = new MarkerClock(offset, 1, 0).missRad(turns, alone, markers);
      if (miss < least) {
        least = miss;
        best = offset;
      }
    }
    return best;
  }

  /** RMS difference, each swing about its own mean; swings that are not seen cost their turn. */
  private double missRad(List<Turn> turns, double[] alone, PelvisMarkers markers) {
    double squares = 0;
    int all = 0;
    int seen = 0;
    for (int k = 0; k < turns.size(); k++) {
      Turn turn = turns.get(k);
      int n = turn.timeS().length;
      double apart = apart(turn, markers);
      squares += Double.isNaN(apart) ? alone[k] : apart;
      all += n;
      seen += Double.isNaN(apart) ? 0 : n;
    }
    return seen == 0 ? Double.POSITIVE_INFINITY : Math.sqrt(squares / all);
  }

  /** Sum of squares of the differences about their mean; NaN where the markers do not see it. */
  private double apart(Turn turn, PelvisMarkers markers) {
    double sum = 0;
    double squares = 0;
    int n = turn.timeS().length;
    for (int i = 0; i < n; i++) {
      double difference =
          turn.turnRad()[i] - markers.at(markers.azimuthRad(), markersS(turn.timeS()[i]));
      if (Double.isNaN(difference)) {
        return Double.NaN;
      }
      sum += difference;
      squares += difference * difference;
    }
    return squares - sum * sum / n;
  }

  /** Offset at time 0 and slope; the middle one alone where there are few. */
  private static double[] line(List<double[]> seen) {
    SimpleRegression fit = new SimpleRegression();
    seen.forEach(s -> fit.addData(s[0], s[1]));
    if (seen.size() < 3 || !(Math.abs(fit.getSlope()) < LARGEST_SKEW)) {
      return new double[] {Averages.median(seen.stream().mapToDouble(s -> s[1]).toArray()), 0};
    }
    return new double[] {fit.getIntercept(), fit.getSlope()};
  }
}
