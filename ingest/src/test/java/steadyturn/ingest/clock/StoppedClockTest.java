package steadyturn.ingest.clock;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * Given in all: forearm and hand that turn alike for 60 s, every 10 s for 3 s, each time another
 * way (seed 5), at 50 Hz. The hand's stream ends 6 s early.
 */
class StoppedClockTest {

  private static final int HZ = 50;
  private static final double LONG_S = 60;
  private static final double LOST_S = 6;

  /** What both turn, rad/s; smooth, about all axes. */
  private static final double[][] RATES = rates();

  private static double[][] rates() {
    Random random = new Random(5);
    double[][] rates = new double[3][(int) (LONG_S * HZ)];
    for (double fromS = 4; fromS + 3 < LONG_S; fromS += 10) {
      for (int axis = 0; axis < 3; axis++) {
        double size = 2 + 4 * random.nextDouble();
        double often = 1 + 6 * random.nextDouble();
        double phase = 6 * random.nextDouble();
        for (int i = 0; i < 3 * HZ; i++) {
          double part = i / (3.0 * HZ);
          rates[axis][(int) (fromS * HZ) + i] =
              size * Math.sin(Math.PI * part) * Math.sin(often * 3 * part + phase);
        }
      }
    }
    return rates;
  }

  /** All samples but those of a stretch; the clock does not count on over it where it stops. */
  private static UnitStream unit(BodyPoint point, double fromS, double toS, boolean stops) {
    int[] kept =
        IntStream.range(0, RATES[0].length).filter(i -> i < fromS * HZ || i >= toS * HZ).toArray();
    double[] timeS = new double[kept.length];
    double[][] gyro = new double[3][kept.length];
    for (int k = 0; k < kept.length; k++) {
      timeS[k] = (stops ? k : kept[k]) / (double) HZ;
      for (int axis = 0; axis < 3; axis++) {
        gyro[axis][k] = RATES[axis][kept[k]];
      }
    }
    return new UnitStream(UnitFacts.plain(point, HZ), timeS, new double[3][kept.length], gyro);
  }

  private static final UnitStream ARM = unit(BodyPoint.LEAD_FOREARM, 0, 0, true);

  @Test
  void aClockThatStoodStillNearTheEndIsDoubtedFromThereOn() {
    // Given: 6 s lost from 46 s on, uncounted; one movement, at 54 s, after it. Expect: no trust
    // after the movement at 44 s, the last before; and some before that.
    Optional<StoppedClock> doubt =
        StoppedClock.of(ARM, unit(BodyPoint.LEAD_HAND, 46, 46 + LOST_S, true), 0);
    assertThat(doubt).isPresent();
    assertThat(doubt.orElseThrow().sinceS()).isBetween(30.0, 48.0);
    assertThat(doubt.orElseThrow().lagS()).isBetween(-LOST_S - 0.1, -LOST_S + 0.1);
    // and seen the other way round, where the first unit is the one that stopped
    assertThat(StoppedClock.of(unit(BodyPoint.LEAD_HAND, 46, 46 + LOST_S, true), ARM, 0))
        .hasValueSatisfying(
            other -> assertThat(other.lagS()).isBetween(LOST_S - 0.1, LOST_S + 0.1));
  }

  @Test
  void aUnitThatWasOnlyStoppedEarlyIsNot() {
    // Given: the same 6 s missing at the end; then 3 s more that were lost but counted.
    assertThat(StoppedClock.of(ARM, unit(BodyPoint.LEAD_HAND, LONG_S - LOST_S, LONG_S, true), 0))
        .isEmpty();
    assertThat(StoppedClock.of(ARM, unit(BodyPoint.LEAD_HAND, 46, 49, false), 0)).isEmpty();
  }
}
