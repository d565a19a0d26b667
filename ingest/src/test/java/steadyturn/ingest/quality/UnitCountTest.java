package steadyturn.ingest.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import steadyturn.ingest.sample.BodyPoint;

/** Figures of pieces of one stream, put together and taken apart. */
class UnitCountTest {

  private static final UnitCount FIRST = new UnitCount(100, 5, 3, 2, 50);
  private static final UnitCount SECOND = new UnitCount(300, 1, 4, 6, 60);
  private static final UnitCount NOTHING = new UnitCount(0, 0, 0, 0, 20);

  @Test
  void piecesAddUpAndTheRateIsTheMeanOverTheTime() {
    // Expect: sums; (2 s at 50 Hz and 6 s at 60 Hz) / 8 s.
    UnitCount both = FIRST.and(SECOND);
    assertThat(both).isEqualTo(new UnitCount(400, 6, 7, 8, 57.5));
    assertThat(both.without(SECOND)).isEqualTo(FIRST);
    assertThat(both.without(FIRST)).isEqualTo(SECOND);
  }

  @Test
  void withoutAnyTimeTheRateStaysAsItIs() {
    assertThat(NOTHING.and(NOTHING).rateHz()).isEqualTo(20);
    assertThat(FIRST.without(FIRST)).isEqualTo(new UnitCount(0, 0, 0, 0, 50));
    assertThat(NOTHING.and(FIRST)).isEqualTo(FIRST);
  }

  @Test
  void lossIsAPartOfWhatWasExpected() {
    assertThat(FIRST.lostPct()).isCloseTo(100 * 5 / 105.0, within(1e-9));
    assertThat(NOTHING.lostPct()).isEqualTo(100);
  }

  @Test
  void aStreamIsCountedAsItCame() {
    // Given: 100 Hz, 2001 samples, three of them at 157 m/s^2 of 157, 0.05 s lost in the middle.
    SteadyUnit unit = new SteadyUnit(BodyPoint.PELVIS, 100, 2001).ranges(157, 35).later(1000, 0.05);
    unit.accel[1][300] = 157;
    unit.accel[1][400] = -157;
    unit.accel[2][500] = 157;
    UnitCount count = UnitCount.of(unit.stream());
    assertThat(count.samples()).isEqualTo(2001);
    assertThat(count.lostSamples()).isEqualTo(5);
    assertThat(count.saturatedSamples()).isEqualTo(3);
    assertThat(count.lengthS()).isCloseTo(20.05, within(1e-9));
    assertThat(count.rateHz()).isCloseTo(100, within(0.01));
  }
}
