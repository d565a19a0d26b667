package steadyturn.analysis.lab.curve;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

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
  }

  private record Burst(
      double startS, double lengthS, double amplitude, double omega, double phase, Window window) {

    void addTo(double timeS, double[] vra) {
      double x = (timeS - startS) / lengthS;
      if (x < 0 || x >= 1) {
        return;
      }
      int p = window.rise;
      int q = window.fall;
      double peak = Math.pow(p, p) * Math.pow(q, q) / Math.pow(p + q, p + q);
      double y = 1 - x;
      double xp2 = p >= 2 ? power(x, p - 2) : 0;
      double yq2 = power(y, q - 2);
      double w = power(x, p) * yq2 * y * y;
      double dw = power(x, p - 1) * yq2 * y * (p * y - q * x);
      double ddw =
          p * (p - 1) * xp2 * yq2 * y * y
              - 2 * p * q * power(x, p - 1) * yq2 * y
              + q * (q - 1) * power(x, p) * yq2;
      double s = Math.sin(omega * (timeS - startS) + phase);
      double c = omega * Math.cos(omega * (timeS - startS) + phase);
      double k = amplitude / peak;
      double d = 1 / lengthS;
      vra[0] += k * w * s;
      vra[1] += k * (dw * d * s + w * c);
      vra[2] += k * (ddw * d * d * s + 2 * dw * d * c - w * omega * omega * s);
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
    bursts.add(new Burst(startS, lengthS, amplitude, 2 * Math.PI * frequencyHz, phaseRad, window));
    return this;
  }

  /** Adds a shock of 0 phase whose largest acceleration (second derivative) is as given. */
  public Bursts addRing(double startS, double lengthS, double peakAccel, double frequencyHz) {
    return addRing(startS, lengthS, peakAccel, frequencyHz, Window.SHOCK);
  }

  /** The same under any window. */
  public Bursts addRing(
      double startS, double lengthS, double peakAccel, double frequencyHz, Window window) {
    Burst one = new Burst(startS, lengthS, 1, 2 * Math.PI * frequencyHz, 0, window);
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

  /** The sum as one function. */
  public TimeFunction build() {
    Burst[] sorted =
        bursts.stream().sorted(Comparator.comparingDouble(Burst::startS)).toArray(Burst[]::new);
    double longestS = bursts.stream().mapToDouble(Burst::lengthS).max().orElse(0);
    double[] startS = bursts.stream().mapToDouble(Burst::startS).sorted().toArray();
    return (timeS, vra) -> {
      int found = java.util.Arrays.binarySearch(startS, timeS);
      int last = found >= 0 ? found : -found - 2;
      while (last + 1 < startS.length && startS[last + 1] <= timeS) {
        last++; // equal starts
      }
      for (int i = last; i >= 0 && startS[i] > timeS - longestS; i--) {
        sorted[i].addTo(timeS, vra);
      }
    };
  }
}
