package steadyturn.analysis.wrist;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** The held angle, on courses of known shape. */
class PlateauTest {

  private static final int SAMPLES = 100;

  /** Held at 60 deg over two thirds of the stretch, then falling; tilted by an error. */
  private static double[] held(double errorDeg) {
    double[] cocks = new double[SAMPLES];
    for (int i = 0; i < SAMPLES; i++) {
      double u = i / (SAMPLES - 1.0);
      cocks[i] = 60 - 90 * Math.max(0, u - 2 / 3.0) + errorDeg * u;
    }
    return cocks;
  }

  private static double sd(int a, int b, double errorSdDeg) {
    return errorSdDeg * Math.abs(a - b) / (SAMPLES - 1.0);
  }

  @Test
  void aCourseWithoutErrorIsReadAsItIs() {
    // Given: held at 60 deg, known exactly. Expect: 60. Within 1e-9: rounding.
    assertThat(Plateau.of(held(0), (a, b) -> 0).deg()).isCloseTo(60, within(1e-9));
  }

  @Test
  void anAngleThatFallsPlainlyIsLeftAlone() {
    // Given: a fall of 20 deg over the held part, tilt known to 0.5 deg: the far end is no plateau.
    // Expect: the percentile itself, 60 - 0.1 x 20 / ... = that of the same course known exactly.
    // Within 0.05 deg: a tenth of the spread.
    double known = Plateau.of(held(-20), (a, b) -> 0).deg();
    assertThat(Plateau.of(held(-20), (a, b) -> sd(a, b, 0.5)).deg()).isCloseTo(known, within(0.05));
  }

  @Test
  void aTiltByChanceMakesTheHeldAngleReadHighAndPartOfThatIsTakenOff() {
    // Given: 4000 courses held at 60 deg, tilted by 3 deg (1 SD), seed 5. The percentile is at the
    // higher end, so it reads high: 0.4 x 2/3 x 3 deg = 0.8 for the maximum, a little less for it.
    // What is taken off is 0.41 of that on average for the larger of two (root of two less one, as
    // the tilt seen holds the error already), less for a percentile. Expect: a fifth at least, and
    // never too much. The mean of 4000 is known to 2 / sqrt(4000) = 0.03 deg.
    Random random = new Random(5);
    double read = 0;
    double corrected = 0;
    int n = 4000;
    for (int i = 0; i < n; i++) {
      double[] cocks = held(3 * random.nextGaussian());
      double truth = cocks[0];
      // errors are counted against the mean of the tilt, which is zero
      read += (Plateau.of(cocks, (a, b) -> 0).deg() - truth) / n;
      corrected += (Plateau.of(cocks, (a, b) -> sd(a, b, 3)).deg() - truth) / n;
    }
    assertThat(read).as("excess without, seed 5").isBetween(0.4, 0.9);
    assertThat(corrected).as("excess left, seed 5").isBetween(0.0, 0.8 * read);
  }

  @Test
  void theNinetiethPercentileIsRead() {
    // Given: 0, 1, .. 100 deg, and 0, 1, .. 10 deg, known exactly. Expect: 90, and 9 deg. Of 0, 1,
    // .. 11: 0.9 x 11 = 9.9 by a straight line between neighbours.
    assertThat(Plateau.of(upTo(100), (a, b) -> 0).deg()).isCloseTo(90, within(1e-9));
    assertThat(Plateau.of(upTo(10), (a, b) -> 0).deg()).isCloseTo(9, within(1e-9));
    assertThat(Plateau.of(upTo(11), (a, b) -> 0).deg()).isCloseTo(9.9, within(1e-9));
    assertThat(Plateau.of(upTo(10), (a, b) -> 0).at()).isEqualTo(9);
  }

  @Test
  void ofTwoSamplesEquallyNearTheEarlierStandsForThePlateau() {
    // Given: 0, 1, .. 5 deg, rising and falling, and the latter moved by what rounding may do.
    // Expect: the percentile lies half way between 4 and 5 deg, at 0.9 x 5 = 4.5 of the sorted
    // ones; the earlier of the two samples is taken, whatever the last digit says.
    assertThat(Plateau.of(upTo(5), (a, b) -> 0).at()).isEqualTo(4);
    for (double rounding : new double[] {0, 1e-12, -1e-12}) {
      double[] falling = {5 + rounding, 4, 3, 2, 1, 0};
      assertThat(Plateau.of(falling, (a, b) -> 0).at()).isEqualTo(0);
    }
  }

  private static double[] upTo(int last) {
    double[] out = new double[last + 1];
    for (int i = 0; i <= last; i++) {
      out[i] = i;
    }
    return out;
  }

  @Test
  void theExcessOfTheHigherOfTwoEndsIsTheNormalLossThatTablesGive() {
    // Given: a straight rise of 3 deg from its start to where it is read, and changes known to 3
    // deg whatever lies between: the ends are one spread apart. Tables of the unit normal loss have
    // 0.0833 there, and the normal distribution 0.1587 (handbook values, from memory). Expect: 3 -
    // 3 x 0.0833, and so likely the plateau sits at the far end.
    double[] cocks = upTo(100);
    for (int i = 0; i < cocks.length; i++) {
      cocks[i] *= 3 / 90.0;
    }
    Plateau plateau = Plateau.of(cocks, (a, b) -> 3);
    assertThat(plateau.deg()).isCloseTo(3 - 3 * 0.08332, within(1e-4));
    assertThat(plateau.farPart()).isCloseTo(0.1587, within(1e-4));
    assertThat(plateau.at()).isEqualTo(90);
    assertThat(plateau.far()).isZero();
  }

  @Test
  void flatIsWhatDiffersByNoMoreThanTwoSpreads() {
    // Given: a rise of 1 deg a sample, changes known to 20.1 deg. Expect: read at 90, flat down to
    // 40.2 deg less, that is from sample 50 on; what differs upwards is flat, too, and nearer.
    Plateau plateau = Plateau.of(upTo(100), (a, b) -> 20.1);
    assertThat(plateau.at()).isEqualTo(90);
    assertThat(plateau.far()).isEqualTo(50);
    // falling: the same from the other side
    double[] falling = upTo(100);
    for (int i = 0; i < falling.length; i++) {
      falling[i] = 100 - falling[i];
    }
    Plateau other = Plateau.of(falling, (a, b) -> 20.1);
    assertThat(other.at()).isEqualTo(10);
    assertThat(other.far()).isEqualTo(50);
    assertThat(other.deg()).isCloseTo(plateau.deg(), within(1e-9));
  }
}
