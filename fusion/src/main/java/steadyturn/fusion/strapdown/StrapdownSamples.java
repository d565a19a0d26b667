package steadyturn.fusion.strapdown;

import java.util.Arrays;
import java.util.List;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import steadyturn.ingest.sample.Gaps;
import steadyturn.ingest.sample.UnitStream;

/**
 * One unit's samples made ready for many passes: those that carry a whole rate, as flat columns,
 * and the {@link Bridge}s over what is missing between them or stands at full scale. A lost force
 * is a NaN in the first of its columns.
 */
public final class StrapdownSamples {

  final double[] timeS;
  final double[][] gyroRadPerS;
  final double[][] accelMps2;
  private final List<Bridge> bridges;

  private StrapdownSamples(
      double[] timeS, double[][] gyro, double[][] accel, List<Bridge> bridges) {
    this.timeS = timeS;
    this.gyroRadPerS = gyro;
    this.accelMps2 = accel;
    this.bridges = List.copyOf(bridges);
  }

  /** Reads a stretch of a unit's samples, some seconds long. */
  public static StrapdownSamples of(UnitStream stream) {
    StrapdownSamples bare = bare(stream);
    return bare.size() < 3
        ? bare
        : new StrapdownSamples(
            bare.timeS, bare.gyroRadPerS, bare.accelMps2, Bridging.all(bare, stream));
  }

  private static StrapdownSamples bare(UnitStream stream) {
    return of(stream, 0, stream.size(), List.of());
  }

  /** Samples from..to-1 of a stream, made ready again: the bridges over their gaps are known. */
  public static StrapdownSamples of(UnitStream stream, int from, int to, List<Bridge> bridges) {
    if (nothingIsLost(stream, from, to)) {
      return new StrapdownSamples(
          Arrays.copyOfRange(stream.timeColumnS(), from, to),
          columns(axis -> Arrays.copyOfRange(stream.gyroColumnRadPerS(axis), from, to), 3),
          columns(axis -> Arrays.copyOfRange(stream.accelColumnMps2(axis), from, to), 3),
          bridges);
    }
    int[] whole = new int[to - from];
    int m = 0;
    for (int i = from; i < to; i++) {
      if (stream.hasRate(i)) {
        whole[m++] = i;
      }
    }
    double[] time = new double[m];
    double[][] gyro = new double[3][m];
    double[][] accel = new double[3][m];
    for (int k = 0; k < m; k++) {
      int i = whole[k];
      time[k] = stream.timeS(i);
      boolean hasForce = stream.hasForce(i);
      for (int axis = 0; axis < 3; axis++) {
        gyro[axis][k] = stream.gyroRadPerS(axis, i);
        accel[axis][k] = hasForce ? stream.accelMps2(axis, i) : Double.NaN;
      }
    }
    return new StrapdownSamples(time, gyro, accel, bridges);
  }

  /** One lost value makes the sum NaN. */
  private static boolean nothingIsLost(UnitStream stream, int from, int to) {
    double[][] columns = columns(stream::column, 6);
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum +=
          columns[0][i]
              + columns[1][i]
              + columns[2][i]
              + columns[3][i]
              + columns[4][i]
              + columns[5][i];
    }
    return !Double.isNaN(sum);
  }

  private static double[][] columns(IntFunction<double[]> column, int count) {
    return IntStream.range(0, count).mapToObj(column).toArray(double[][]::new);
  }

  /** The bridges over lost rates of a stretch, for a pass over its gyroscope alone. */
  public static List<Bridge> overLostRates(UnitStream stream) {
    List<Gaps.Gap> lost = Gaps.of(stream, Gaps.Need.RATE).inner();
    if (lost.isEmpty()) {
      return List.of();
    }
    StrapdownSamples bare = bare(stream);
    return bare.size() < 3 ? List.of() : Bridging.overRates(bare, stream, lost);
  }

  /** Number of samples with a whole rate. */
  public int size() {
    return timeS.length;
  }

  public double timeS(int k) {
    return timeS[k];
  }

  /** Whether sample k carries a whole force too. */
  boolean hasForce(int k) {
    return !Double.isNaN(accelMps2[0][k]);
  }

  /** What is stepped over, by time; slight losses that lie close together count as one. */
  public List<Bridge> bridges() {
    return bridges;
  }
}
