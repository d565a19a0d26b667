package steadyturn.fusion.attitude;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import steadyturn.ingest.sample.UnitStream;

/**
 * Finds rates cut off at the gyroscope's full scale (99.9 % of it) and puts a rounded peak in their
 * place: a cubic that leaves and meets the samples beside the cut with their own slopes. The area
 * it adds is a guess; a quarter of it is taken as the standard deviation of the angle (our choice).
 * Cuts longer than {@link #LONGEST_S} or peaks above {@link #HIGHEST} full scales are beyond
 * repair: they are filled the same way, and said so.
 */
public final class PeakRepair {

  /** Longest cut that is filled in good conscience, s. */
  public static final double LONGEST_S = 0.05;

  /** Highest repaired peak in full scales. */
  public static final double HIGHEST = 1.4;

  private static final double NEAR_FULL = 0.999;
  private static final double GUESS_PART = 0.25;
  private static final double BEYOND_FACTOR = 4;
  private static final double BEYOND_SD_RAD = 0.1;
  private static final double SLOPE_SPAN_S = 0.008;

  private PeakRepair() {}

  /**
   * One cut.
   *
   * @param axis 0, 1 or 2
   * @param fromS first cut sample, s
   * @param toS last cut sample, s
   * @param beyond whether the repair cannot be trusted
   * @param doubt how unsure the angle about the axis is from then on
   */
  public record Cut(int axis, double fromS, double toS, boolean beyond, AngleDoubt doubt) {}

  /** The repaired stream and what was repaired, by axis and time. */
  public record Repaired(UnitStream stream, List<Cut> cuts) {

    public Repaired {
      cuts = List.copyOf(cuts);
    }

    /** Where the first cut beyond repair begins, s; infinite where there is none. */
    public double beyondFromS() {
      return cuts.stream()
          .filter(Cut::beyond)
          .mapToDouble(Cut::fromS)
          .min()
          .orElse(Double.POSITIVE_INFINITY);
    }

    /** Whether some cut that begins before the instant is beyond repair. */
    public boolean beyondBefore(double timeS) {
      return cuts.stream().anyMatch(c -> c.beyond() && c.fromS() < timeS);
    }

    /** Standard deviation of the attitude at an instant that the guessed peaks cause, rad. */
    public double angleSdRad(double timeS) {
      return Math.sqrt(
          cuts.stream()
              .filter(c -> c.fromS() < timeS)
              .mapToDouble(c -> c.doubt().atRad(timeS) * c.doubt().atRad(timeS))
              .sum());
    }
  }

  /** Repairs all three axes; the stream itself where nothing is cut. */
  public static Repaired repair(UnitStream stream) {
    double full = stream.facts().gyroFullScaleRadPerS();
    List<Cut> cuts = new ArrayList<>();
    double[][] gyro = new double[3][];
    for (int axis = 0; axis < 3; axis++) {
      double[] column = stream.gyroColumnRadPerS(axis);
      gyro[axis] =
          Double.isInfinite(full) ? column : filled(stream.timeColumnS(), column, full, axis, cuts);
    }
    if (cuts.isEmpty()) {
      return new Repaired(stream, cuts);
    }
    return new Repaired(stream.withRates(gyro), cuts);
  }

  private static double[] filled(
      double[] time, double[] column, double full, int axis, List<Cut> cuts) {
    double[] out = column;
    for (int i = 0; i < column.length; i++) {
      if (!(Math.abs(column[i]) >= NEAR_FULL * full)) {
        continue;
      }
      int end = i;
      double sign = Math.signum(column[i]);
      while (end + 1 < column.length && sign * column[end + 1] >= NEAR_FULL * full) {
        end++;
      }
      out = out == column ? column.clone() : out;
      cuts.add(fill(time, column, out, i, end, full, axis));
      i = end;
    }
    return out;
  }

  /** Fills samples from..to and reports the cut. */
  private static Cut fill(
      double[] time, double[] column, double[] out, int from, int to, double full, int axis) {
    int before = from - 1;
    int after = to + 1;
    if (before < 1 || after > column.length - 2) {
      return cut(time, from, new double[to - from + 1], axis, true);
    }
    double sign = Math.signum(column[from]);
    double slopeIn = slope(time, column, before, -1);
    double slopeOut = slope(time, column, after, 1);
    double span = time[after] - time[before];
    double[] added = new double[to - from + 1];
    double sum = 0;
    double highest = 0;
    for (int i = from; i <= to; i++) {
      double u = (time[i] - time[before]) / span;
      double cubic =
          hermite(u, column[before], column[after], slopeIn * span, slopeOut * span) * sign;
      out[i] = sign * Math.max(cubic, full);
      highest = Math.max(highest, Math.abs(out[i]));
      sum += (Math.abs(out[i]) - full) * (time[i + 1] - time[i - 1]) / 2;
      added[i - from] = sum;
    }
    // NaN beside the cut gives a NaN sum: beyond repair, too
    boolean good = span <= LONGEST_S + (time[to] - time[from]) * 0.1 && highest <= HIGHEST * full;
    return cut(time, from, added, axis, !good || Double.isNaN(sum));
  }

  /** A cut with its doubt, which grows with the angle that was added. */
  private static Cut cut(double[] time, int from, double[] addedRad, int axis, boolean beyond) {
    int n = addedRad.length;
    double[] at = Arrays.copyOfRange(time, from, from + n);
    double[] sd = new double[n];
    for (int i = 0; i < n; i++) {
      double guess = GUESS_PART * (Double.isNaN(addedRad[i]) ? 1 : addedRad[i]);
      sd[i] = beyond ? BEYOND_FACTOR * guess + BEYOND_SD_RAD : guess;
    }
    return new Cut(axis, time[from], time[from + n - 1], beyond, new AngleDoubt(at, sd));
  }

  /** Slope of the samples within 8 ms on one side, by their outer ends. */
  private static double slope(double[] time, double[] column, int at, int direction) {
    int far = at;
    while (far + direction >= 0
        && far + direction < column.length
        && (Math.abs(time[far + direction] - time[at]) <= SLOPE_SPAN_S || far == at)) {
      far += direction;
    }
    int middle = (far + at) / 2;
    if (middle == at || middle == far) {
      return (column[at] - column[far]) / (time[at] - time[far]);
    }
    // slope at the near end of the parabola through near, middle and far sample
    double a = time[at] - time[middle];
    double b = time[at] - time[far];
    return ((column[at] - column[middle]) / a * b - (column[at] - column[far]) / b * a) / (b - a);
  }

  private static double hermite(double u, double y0, double y1, double d0, double d1) {
    double v = 1 - u;
    return y0 * v * v * (1 + 2 * u) + y1 * u * u * (1 + 2 * v) + d0 * u * v * v - d1 * u * u * v;
  }
}
