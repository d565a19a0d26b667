package steadyturn.ingest.columnmap;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import steadyturn.ingest.columnmap.layout.MappedVector;
import steadyturn.ingest.columnmap.layout.UnitColumns;
import steadyturn.ingest.sample.TimeAxis;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * One unit gathered from where its columns lie. Where its sensors have times of their own, all are
 * taken at those of the gyroscope, by straight lines between neighbours; across a gap nothing is
 * drawn.
 */
final class JoinedUnit {

  /** Neighbours farther apart than so many steps have a gap between them. */
  private static final double LONGEST_STEPS = 3;

  /** A vector and its times. */
  private record Heard(MappedVector vector, double[] timeS, double[][] xyz) {}

  private final List<Heard> heard = new ArrayList<>();

  /** Takes a vector as it was read: at the given times, in the columns of the map. */
  void add(MappedVector vector, double[] timeS, double[][] columns) {
    if (!vector.isIncrement()) {
      heard.add(new Heard(vector, timeS, columns));
      return;
    }
    double[] middleS = timeS.clone();
    double halfS = Increments.stepS(timeS) / 2;
    Arrays.setAll(middleS, i -> timeS[i] - halfS);
    heard.add(new Heard(vector, middleS, Increments.means(timeS, columns)));
  }

  /** The unit with its facts, which are told of its times. */
  UnitStream stream(UnitColumns whole, Function<double[], UnitFacts> facts) {
    Heard gyro = of(whole.gyro()).orElseThrow();
    Heard accel = of(whole.accel()).orElseThrow();
    Optional<Heard> gravity = of(whole.gravity());
    double fromS = latest(accel.timeS[0], gravity.map(g -> g.timeS[0]));
    double toS = -latest(-last(accel), gravity.map(g -> -last(g)));
    double[] timeS = gyro.timeS;
    int from = TimeAxis.indexAt(timeS, timeS.length, fromS);
    int to = TimeAxis.indexAt(timeS, timeS.length, Math.nextUp(toS));
    double[] at = Arrays.copyOfRange(timeS, from, Math.max(from, to));
    double[][] force = at(accel, at);
    gravity.ifPresent(g -> add(force, at(g, at)));
    return new UnitStream(facts.apply(at), at, force, at(gyro, at));
  }

  private Optional<Heard> of(Optional<MappedVector> vector) {
    return vector.flatMap(v -> heard.stream().filter(h -> h.vector.equals(v)).findFirst());
  }

  private static double latest(double a, Optional<Double> b) {
    return b.map(other -> Math.max(a, other)).orElse(a);
  }

  private static double last(Heard heard) {
    return heard.timeS[heard.timeS.length - 1];
  }

  private static void add(double[][] sum, double[][] more) {
    for (int axis = 0; axis < 3; axis++) {
      for (int i = 0; i < sum[axis].length; i++) {
        sum[axis][i] += more[axis][i];
      }
    }
  }

  /** Its values at other times, all within its own. */
  private static double[][] at(Heard heard, double[] instantsS) {
    double longestS = LONGEST_STEPS * Increments.stepS(heard.timeS);
    double[][] out = new double[3][instantsS.length];
    int right = 0;
    for (int i = 0; i < instantsS.length; i++) {
      while (right < heard.timeS.length - 1 && heard.timeS[right] < instantsS[i]) {
        right++;
      }
      int left = heard.timeS[right] > instantsS[i] ? right - 1 : right;
      double apartS = heard.timeS[right] - heard.timeS[left];
      double share = apartS > 0 ? (instantsS[i] - heard.timeS[left]) / apartS : 0;
      for (int axis = 0; axis < 3; axis++) {
        double a = heard.xyz[axis][left];
        double b = heard.xyz[axis][right];
        out[axis][i] = apartS > longestS ? Double.NaN : share == 0 ? a : a + share * (b - a);
      }
    }
    return out;
  }
}
