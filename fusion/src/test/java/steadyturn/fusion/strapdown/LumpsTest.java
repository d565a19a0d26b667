package steadyturn.fusion.strapdown;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Slight losses are put together by their variances, all others stand alone. */
class LumpsTest {

  private static Bridge of(int after, double beforeS, double lengthS, double... sd) {
    return new Bridge(after, beforeS, beforeS + lengthS, sd[0], sd[1], sd[2]);
  }

  @Test
  void slightOnesWithinATenthOfASecondAreOneWithTheirVariancesAdded() {
    // Given: three of 10, 20 and 10 ms within 0.095 s. Expect: one that acts behind the last, is
    // shown where the longest lies, spreads (3, 4, 12) -> 13 units. Within rounding.
    List<Bridge> found =
        Lumps.of(
            List.of(
                of(5, 1.000, 0.010, 0.003, 0.03, 0.006),
                of(9, 1.030, 0.020, 0.004, 0.04, 0.008),
                of(14, 1.085, 0.010, 0.012, 0.12, 0.024)));
    assertThat(found).hasSize(1);
    Bridge lump = found.get(0);
    assertThat(lump.after()).isEqualTo(14);
    assertThat(lump.beforeS()).isEqualTo(1.030);
    assertThat(lump.afterS()).isEqualTo(1.050);
    assertThat(lump.rotationSdRad()).isCloseTo(0.013, within(1e-12));
    assertThat(lump.velocitySdMps()).isCloseTo(0.13, within(1e-12));
    assertThat(lump.placeSdM()).isCloseTo(0.026, within(1e-12));
  }

  @Test
  void ofEquallyLongOnesTheFirstIsShown() {
    // Given: two of 1/64 s (exact in binary). Expect: the place of the first, the index of the
    // second.
    List<Bridge> found =
        Lumps.of(List.of(of(3, 1, 0.015625, 0.01, 0, 0), of(6, 1.03125, 0.015625, 0.01, 0, 0)));
    assertThat(found).hasSize(1);
    assertThat(found.get(0).beforeS()).isEqualTo(1);
    assertThat(found.get(0).after()).isEqualTo(6);
  }

  @Test
  void whatEndsMoreThanATenthOfASecondAfterTheFirstBeganStandsAlone() {
    // Given: pairs of 10 ms, the second ending 99 or 101 ms after the first began, and a third
    // right behind. Expect: 99 ms is one, 101 ms two; the tenth counts from the new lump's own
    // first, so a third that ends 90 ms after the second began joins it.
    Bridge first = of(5, 1.000, 0.010, 0.01, 0.1, 0.01);
    assertThat(Lumps.of(List.of(first, of(9, 1.089, 0.010, 0.01, 0.1, 0.01)))).hasSize(1);
    Bridge late = of(9, 1.091, 0.010, 0.01, 0.1, 0.01);
    List<Bridge> two = Lumps.of(List.of(first, late, of(12, 1.171, 0.010, 0.01, 0.1, 0.01)));
    assertThat(two).hasSize(2);
    assertThat(two.get(0).rotationSdRad()).isCloseTo(0.01, within(1e-12));
    assertThat(two.get(1).rotationSdRad()).isCloseTo(0.01 * Math.sqrt(2), within(1e-12));
    assertThat(two.get(1).beforeS()).isEqualTo(1.091);
  }

  @Test
  void longerThanThreeHundredthsStandsAloneOnBothItsSides() {
    // Given: 29 or 31 ms between two of 5 ms, all within 0.1 s. Expect: 29 ms one lump; 31 ms
    // three, each with its own spread.
    Bridge a = of(5, 1.000, 0.005, 0.01, 0.1, 0.01);
    Bridge c = of(20, 1.060, 0.005, 0.03, 0.1, 0.01);
    assertThat(Lumps.of(List.of(a, of(12, 1.02, 0.029, 0.02, 0.1, 0.01), c))).hasSize(1);
    List<Bridge> three = Lumps.of(List.of(a, of(12, 1.02, 0.031, 0.02, 0.1, 0.01), c));
    assertThat(three).extracting(Bridge::after).containsExactly(5, 12, 20);
    assertThat(three).extracting(Bridge::rotationSdRad).containsExactly(0.01, 0.02, 0.03);
  }

  @Test
  void whatIsTooSlightInEveryKindIsLeftOut() {
    // Given: a single one just below and just above 0.1 mrad, 0.3 mm/s, 0.1 mm. Expect: left out
    // where all three are below, kept where any is above.
    assertThat(Lumps.of(List.of(of(5, 1, 0.01, 0.99e-4, 2.97e-4, 0.99e-4)))).isEmpty();
    assertThat(Lumps.of(List.of(of(5, 1, 0.01, 1.01e-4, 0, 0)))).hasSize(1);
    assertThat(Lumps.of(List.of(of(5, 1, 0.01, 0, 3.03e-4, 0)))).hasSize(1);
    assertThat(Lumps.of(List.of(of(5, 1, 0.01, 0, 0, 1.01e-4)))).hasSize(1);
    assertThat(Lumps.of(List.of())).isEmpty();
  }

  @Test
  void slightOnesCountTogether() {
    // Given: two of 0.08 mrad, each too slight. Expect: together 0.113 mrad, which counts.
    List<Bridge> found =
        Lumps.of(List.of(of(5, 1, 0.01, 0.8e-4, 0, 0), of(9, 1.03, 0.01, 0.8e-4, 0, 0)));
    assertThat(found).hasSize(1);
    assertThat(found.get(0).rotationSdRad()).isCloseTo(0.8e-4 * Math.sqrt(2), within(1e-12));
  }
}
