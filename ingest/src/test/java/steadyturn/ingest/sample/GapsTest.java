package steadyturn.ingest.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class GapsTest {

  private static final double NAN = Double.NaN;

  /**
   * At 100 Hz: samples 0..9, then 20..29; the rate about y lost in 3..4, the force along z in 24.
   */
  private static UnitStream stream() {
    double[] time = new double[20];
    double[][] accel = new double[3][20];
    double[][] gyro = new double[3][20];
    for (int i = 0; i < 20; i++) {
      time[i] = 0.01 * (i < 10 ? i : i + 10);
    }
    gyro[1][3] = NAN;
    gyro[1][4] = NAN;
    accel[2][14] = NAN;
    return new UnitStream(UnitFacts.plain(BodyPoint.PELVIS, 100), time, accel, gyro);
  }

  @Test
  void missingLinesAndLostValuesOfWhatIsNeededAreGaps() {
    // Given: the stream above. Expect: for the rate a gap from sample 2 to 5 and one from 9 to 10;
    // for the force 9 to 10 and 13 to 15; for both all three. Exact: indices.
    List<Gaps.Gap> rate = Gaps.of(stream(), Gaps.Need.RATE).inner();
    assertThat(rate).extracting(Gaps.Gap::before).containsExactly(2, 9);
    assertThat(rate).extracting(Gaps.Gap::after).containsExactly(5, 10);
    List<Gaps.Gap> force = Gaps.of(stream(), Gaps.Need.FORCE).inner();
    assertThat(force).extracting(Gaps.Gap::before).containsExactly(9, 13);
    assertThat(Gaps.of(stream(), Gaps.Need.BOTH).inner()).hasSize(3);
    assertThat(rate.get(1).lengthS()).isCloseTo(0.11, within(1e-12));
  }

  @Test
  void anInstantInsideAGapIsFoundInItAndOneAtItsEndIsNot() {
    // Given: the same. Expect: the gap from 0.1 to 0.2 s holds 0.15 s, none holds its end.
    Gaps gaps = Gaps.of(stream(), Gaps.Need.RATE);
    assertThat(gaps.around(0.15)).isPresent();
    assertThat(gaps.around(0.2)).isEmpty();
  }

  @Test
  void theLongestAndTheLostPartCountTheEndsOfASpanToo() {
    // Given: the same. Expect: in 0.05..0.15 the last 0.06 s are unseen; in -0.1..0.05 the first
    // 0.1 s; of 0..0.29 the gap's 0.10 s and the two lost samples' 0.02 s are lost: 12 of 29.
    // Within 1e-9.
    Gaps gaps = Gaps.of(stream(), Gaps.Need.RATE);
    assertThat(gaps.longestS(0.05, 0.15)).isCloseTo(0.06, within(1e-9));
    assertThat(gaps.longestS(-0.1, 0.05)).isCloseTo(0.1, within(1e-9));
    assertThat(gaps.lostPart(0, 0.29)).isCloseTo(12.0 / 29, within(1e-9));
  }

  @Test
  void aStreamWithoutOneWholeSampleIsLostAltogether() {
    // Given: no force at all. Expect: no gap between samples, yet all of it is lost. Exact.
    UnitStream bare = stream();
    java.util.Arrays.fill(bare.accelColumnMps2(0), NAN);
    Gaps gaps = Gaps.of(bare, Gaps.Need.FORCE);
    assertThat(gaps.inner()).isEmpty();
    assertThat(gaps.lostPart(0, 0.2)).isEqualTo(1);
    assertThat(gaps.longestS(0, 0.2)).isEqualTo(0.2);
  }

  @Test
  void valuesAtFullScaleAreCut() {
    // Given: a unit of 10 rad/s that shows 9.995 and -10 in samples 6 and 7. Expect: one cut from 5
    // to 8 (within a thousandth of full scale counts as cut: our choice).
    double[][] gyro = new double[3][20];
    gyro[2][6] = 9.995;
    gyro[0][7] = -10;
    UnitFacts facts = new UnitFacts(BodyPoint.PELVIS, "", 100, Double.POSITIVE_INFINITY, 10, false);
    UnitStream cut = new UnitStream(facts, stream().timeColumnS(), new double[3][20], gyro);
    assertThat(Gaps.cut(cut, Gaps.Need.RATE)).extracting(Gaps.Gap::before).containsExactly(5);
    assertThat(Gaps.cut(cut, Gaps.Need.RATE)).extracting(Gaps.Gap::after).containsExactly(8);
    assertThat(Gaps.cut(cut, Gaps.Need.FORCE)).isEmpty();
  }
}
