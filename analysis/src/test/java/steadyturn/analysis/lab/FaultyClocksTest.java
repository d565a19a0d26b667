package steadyturn.analysis.lab;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

/**
 * One unit's clock is wrong: its start by 20 to 500 ms, its rate by 300 to 3000 ppm, it counts on
 * over an outage of 1 to 10 s, or its counter began anew and was laid down by arrival, up to 30 ms
 * off. The long form, 100 faults: {@code -DfaultyClocks=100}.
 */
class FaultyClocksTest {

  @Test
  void aFaultyClockIsMendedOrWithheld() {
    // Given: so many seeded faults (seeds 1 on). Expect: no tie of two clocks at any impact beyond
    // 3.5 stated spreads (and 2 ms) without being withheld; within 1.96 spreads nine in ten; and
    // three quarters of the ties not withheld.
    List<FaultyClocks> faults =
        LongStream.rangeClosed(1, Integer.getInteger("faultyClocks", 9))
            .mapToObj(FaultyClocks::of)
            .toList();
    faults.forEach(f -> System.out.println(line(f)));
    int ties = faults.stream().mapToInt(f -> f.outcome().ties()).sum();
    int withheld = faults.stream().mapToInt(f -> f.outcome().withheld()).sum();
    int covered = faults.stream().mapToInt(f -> f.outcome().covered()).sum();
    System.out.printf(
        Locale.ROOT,
        "%d faults: %d ties, %d withheld, %d of the rest within 1.96 spreads%n",
        faults.size(),
        ties,
        withheld,
        covered);
    assertThat(faults).allSatisfy(f -> assertThat(f.outcome().wrong()).as(line(f)).isZero());
    assertThat(covered).isGreaterThan((int) (0.9 * (ties - withheld)));
    assertThat(withheld).isLessThan(ties / 4);
  }

  @Test
  void oneStrayBlowDoesNotSpeakForTheStatedClockOfATrunk() {
    // Given: a pelvis clock 1740 ppm slow, four blows felt, the first 76 ms (six spreads) off what
    // is stated and three on one line (seed 8077). Expect: no tie silently wrong.
    FaultyClocks fault = FaultyClocks.of(8077);
    assertThat(fault.outcome().wrong()).as(line(fault)).isZero();
    assertThat(fault.outcome().told()).isTrue();
  }

  private static String line(FaultyClocks f) {
    return String.format(
        Locale.ROOT,
        "seed %d %s %s %.4f: %s",
        f.seed(),
        f.fault(),
        f.unit(),
        f.size(),
        f.outcome());
  }
}
