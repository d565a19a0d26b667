package steadyturn.fusion.strapdown;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

class FoldedForcesTest {

  /** Two seconds of a unit that is pushed along x without turning. */
  private static StrapdownSamples pushed(double rateHz, DoubleUnaryOperator mps2) {
    int n = (int) (2 * rateHz);
    double[] time = new double[n];
    double[][] accel = new double[3][n];
    for (int i = 0; i < n; i++) {
      time[i] = i / rateHz;
      accel[0][i] = mps2.applyAsDouble(time[i]);
      accel[2][i] = 9.81;
    }
    return StrapdownSamples.of(
        new UnitStream(UnitFacts.plain(BodyPoint.PELVIS, rateHz), time, accel, new double[3][n]));
  }

  /** A ring of 130 Hz that begins with a zero at 1 s and a phase, and is over within 20 ms. */
  private static double ring(double timeS, double laterS) {
    double since = timeS - 1 - laterS;
    return since < 0 ? 0 : 6 * Math.exp(-since / 0.005) * Math.sin(2 * Math.PI * 130 * since);
  }

  private static double turn(double timeS) {
    return 15 * Math.sin(2 * Math.PI * 2 * timeS) + 3 * Math.sin(2 * Math.PI * 7 * timeS);
  }

  @Test
  void aRingThatASlowUnitFoldsMayHavePushedIt() {
    // Given: a trunk that swings by 15 m/s^2 twice and wobbles by 3 m/s^2 seven times a second, and
    // a blow that rings at 130 Hz by 6 m/s^2 and leaves 6 mm/s (6 w / (w^2 + 1 / 5 ms^2)), sampled
    // at
    // 100 Hz beginning 0 to 9 ms before a sample. Expect: what the samples add up to beside that is
    // within three spreads of the jump that is left open there, and 15 mm/s: 1.5 m/s^2 in one
    // sample
    // pass for the body's own.
    double w = 2 * Math.PI * 130;
    double trueMps = 6 * w / (w * w + 200 * 200);
    for (int ms = 0; ms < 10; ms++) {
      double laterS = 0.001 * ms;
      StrapdownSamples samples = pushed(100, t -> turn(t) + ring(t, laterS));
      double shownMps = 0;
      for (double time : samples.timeS) {
        shownMps += 0.01 * ring(time, laterS);
      }
      double spread = samples.bridges().stream().mapToDouble(Bridge::velocitySdMps).sum();
      assertThat(Math.abs(shownMps - trueMps)).as("%d ms", ms).isLessThan(3 * spread + 0.015);
      assertThat(spread).isLessThan(0.15);
    }
  }

  @Test
  void whatABodyDoesItselfAndWhatAQuickUnitSeesIsNotFolded() {
    // Given: the same trunk without a blow at 100 Hz, and with it at 500 Hz. Expect: nothing open.
    assertThat(pushed(100, FoldedForcesTest::turn).bridges()).isEmpty();
    assertThat(pushed(500, t -> turn(t) + ring(t, 0)).bridges()).isEmpty();
  }
}
