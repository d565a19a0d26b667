package steadyturn.analysis.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** Given in all: two units at 10 Hz, each value another number; the hand starts 2 s later. */
class LatestSamplesTest {

  private static final Player PLAYER = Player.unmeasured("p", Handedness.LEFT);

  private final LatestSamples samples =
      new LatestSamples("lesson", PLAYER, piece -> piece.with(piece.marks().subList(1, 2)));

  private void fed(int hundredths) {
    samples.unit(UnitFacts.plain(BodyPoint.PELVIS, 10), 5);
    samples.unit(UnitFacts.plain(BodyPoint.LEAD_HAND, 10), 7);
    for (int i = 0; i < hundredths; i++) {
      double at = samples.add(BodyPoint.PELVIS, 0.1 * i, values(i), values(i + 300));
      assertThat(at).isCloseTo(5 + 0.1 * i, within(1e-9));
      samples.add(BodyPoint.LEAD_HAND, 0.1 * i, values(-i), values(-i - 300));
    }
  }

  private static double[] values(int i) {
    return new double[] {i, i + 0.25, i + 0.5};
  }

  private Recording between(double fromS, double toS) {
    return samples.between(fromS, toS, List.of(mark("aim"), mark("bow"), mark("hit")));
  }

  private static Mark mark(String word) {
    return new Mark(1, 0, word, "", "");
  }

  @Test
  void aStretchIsCopiedAsItCameAndMadeTrue() {
    // Expect: samples from the first instant up to before the second, on the common axis, every
    // axis in its place; the marks through what calibrates.
    fed(60);
    Recording piece = between(7.95, 8.45);
    UnitStream pelvis = piece.unit(BodyPoint.PELVIS).orElseThrow();
    UnitStream hand = piece.unit(BodyPoint.LEAD_HAND).orElseThrow();
    assertThat(pelvis.size()).isEqualTo(5);
    assertThat(pelvis.timeS(0)).isCloseTo(8, within(1e-9));
    for (int axis = 0; axis < 3; axis++) {
      assertThat(pelvis.accelMps2(axis, 0)).isEqualTo(30 + 0.25 * axis);
      assertThat(pelvis.gyroRadPerS(axis, 4)).isEqualTo(334 + 0.25 * axis);
      assertThat(hand.accelMps2(axis, 4)).isEqualTo(-14 + 0.25 * axis);
    }
    assertThat(piece.id()).isEqualTo("lesson");
    assertThat(piece.player()).isEqualTo(PLAYER);
    assertThat(piece.marks()).containsExactly(mark("bow"));
  }

  @Test
  void aUnitWithoutTwoSamplesThereIsLeftOut() {
    fed(60);
    assertThat(between(5, 7.15).units()).hasSize(2); // two of the hand
    assertThat(between(5, 7.05).units())
        .extracting(UnitStream::point)
        .containsOnly(BodyPoint.PELVIS);
    assertThat(samples.points()).containsExactly(BodyPoint.PELVIS, BodyPoint.LEAD_HAND);
  }

  @Test
  void allWereHeardUpToTheSlowestThatStillSends() {
    // Given: 30 more samples of the hand: the pelvis ends at 10.9 s, the hand at 15.9 s. Expect:
    // the pelvis's end until it is silent for 1 s (our choice), the hand's then, and the clock
    // when nobody sends.
    fed(60);
    for (int i = 60; i < 90; i++) {
      samples.add(BodyPoint.LEAD_HAND, 0.1 * i, values(i), values(i));
    }
    assertThat(samples.heardToS(11.8)).isCloseTo(10.9, within(1e-9));
    assertThat(samples.heardToS(12)).isCloseTo(15.9, within(1e-9));
    assertThat(samples.heardToS(17)).isEqualTo(17);
  }

  @Test
  void whatIsNeededIsKeptUntilItIsNeededNoMore() {
    fed(60);
    samples.keepFrom(8);
    samples.dropBefore(9);
    assertThat(firstS()).isCloseTo(8, within(1e-9));
    samples.keepFrom(Double.POSITIVE_INFINITY);
    samples.dropBefore(9);
    assertThat(firstS()).isCloseTo(9, within(1e-9));
  }

  private double firstS() {
    return between(-9, 99).unit(BodyPoint.PELVIS).orElseThrow().timeS(0);
  }

  @Test
  void aUnitLaidAnewKeepsItsSamples() {
    fed(60);
    samples.unit(UnitFacts.plain(BodyPoint.PELVIS, 10), 5.5);
    assertThat(firstS()).isCloseTo(5.5, within(1e-9));
    assertThat(between(-9, 99).unit(BodyPoint.PELVIS).orElseThrow().size()).isEqualTo(60);
  }

  @Test
  void aUnitMustBeLaidOnTheAxisFirst() {
    assertThatThrownBy(() -> samples.add(BodyPoint.THORAX, 0, values(0), values(0)))
        .hasMessageContaining("THORAX");
  }
}
