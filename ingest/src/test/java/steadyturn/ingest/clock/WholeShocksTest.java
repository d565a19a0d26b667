package steadyturn.ingest.clock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;
import steadyturn.ingest.shock.Shock;
import steadyturn.ingest.shock.ShockFinder;

/**
 * A ball at 2 s in an arm unit at 1000 Hz, the twentieth of it 20 ms later, as straps slap, and
 * something 90 ms before it, so that the ring of one shock (0.1 s) ends between the two.
 */
class WholeShocksTest {

  private static final double BLOW_S = 2;
  private static final double SLAP_S = 2.02;
  private static final double BEFORE_S = 1.91;

  private static double ring(double sinceS, double mps2) {
    return sinceS < 0 ? 0 : mps2 * Math.exp(-sinceS / 0.003) * Math.cos(2 * Math.PI * 150 * sinceS);
  }

  /** Without the samples between two times. */
  private static UnitStream unit(double lostFromS, double lostToS) {
    double[] time =
        IntStream.range(0, 4000)
            .mapToDouble(i -> i / 1000.0)
            .filter(t -> t < lostFromS || t > lostToS)
            .toArray();
    double[][] accel = new double[3][time.length];
    double[][] gyro = new double[3][time.length];
    for (int i = 0; i < time.length; i++) {
      accel[0][i] =
          ring(time[i] - BLOW_S, 400) + ring(time[i] - SLAP_S, 20) + ring(time[i] - BEFORE_S, 8);
      accel[2][i] = 9.8;
    }
    return new UnitStream(UnitFacts.plain(BodyPoint.LEAD_FOREARM, 1000), time, accel, gyro);
  }

  @Test
  void whatABlowLeftRingingIsNoBlow() {
    // Given: both shocks. Expect: both felt, the ball alone is one that clocks are tied by.
    assertThat(ShockFinder.find(unit(5, 5))).hasSizeGreaterThan(1);
    List<Shock> blows = WholeShocks.find(unit(5, 5));
    assertThat(blows).hasSize(1);
    assertThat(blows.get(0).timeS()).isCloseTo(BLOW_S, within(0.002));
  }

  @Test
  void itIsNoneWhereTheBlowItselfBeganInAGap() {
    // Given: 3 ms lost just before the ball. Expect: nothing; a clock was tied by the slap, 17 ms
    // off, +-4 (drawn lesson 58000 of soft-blows, tuning half).
    assertThat(WholeShocks.find(unit(BLOW_S - 0.0035, BLOW_S - 0.0005))).isEmpty();
  }

  @Test
  void oneSampleLostAtAHighRateHidesNoBeginning() {
    // Given: one of 1000 samples a second lost 4 ms before the ball. Expect: its time stands.
    List<Shock> blows = WholeShocks.find(unit(BLOW_S - 0.0045, BLOW_S - 0.0035));
    assertThat(blows).hasSize(1);
    assertThat(blows.get(0).timeS()).isCloseTo(BLOW_S, within(0.002));
  }
}
