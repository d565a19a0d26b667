package steadyturn.analysis.lab.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class CurveTest {

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
        Arguments.of("sway", Sway.draw(new Well19937c(SEED), 0, 5, t -> 1)),
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
    // Given: 4 mm/s over 20 minutes. Expect: RMS rate 4 mm/s, within 5 %: the correlation of 0.3 s
    // leaves about 2000 free values, so 1.6 % of spread, three times that. Value: with pull-back
    // over 1.5 s its RMS is about rate * sqrt(0.3 * 1.5) = 2.7 mm; five times that is never
    // reached.
    System.out.println("seed " + SEED);
    TimeFunction sway = Sway.draw(new Well19937c(SEED), 0, 1200, t -> 0.004);
    double sum = 0;
    double most = 0;
    int n = 0;
    for (double t = 5; t < 1195; t += 0.01) {
      double rate = sway.rateAt(t);
      sum += rate * rate;
      most = Math.max(most, Math.abs(sway.at(t)));
      n++;
    }
    assertThat(Math.sqrt(sum / n)).isCloseTo(0.004, within(0.0002));
    assertThat(most).isBetween(0.003, 0.0135);
  }

  @Test
  void swayForgetsItsRateInAboutAThirdOfASecond() {
    // Given: as above. Expect: autocorrelation of the rate between 0.1 and 0.55 at 0.3 s (a pure
    // first-order process has 1/e = 0.37; spline and pull-back change it a little), and above 0.8
    // at 0.05 s.
    TimeFunction sway = Sway.draw(new Well19937c(SEED), 0, 600, t -> 1);
    assertThat(autocorrelation(sway, 0.3)).isBetween(0.1, 0.55);
    assertThat(autocorrelation(sway, 0.05)).isGreaterThan(0.8);
  }

  private static double autocorrelation(TimeFunction f, double lagS) {
    double cross = 0;
    double own = 0;
    for (double t = 5; t < 590; t += 0.02) {
      cross += f.rateAt(t) * f.rateAt(t + lagS);
      own += f.rateAt(t) * f.rateAt(t);
    }
    return cross / own;
  }
}
