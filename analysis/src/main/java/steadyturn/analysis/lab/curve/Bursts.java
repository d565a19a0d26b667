package steadyturn.analysis.lab.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * Short oscillations, each a sine under a window that is zero at both ends: wobble, steps of
 * walking, rings of a shock. None of them leaves a change behind.
 */
public final class Bursts {

  /**
   * Window of a burst, 1 at its highest: x^rise (1 - x)^fall over the burst's length.
   *
   * @param rise 1 for a shock (its acceleration jumps at once), 4 for a smooth start
   * @param fall larger dies out sooner
   */
  public record Window(int rise, int fall) {
    public static final Window SMOOTH = new Window(4, 4);
    public static final Window SHOCK = new Window(1, 5);

    /** Highest value of x^rise (1 - x)^fall. */
    private double bareHeight() {
      return Math.pow(rise, rise) * Math.pow(fall, fall) / Math.pow(rise + fall, rise + fall);
    }
  }

  /** One burst; {@code gain} is its amplitude over the highest value of the bare window. */
  private record Burst(
      double startS, double lengthS, double gain, double omega, double phase, Window window) {

    /** An instant that is surely behind the burst, by more than rounding. */
    double pastS() {
      return startS + lengthS * 1.000001;
    }

    void addTo(double timeS, double[] vra) {
      double x = (timeS - startS) / lengthS;
      if (x < 0 || x >= 1) {
        return;
      }
      int p = window.rise;
      int q = window.fall;
      double y = 1 - x;
      double xp2 = p >= 2 ? power(x, p - 2) : 0;
      double yq2 = power(y, q - 2);
      double xp1 = power(x, p - 1);
      double xp = xp1 * x;
      double w = xp * yq2 * y * y;
      double dw = xp1 * yq2 * y * (p * y - q * x);
      double ddw =
          p * (p - 1) * xp2 * yq2 * y * y - 2 * p * q * xp1 * yq2 * y + q * (q - 1) * xp * yq2;
      double angle = omega * (timeS - startS) + phase;
      double s = Math.sin(angle);
      double c = omega * Math.cos(angle);
      double d = 1 / lengthS;
      vra[0] += gain * w * s;
      vra[1] += gain * (dw * d * s + w * c);
      vra[2] += gain * (ddw * d * d * s + 2 * dw * d * c - w * omega * omega * s);
    }

    private static double power(double base, int exponent) {
      double out = 1;
      for (int i = 0; i < exponent; i++) {
        out *= base;
      }
      return out;
    }
  }

  private final List<Burst> bursts = new ArrayList<>();

  /**
   * Adds a burst.
   *
   * @param amplitude height of the window; the sine under it may peak a little lower
   * @param phaseRad phase of the sine at the start
   */
  public Bursts add(
      double startS,
      double lengthS,
      double amplitude,
      double frequencyHz,
      double phaseRad,
      Window window) {
    bursts.add(burst(startS, lengthS, amplitude, frequencyHz, phaseRad, window));
    return this;
  }

  /** Adds a shock of 0 phase whose largest acceleration (second derivative) is as given. */
  public Bursts addRing(double startS, double lengthS, double peakAccel, double frequencyHz) {
    return addRing(startS, lengthS, peakAccel, frequencyHz, Window.SHOCK);
  }

  /** The same under any window. */
  public Bursts addRing(
      double startS, double lengthS, double peakAccel, double frequencyHz, Window window) {
    Burst one = burst(startS, lengthS, 1, frequencyHz, 0, window);
    double highest = 0;
    double[] vra = new double[3];
    for (int i = 0; i < 400; i++) {
      vra[2] = 0;
      one.addTo(startS + lengthS * i / 400, vra);
      highest = Math.max(highest, Math.abs(vra[2]));
    }
    return add(startS, lengthS, peakAccel / highest, frequencyHz, 0, window);
  }

  public boolean isEmpty() {
    return bursts.isEmpty();
  }

  private static Burst burst(
      double startS,
      double lengthS,
      double amplitude,
      double frequencyHz,
      double phaseRad,
      Window window) {
    double gain = amplitude / window.bareHeight();
    return new Burst(startS, lengthS, gain, 2 * Math.PI * frequencyHz, phaseRad, window);
  }

  /** The sum as one function. */
  public TimeFunction build() {
    double[] startS =
        DoubleStream.concat(
                DoubleStream.of(Double.NEGATIVE_INFINITY),
                bursts.stream().flatMapToDouble(b -> DoubleStream.of(b.startS, b.pastS())))
            .sorted()
            .distinct()
            .toArray();
    Burst[][] active = active(startS);
    Breaks breaks = new Breaks(startS);
    return (timeS, vra) -> {
      for (Burst burst : active[breaks.at(timeS)]) {
        burst.addTo(timeS, vra);
      }
    };
  }

  /** The bursts of each stretch in which none begins and none is over, the latest first. */
  private Burst[][] active(double[] startS) {
    List<Burst> latestFirst = new ArrayList<>(bursts);
    latestFirst.sort(Comparator.comparingDouble(Burst::startS));
    Collections.reverse(latestFirst);
    List<List<Burst>> active =
        Stream.generate(() -> (List<Burst>) new ArrayList<Burst>(1)).limit(startS.length).toList();
    for (Burst burst : latestFirst) {
      int past = Arrays.binarySearch(startS, burst.pastS());
      for (int i = Arrays.binarySearch(startS, burst.startS); i < past; i++) {
        active.get(i).add(burst);
      }
    }
    return active.stream().map(b -> b.toArray(Burst[]::new)).toArray(Burst[][]::new);
  }
}
