package steadyturn.ingest.quality;

import java.util.Arrays;
import java.util.stream.IntStream;
import steadyturn.ingest.sample.UnitStream;

/**
 * Samples that lie far from all their neighbours, which lie close together: a link without a check
 * sum lets bits through, no body moves so. A blow is felt for longer, or once; a unit that shows
 * such samples again and again has them taken out.
 */
public final class WildSamples {

  /** Two samples on either side are looked at. */
  private static final int BESIDE = 2;

  /** So far off, m/s^2 and rad/s, and so many times as far as the neighbours lie apart. */
  private static final double FAR_MPS2 = 20;

  private static final double FAR_RAD_PER_S = 3;
  private static final double TIMES = 3;

  /** Neighbours are calm where they lie within this part of that (our choice). */
  private static final double CALM = 0.1;

  /** Taps and blows may look so a few times (our choice). */
  private static final int TAPS = 8;

  private WildSamples() {}

  /** How many samples are wild; 0 where they are too few to be told from taps. */
  static int count(UnitStream unit) {
    boolean[] wild = wild(unit);
    return (int) IntStream.range(0, wild.length).filter(i -> wild[i]).count();
  }

  /** The stream with nothing measured in their place. */
  public static UnitStream without(UnitStream unit) {
    boolean[] wild = wild(unit);
    if (IntStream.range(0, wild.length).noneMatch(i -> wild[i])) {
      return unit;
    }
    double[][] columns = new double[6][];
    Arrays.setAll(columns, channel -> unit.column(channel).clone());
    for (double[] column : columns) {
      IntStream.range(0, wild.length).filter(i -> wild[i]).forEach(i -> column[i] = Double.NaN);
    }
    return new UnitStream(
        unit.facts(),
        unit.timeColumnS(),
        Arrays.copyOfRange(columns, 0, 3),
        Arrays.copyOfRange(columns, 3, 6));
  }

  private static boolean[] wild(UnitStream unit) {
    boolean[] wild = new boolean[unit.size()];
    int calm = 0;
    for (int channel = 0; channel < 6; channel++) {
      double[] values = unit.column(channel);
      double far = channel < 3 ? FAR_MPS2 : FAR_RAD_PER_S;
      double end = SaturationCheck.SHARE_OF_FULL_SCALE * fullScale(unit, channel);
      for (int i = BESIDE; i + BESIDE < values.length; i++) {
        double step = Math.abs(values[i] - values[i - 1]);
        if (step > far && Math.abs(values[i]) < end && isAlone(values, i, far)) {
          calm += !wild[i] && apart(values, i) < CALM * far ? 1 : 0;
          wild[i] = true;
        }
      }
    }
    return calm > TAPS ? wild : new boolean[unit.size()];
  }

  /** What lies at the end of the range is cut, and told as that. */
  private static double fullScale(UnitStream unit, int channel) {
    return channel < 3 ? unit.facts().accelFullScaleMps2() : unit.facts().gyroFullScaleRadPerS();
  }

  private static boolean isAlone(double[] values, int i, double far) {
    double middle = (values[i - 1] + values[i + 1]) / 2;
    return Math.abs(values[i] - middle) > far + TIMES * apart(values, i);
  }

  /** How far the neighbours lie apart. */
  private static double apart(double[] values, int i) {
    double least = Math.min(values[i - 1], values[i + 1]);
    double most = Math.max(values[i - 1], values[i + 1]);
    for (int k = 2; k <= BESIDE; k++) {
      least = Math.min(least, Math.min(values[i - k], values[i + k]));
      most = Math.max(most, Math.max(values[i - k], values[i + k]));
    }
    return most - least;
  }
}
