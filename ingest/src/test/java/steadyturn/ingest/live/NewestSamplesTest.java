package steadyturn.ingest.live;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * Given in all: samples at 0, 0.25, .. 2.5 s of a unit, their force and rate told by their index.
 */
class NewestSamplesTest {

  private static final UnitFacts FACTS = UnitFacts.plain(BodyPoint.PELVIS, 4);

  private final NewestSamples samples = new NewestSamples();

  @BeforeEach
  void send() {
    for (int i = 0; i <= 10; i++) {
      samples.add(
          0.25 * i, new double[] {i, 10 + i, 20 + i}, new double[] {30 + i, 40 + i, 50 + i});
    }
  }

  @Test
  void whatIsKeptIsGivenBackInItsColumns() {
    UnitStream half = samples.between(FACTS, 0.5, 1.25);
    assertThat(half.size()).isEqualTo(3);
    assertThat(half.timeS(0)).isEqualTo(0.5);
    for (int axis = 0; axis < 3; axis++) {
      assertThat(half.accelMps2(axis, 1)).isEqualTo(10 * axis + 3);
      assertThat(half.gyroRadPerS(axis, 2)).isEqualTo(30 + 10 * axis + 4);
    }
    assertThat(samples.between(FACTS, 9, 10).size()).isZero();
    assertThat(samples.between(FACTS, 2, 1).size()).isZero();
  }

  @Test
  void aBetterStartMovesAllThatIsKept() {
    assertThat(samples.lastS()).isEqualTo(2.5);
    samples.startsAt(100);
    assertThat(samples.lastS()).isEqualTo(102.5);
    assertThat(samples.add(3, new double[3], new double[3])).isEqualTo(103);
    assertThat(samples.between(FACTS, 101, 101.6).timeS(2)).isEqualTo(101.5);
    samples.dropBefore(102);
    assertThat(samples.between(FACTS, 0, 200).timeS(0)).isEqualTo(102);
    samples.dropBefore(200);
    assertThat(samples.lastS()).isEqualTo(Double.NEGATIVE_INFINITY);
  }
}
