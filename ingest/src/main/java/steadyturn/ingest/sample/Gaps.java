package steadyturn.ingest.sample;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Where a unit has no whole samples: rows that are missing (a step of time longer than 1.5 usual
 * steps) and rows that lack a value of what is needed. Also the stretches in which a value stands
 * at full scale. Before the first whole sample and after the last one nothing is known either.
 *
 * @param inner the gaps between whole samples, by time
 * @param firstS first whole sample, s; infinite where there is none
 * @param lastS last whole sample, s; infinite where there is none
 * @param stepS the usual step of time, s
 */
public record Gaps(List<Gap> inner, double firstS, double lastS, double stepS) {

  /** What a sample must carry to count as whole: all three axes of it. */
  public enum Need {
    RATE,
    FORCE,
    BOTH;

    private double[][] columns(UnitStream stream) {
      return IntStream.range(this == RATE ? 3 : 0, this == FORCE ? 3 : 6)
          .mapToObj(stream::column)
          .toArray(double[][]::new);
    }

    /** Where each of the columns is cut off. */
    private double[] ends(UnitStream stream) {
      double force = NEAR_FULL * stream.facts().accelFullScaleMps2();
      double rate = NEAR_FULL * stream.facts().gyroFullScaleRadPerS();
      return IntStream.range(this == RATE ? 3 : 0, this == FORCE ? 3 : 6)
          .mapToDouble(c -> c < 3 ? force : rate)
          .toArray();
    }
  }

  /** A value within a thousandth of full scale is cut off. */
  private static final double NEAR_FULL = 0.999;

  private static final double LONGER_THAN_USUAL = 1.5;

  /**
   * One stretch between two good samples.
   *
   * @param before index of the last good sample before it
   * @param after index of the first good one after it
   * @param beforeS instant of the former, s
   * @param afterS instant of the latter, s
   */
  public record Gap(int before, int after, double beforeS, double afterS) {

    /** From good sample to good sample, s. */
    public double lengthS() {
      return afterS - beforeS;
    }

    /** Whether the instant lies strictly between the good samples. */
    public boolean holds(double instantS) {
      return instantS > beforeS && instantS < afterS;
    }
  }

  public Gaps {
    inner = List.copyOf(inner);
  }

  /** The gaps of a stream between its whole samples, by time. */
  public static Gaps of(UnitStream stream, Need need) {
    double stepS = stream.usualStepS();
    double[] time = stream.timeColumnS();
    double[][] needed = need.columns(stream);
    boolean nothingIsLost = !Double.isNaN(sum(needed));
    List<Gap> found = new ArrayList<>();
    int last = -1;
    double firstS = Double.POSITIVE_INFINITY;
    for (int i = 0; i < time.length; i++) {
      if (!nothingIsLost && !isWhole(needed, i)) {
        continue;
      }
      if (last < 0) {
        firstS = time[i];
      } else if (i > last + 1 || time[i] - time[last] > LONGER_THAN_USUAL * stepS) {
        found.add(new Gap(last, i, time[last], time[i]));
      }
      last = i;
    }
    return new Gaps(found, firstS, last < 0 ? firstS : time[last], stepS);
  }

  private static double sum(double[][] columns) {
    double sum = 0;
    for (double[] column : columns) {
      for (double value : column) {
        sum += value;
      }
    }
    return sum;
  }

  /** One lost value makes the sum NaN. */
  private static boolean isWhole(double[][] columns, int i) {
    double sum = columns[0][i];
    for (int c = 1; c < columns.length; c++) {
      sum += columns[c][i];
    }
    return !Double.isNaN(sum);
  }

  /** The stretches of a stream in which some axis stands at full scale, by time. */
  public static List<Gap> cut(UnitStream stream, Need need) {
    double[][] needed = need.columns(stream);
    double[] ends = need.ends(stream);
    List<Gap> found = new ArrayList<>();
    int n = stream.size();
    for (int i = 0; i < n; i++) {
      if (!isCut(needed, ends, i)) {
        continue;
      }
      int before = Math.max(0, i - 1);
      while (i < n && isCut(needed, ends, i)) {
        i++;
      }
      int after = Math.min(n - 1, i);
      found.add(new Gap(before, after, stream.timeS(before), stream.timeS(after)));
    }
    return found;
  }

  private static boolean isCut(double[][] columns, double[] ends, int i) {
    for (int c = 0; c < ends.length; c++) {
      if (Math.abs(columns[c][i]) >= ends[c]) {
        return true;
      }
    }
    return false;
  }

  /** The gap between whole samples that holds an instant. */
  public Optional<Gap> around(double instantS) {
    int low = TimeAxis.indexAt(i -> inner.get(i).afterS, inner.size(), Math.nextUp(instantS));
    return low < inner.size() && inner.get(low).holds(instantS)
        ? Optional.of(inner.get(low))
        : Optional.empty();
  }

  /** The longest stretch without a whole sample inside a span, s; its ends count. */
  public double longestS(double fromS, double toS) {
    double longest = Math.max(before(fromS, toS), after(fromS, toS));
    for (Gap gap : inner) {
      longest = Math.max(longest, Math.min(toS, gap.afterS) - Math.max(fromS, gap.beforeS));
    }
    return longest;
  }

  /** How much of a span has no samples, 0 to 1. */
  public double lostPart(double fromS, double toS) {
    double lost = before(fromS, toS) + after(fromS, toS);
    for (Gap gap : inner) {
      double from = Math.max(fromS, gap.beforeS + stepS / 2);
      lost += Math.max(0, Math.min(toS, gap.afterS - stepS / 2) - from);
    }
    return Math.min(1, lost / (toS - fromS));
  }

  private double before(double fromS, double toS) {
    return Math.max(0, Math.min(toS, firstS) - fromS);
  }

  private double after(double fromS, double toS) {
    return Math.max(0, toS - Math.max(fromS, lastS));
  }
}
