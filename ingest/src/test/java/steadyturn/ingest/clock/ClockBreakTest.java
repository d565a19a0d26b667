package steadyturn.ingest.clock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** A clock that began anew is known by steps that do not go on. */
class ClockBreakTest {

  private static final double STEP_S = 0.005 * (1 + 40e-6);

  private static UnitStream stream(List<Double> timesS) {
    double[] times = timesS.stream().mapToDouble(t -> t).toArray();
    double[][] zeros = new double[3][times.length];
    return new UnitStream(
        UnitFacts.plain(BodyPoint.PELVIS, 200), times, zeros, new double[3][times.length]);
  }

  /** 200 Hz with jitter, every fiftieth sample lost, a hole in the middle, what follows shifted. */
  private static List<Double> times(double jitterS, double holeS, double shiftS) {
    Random random = new Random(4);
    List<Double> out = new ArrayList<>();
    for (int k = 0; k < 4000; k++) {
      double atS = 3 + k * STEP_S;
      boolean isLost = random.nextInt(50) == 0 || (atS > 13 && atS < 13 + holeS);
      if (!isLost) {
        out.add(
            atS
                + jitterS * Math.max(-2, Math.min(2, random.nextGaussian()))
                + (atS > 13 ? shiftS : 0));
      }
    }
    return out;
  }

  @ParameterizedTest
  @CsvSource({
    "0.0002, 0.1, 0, none",
    "0.0002, 0.1, 0.0012, sure",
    "0.0002, 0.1, -0.0012, sure",
    "0.0002, 0.1, 0.00003, none",
    "0.00001, 0.1, 0.0001, sure",
    "0.0002, 1, 0, unsure",
    "0.0002, 1, 0.005, unsure",
    "0.0002, 1, 0.0262, sure",
    "0.0002, 6, 0.0262, sure",
    "0.0002, 0.008, 0.0012, none",
    "0.0002, 0.013, 0.0012, sure",
    "0.0011, 8, 0, sure"
  })
  void stepsThatDoNotGoOnAreABreak(double jitterS, double holeS, double shiftS, String expected) {
    // Given: 200 Hz, jitter as said, seed 4, a hole at 13 s, later times shifted. Expect: a shift
    // that
    // is no whole step (5 ms) and beyond the jitter's mean is sure; whole steps cannot be told,
    // which
    // is said of holes above 0.2 s; holes under 20 ms are not looked at; where jitter hides the
    // steps
    // a long hole counts as a break.
    List<ClockBreak> breaks = ClockBreak.of(stream(times(jitterS, holeS, shiftS)));
    assertThat(breaks).hasSize(expected.equals("none") ? 0 : 1);
    breaks.forEach(
        b -> {
          assertThat(b.isSure()).isEqualTo(expected.equals("sure"));
          assertThat(b.lastS()).isCloseTo(13, within(0.02));
          assertThat(b.firstS()).isCloseTo(13 + holeS + shiftS, within(0.02));
        });
  }

  @Test
  void aClockThatGoesBackAMomentIsSeen() {
    // Given: no hole, but a sample at hardly any distance, as one that began anew 7 ms early and
    // was
    // laid behind the last. Expect: a break.
    List<Double> times = times(0.00005, 0, 0);
    int at = 2000;
    double lastS = times.get(at);
    for (int k = at + 1; k < times.size(); k++) {
      times.set(k, Math.max(times.get(k) - 0.007, lastS + 1e-6 * (k - at)));
    }
    assertThat(ClockBreak.of(stream(times))).isNotEmpty().allMatch(ClockBreak::isSure);
  }

  @Test
  void withoutHolesThereIsNoBreak() {
    assertThat(ClockBreak.of(stream(times(0.0002, 0, 0)))).isEmpty();
    assertThat(ClockBreak.of(stream(List.of(1.0, 1.005)))).isEmpty();
    assertThat(ClockBreak.of(stream(List.of(1.0, 1.005, 1.01, 2.0, 2.005)))).hasSize(1);
  }

  @ParameterizedTest
  @CsvSource({"0.1", "0.15", "0.2", "0.3"})
  void timesThatCrowdByJitterAreNoBreak(double jitterSteps) {
    // Given: a minute at 1000 Hz whose times jitter by so many steps, kept in order, so that some
    // lie
    // at hardly any distance (seeds 1 to 3; a count that could not go back slipped there, and a
    // lesson's forearm was laid 42 ms off in the middle of a swing). Expect: no break.
    for (int seed = 1; seed <= 3; seed++) {
      Random random = new Random(seed);
      List<Double> out = new ArrayList<>();
      double lastS = 0;
      for (int k = 0; k < 60_000; k++) {
        lastS = Math.max(1 + 1e-3 * (k + jitterSteps * random.nextGaussian()), lastS + 0.0002);
        out.add(lastS);
      }
      assertThat(ClockBreak.of(stream(out))).as("seed %d", seed).isEmpty();
    }
  }

  @Test
  void aBreakIsToldOnAnEarlierAxis() {
    assertThat(new ClockBreak(5, 7, true).earlier(2)).isEqualTo(new ClockBreak(3, 5, true));
  }
}
