package steadyturn.analysis.lab.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.stream.Stream;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.random.Well19937c;
import org.apache.commons.math3.transform.DftNormalization;
import org.apache.commons.math3.transform.FastFourierTransformer;
import org.apache.commons.math3.transform.TransformType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class CurveTest {

  private static TimeFunction free() {
    Steps steps = new Steps(0.3);
    new FreeCourse(1, 0.3).to(1.3, -0.8).to(1.5, -0.7).to(1.8, 1.1).to(2.4, 0.9).lay(steps);
    return steps.build();
  }

  private static final long SEED = 3;

  static Stream<Arguments> functions() {
    return Stream.of(
        Arguments.of(
            "overlapping steps and a ramp",
            new Steps(2).by(0.1, 1.1, 3).by(0.6, 0.9, -2).ramp(0.2, 1.4, 0.7, 0.3).build()),
        Arguments.of(
            "through a value", new Steps(1).through(0.2, 0.9, 0.6, 4, 0.5, 1.4, 6).build()),
        Arguments.of(
            "bursts",
            new Bursts()
                .add(0.1, 1.2, 2, 6, 0.4, Bursts.Window.SMOOTH)
                .add(0.5, 0.4, 1, 9, 0, Bursts.Window.SHOCK)
                .build()),
        Arguments.of("free", free()),
        Arguments.of("sway", Sway.draw(new Well19937c(SEED), 0, 5, t -> 1, 1)),
        Arguments.of(
            "a quintic",
            new Steps(0)
                .quintic(0.2, 1.2, new double[] {0, 0, 0}, new double[] {2, 0, 3})
                .build()));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("functions")
  void ratesAndAccelerationsAreTheSlopesOfTheValues(String name, TimeFunction f) {
    // Given: instants off the joints. Expect: central differences over 2e-5 s. Within 1e-4 of the
    // largest slope: third derivatives of order 1e5 leave 1e5 (1e-5)^2 / 6, roundings 1e-16 / 1e-5.
    double h = 1e-5;
    for (double t = 0.1237; t < 1.6; t += 0.0717) {
      double[] here = vra(f, t);
      double[] before = vra(f, t - h);
      double[] after = vra(f, t + h);
      assertThat(here[1])
          .isCloseTo((after[0] - before[0]) / (2 * h), within(1e-4 * (1 + Math.abs(here[1]))));
      assertThat(here[2])
          .isCloseTo((after[1] - before[1]) / (2 * h), within(1e-4 * (1 + Math.abs(here[2]))));
    }
  }

  private static double[] vra(TimeFunction f, double t) {
    double[] out = new double[3];
    f.addTo(t, out);
    return out;
  }

  @Test
  void stepsThatOverlapAddUpAndEndAtTheirLevel() {
    // Given: 2, +3, -2. Expect: 3 after the last, with no rate. Within 1e-12: roundings.
    Steps steps = new Steps(2).by(0, 1, 3).by(0.5, 0.8, -2);
    TimeFunction f = steps.build();
    assertThat(steps.level()).isCloseTo(3, within(1e-12));
    assertThat(f.at(5)).isCloseTo(3, within(1e-12));
    assertThat(f.rateAt(5)).isZero();
    assertThat(f.at(-3)).isEqualTo(2);
  }

  @Test
  void theWayThroughPassesItsValueExactlyAndEndsAtItsTarget() {
    // Given: from 1 by 4 at 0.6 s to 6. Within 1e-12: a linear equation solved once.
    TimeFunction f = new Steps(1).through(0.2, 0.9, 0.6, 4, 0.5, 1.4, 6).build();
    assertThat(f.at(0.6)).isCloseTo(4, within(1e-12));
    assertThat(f.at(2)).isCloseTo(6, within(1e-12));
  }

  @Test
  void aRampKeepsItsRateBetweenItsEnds() {
    // Given: 0.09 per second from 1 to 3 s, ends smoothed over 0.25 s. Expect: 0.09 in between, and
    // 0.09 * (2 - 0.25) moved at the end. Within 1e-12: roundings.
    TimeFunction f = new Steps(0).ramp(1, 3, 0.09, 0.25).build();
    for (double t = 1.26; t < 2.74; t += 0.1) {
      assertThat(f.rateAt(t)).isCloseTo(0.09, within(1e-12));
    }
    assertThat(f.at(4)).isCloseTo(0.09 * 1.75, within(1e-12));
  }

  @Test
  void aRingHasTheAccelerationAskedForAndLeavesNothingBehind() {
    // Given: 500 m/s^2, 15 ms at 110 Hz. Expect: that peak; value and rate 0 afterwards. Within 1
    // %:
    // the peak is looked for on a grid of 0.4 us here and 37 us there.
    TimeFunction f = new Bursts().addRing(2, 0.015, 500, 110).build();
    double peak = 0;
    for (double t = 2; t < 2.02; t += 4e-7) {
      peak = Math.max(peak, Math.abs(vra(f, t)[2]));
    }
    assertThat(peak).isCloseTo(500, within(5.0));
    assertThat(vra(f, 2.0151)).containsExactly(0, 0, 0);
  }

  @Test
  void swayHasTheRateAskedForAndStaysBounded() {
    // Given: 4 mm/s over 20 minutes. Expect: RMS rate 4 mm/s, within 10 %: the size is set by
    // differences over 40 ms, and the spline smooths away what is faster. A standing person of that
    // speed strays by millimetres, not by centimetres.
    System.out.println("seed " + SEED);
    TimeFunction sway = Sway.draw(new Well19937c(SEED), 0, 1200, t -> 0.004, 1);
    double sum = 0;
    double most = 0;
    int n = 0;
    for (double t = 5; t < 1195; t += 0.01) {
      double rate = sway.rateAt(t);
      sum += rate * rate;
      most = Math.max(most, Math.abs(sway.at(t)));
      n++;
    }
    assertThat(Math.sqrt(sum / n)).isCloseTo(0.004, within(0.0004));
    assertThat(most).isBetween(0.004, 0.04);
  }

  @Test
  void swayHasTheSpectrumOfAStandingPerson() {
    // Given: 16 stretches of 164 s. Expect: 95 % of the power of the place below 1.2 Hz and half of
    // it below 0.5 Hz, as in young adults on force plates (Prieto et al. 1996, IEEE Trans Biomed
    // Eng 43:956-966, from memory: 95 % below about 1 Hz), and power that falls with frequency by
    // more than its square from 0.5 to 2 Hz.
    System.out.println("seed " + SEED);
    int n = 4096;
    double everyS = 0.04;
    double[] power = new double[n / 2];
    FastFourierTransformer fourier = new FastFourierTransformer(DftNormalization.STANDARD);
    for (int k = 0; k < 16; k++) {
      double[] place = Sway.standing(new Well19937c(SEED + k), n, everyS);
      double mean = Arrays.stream(place).average().orElse(0);
      double[] bell = new double[n];
      for (int i = 0; i < n; i++) {
        bell[i] = (place[i] - mean) * (1 - Math.cos(2 * Math.PI * i / n));
      }
      Complex[] spectrum = fourier.transform(bell, TransformType.FORWARD);
      for (int i = 0; i < n / 2; i++) {
        power[i] += spectrum[i].abs() * spectrum[i].abs();
      }
    }
    double step = 1 / (n * everyS);
    double all = Arrays.stream(power).sum();
    System.out.println(
        "below 0.5 Hz "
            + below(power, 0.5 / step) / all
            + ", below 1.2 "
            + below(power, 1.2 / step) / all);
    double low = below(power, 0.6 / step) - below(power, 0.4 / step);
    double high = below(power, 2.4 / step) - below(power, 1.6 / step);
    System.out.println("fall " + low * 4 / high);
    assertThat(below(power, 1.2 / step) / all).isGreaterThan(0.95);
    assertThat(below(power, 0.5 / step) / all).isGreaterThan(0.5);
    // the upper band is four times as wide; a fall by the square is 16 in density
    assertThat(low * 4 / high).isGreaterThan(16);
  }

  private static double below(double[] power, double bin) {
    return Arrays.stream(power, 0, (int) Math.round(bin)).sum();
  }

  @Test
  void aFreeCourseGoesThroughItsPointsWithoutOvershootAndRestsAtBothEnds() {
    // Given: a rise of 1 in 0.6 s by uneven points. Expect: at rest outside, never below 0 or above
    // 1 (a B-spline overshoots nothing), within 0.02 of a point in the middle of smooth movement
    // (the spline averages over some 15 ms; its bend there times 15 ms squared is below that).
    Steps steps = new Steps(0);
    new FreeCourse(1, 0).to(1.2, 0.2).to(1.45, 0.8).to(1.6, 1).lay(steps);
    TimeFunction f = steps.build();
    for (double t = 0.5; t < 2.2; t += 0.001) {
      assertThat(f.at(t)).isBetween(-1e-9, 1 + 1e-9);
    }
    assertThat(vra(f, 0.9)).containsExactly(0, 0, 0);
    assertThat(f.at(1.2)).isCloseTo(0.2, within(0.02));
    assertThat(f.at(1.45)).isCloseTo(0.8, within(0.02));
    assertThat(f.at(1.8)).isCloseTo(1, within(1e-9));
    assertThat(f.rateAt(1.8)).isCloseTo(0, within(1e-9));
  }
}
