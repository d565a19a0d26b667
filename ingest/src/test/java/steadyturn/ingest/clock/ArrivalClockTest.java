package steadyturn.ingest.clock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A unit without a clock, seen through the arrivals of its blocks only. */
class ArrivalClockTest {

  private static final double START_S = 5000;

  private final ArrivalClock clock = new ArrivalClock();
  private final List<Double> takenS = new ArrayList<>();
  private final List<Double> toldS = new ArrayList<>();
  private final Random random = new Random(8);

  /** A way from the unit to the host. */
  private interface Way {

    /** When a block that was ready then comes out, s. */
    double outS(double readyS);
  }

  /** Nothing overtakes: a block comes no earlier than the one before it. */
  private Way jitter(double mostS) {
    double[] last = {0};
    return readyS -> {
      last[0] = Math.max(last[0], readyS + 0.001 + mostS * random.nextDouble());
      return last[0];
    };
  }

  /** Sends blocks of so many samples that were taken from one time of the unit to another, s. */
  private void send(Way way, double rateHz, int batch, double fromS, double toS) {
    int blocks = (int) Math.round((toS - fromS) * rateHz / batch);
    for (int k = 0; k < blocks; k++) {
      for (int i = 0; i < batch; i++) {
        takenS.add(fromS + (k * batch + i) / rateHz);
      }
      double readyS = takenS.get(takenS.size() - 1);
      keep(clock.came(batch, START_S + way.outS(readyS)));
    }
  }

  private void keep(double[] timesS) {
    for (double timeS : timesS) {
      toldS.add(timeS - START_S);
    }
  }

  /** All samples have a time, none goes back; told less taken lies within bounds from a time on. */
  private void errorsLieWithin(double fromS, double toS, double lowMs, double highMs) {
    keep(clock.cut());
    assertThat(toldS).hasSameSizeAs(takenS);
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    boolean rises = true;
    for (int i = 0; i < toldS.size(); i++) {
      rises &= i == 0 || toldS.get(i - 1) < toldS.get(i);
      if (takenS.get(i) >= fromS && takenS.get(i) < toS) {
        double errorMs = 1000 * (toldS.get(i) - takenS.get(i));
        least = Math.min(least, errorMs);
        most = Math.max(most, errorMs);
      }
    }
    assertThat(rises).isTrue();
    assertThat(least).as("ms, %s to %s s", fromS, toS).isBetween(lowMs, highMs);
    assertThat(most).as("ms, %s to %s s", fromS, toS).isBetween(lowMs, highMs);
  }

  @ParameterizedTest
  @CsvSource({"96, 1", "96, 10", "96, 5", "208, 16", "500, 4", "1010, 20"})
  void theRateIsLearnedAndEachBatchSpreadEvenly(double rateHz, int batch) {
    // Given: a minute in batches, each 1 to 21 ms on its way, seed 8. Expect: the rate within
    // 0.01 %, inside three stated spreads; times from 0.5 ms less than the least way to 1.5 ms more
    // (among ten blocks a second the quickest of 30 s is within 0.3 ms of it); in the first
    // seconds,
    // when two seconds are all that is known, 5 ms.
    assertThat(clock.rateHz()).isNaN();
    assertThat(clock.rateSpread()).isInfinite();
    send(jitter(0.02), rateHz, batch, 0, 60);
    assertThat(clock.rateHz()).isCloseTo(rateHz, within(1e-4 * rateHz));
    assertThat(clock.rateSpread()).isBetween(1e-5, 1e-3);
    assertThat(Math.abs(clock.rateHz() / rateHz - 1)).isLessThan(3 * clock.rateSpread());
    keep(clock.cut());
    errorsLieWithin(0, 10, -1, 6);
    errorsLieWithin(10, 61, 0.5, 2.5);
  }

  @Test
  void withoutJitterTimesAreExact() {
    // Given: 96 Hz by 8, always 7 ms on the way. Expect: told 7 ms later, within 1e-6 s.
    send(readyS -> readyS + 0.007, 96, 8, 0, 60);
    errorsLieWithin(0, 60, 7 - 1e-3, 7 + 1e-3);
    assertThat(clock.rateHz()).isCloseTo(96, within(1e-6));
  }

  @ParameterizedTest
  @CsvSource({"4, 10, true", "4, 1, true", "4, 10, false", "1.7, 1, false", "0.3, 10, false"})
  void anOutageBecomesAGapAndNothingIsShiftedAfterIt(double outageS, int batch, boolean isTold) {
    // Given: half a minute at 96 Hz, an outage in which samples are lost (the port gone, or nobody
    // saying so), half a minute more. Expect: right at once after it, within 3 ms: of seven blocks
    // in
    // 0.7 s the quickest is some 2.5 ms on its way; and the rate as before.
    Way way = jitter(0.02);
    send(way, 96, batch, 0, 30);
    if (isTold) {
      keep(clock.cut());
    }
    send(way, 96, batch, 30 + outageS, 60 + outageS);
    keep(clock.cut());
    errorsLieWithin(10, 30, 0.5, 2.5);
    errorsLieWithin(30 + outageS, 90, 0.5, 4);
    assertThat(clock.rateHz()).isCloseTo(96, within(0.01));
  }

  @ParameterizedTest
  @CsvSource({"1, 96, 0.01", "3, 96, 0.01", "5, 96, 0.01", "1, 200, 0.005", "2, 200, 0.02"})
  void aFewSamplesLostUnseenLeaveTheirGap(int lost, double rateHz, double jitterS) {
    // Given: single samples by the way, some of them lost without a word. Expect: all that comes in
    // the second after it is late by that much, so their times are right from the first one on.
    Way way = jitter(jitterS);
    send(way, rateHz, 1, 0, 30);
    send(way, rateHz, 1, 30 + lost / rateHz, 60);
    errorsLieWithin(10, 29.9, 0.5, 2.5);
    errorsLieWithin(29.9, 60, 0.5 - 1000 / rateHz, 2.5 + 1000 / rateHz);
    errorsLieWithin(30.2, 60, 0.5, 2.5);
  }

  @Test
  void manySinglesLostUnseenLeaveTheirGaps() {
    // Given: 200 Hz, one sample in 500 lost (0.2 %, one every 2.5 s), jitter of 5 ms. Those of the
    // first two seconds make the
    // rate wrong at first. Expect: from 10 s on within two steps; in the second minute nine in ten
    // times within 2 ms, and the rate within 0.1 %.
    Way way = jitter(0.005);
    for (int k = 0; k < 200 * 120; k++) {
      double atS = k / 200.0;
      if (random.nextInt(500) > 0) {
        takenS.add(atS);
        keep(clock.came(1, START_S + Math.max(way.outS(atS), atS)));
      }
    }
    errorsLieWithin(10, 120, 0.5 - 10, 2.5 + 10);
    long near = 0;
    int from = toldS.size() / 2;
    for (int i = from; i < toldS.size(); i++) {
      near += Math.abs(toldS.get(i) - takenS.get(i) - 0.0015) < 0.002 ? 1 : 0;
    }
    assertThat(near / (double) (toldS.size() - from)).isGreaterThan(0.9);
    assertThat(clock.rateHz()).isCloseTo(200, within(0.2));
  }

  @Test
  void whatTheCounterMissedLeavesItsPlaces() {
    // Given: 40 samples lost that the unit's counter tells of. Expect: nothing shifts.
    Way way = jitter(0.01);
    send(way, 96, 1, 0, 20);
    for (int i = 0; i < 40; i++) {
      takenS.add(20 + i / 96.0);
    }
    takenS.add(20 + 40 / 96.0);
    keep(clock.came(41, START_S + way.outS(20 + 40 / 96.0)));
    send(way, 96, 1, 20 + 41 / 96.0, 40);
    errorsLieWithin(10, 40, 0.5, 2.5);
  }

  @Test
  void aCounterThatLeapsIsNotBelieved() {
    // Given: a counter that says 3000 samples (31 s) are missing within 10 ms. Expect: the next
    // samples where they came, within 20 ms: 3000 lost places need a millionth of a second each.
    Way way = jitter(0.01);
    send(way, 96, 1, 0, 20);
    List<Double> next = new ArrayList<>();
    for (int k = 0; k < 3000; k++) {
      double[] told = clock.came(k == 0 ? 3001 : 1, START_S + way.outS(20 + k / 96.0));
      Arrays.stream(told).forEach(t -> next.add(t - START_S));
    }
    Arrays.stream(clock.cut()).forEach(t -> next.add(t - START_S));
    assertThat(next.get(next.size() - 2999)).isCloseTo(20 + 1 / 96.0, within(0.02));
    assertThat(next.get(next.size() - 1)).isCloseTo(20 + 2999 / 96.0, within(0.02));
  }

  @Test
  void aStallThatLosesNothingIsNoGap() {
    // Given: every ten seconds nothing comes for a second, then all of it at once. Expect: times as
    // if nothing had been; 6 ms in the first seconds as above.
    Way way = jitter(0.02);
    send(r -> way.outS(r) + (r % 10 > 9 ? 10 - r % 10 : 0), 96, 10, 0, 60);
    keep(clock.cut());
    errorsLieWithin(0, 10, -1, 6);
    errorsLieWithin(10, 61, 0.5, 2.5);
  }

  @Test
  void aRateThatWandersIsFollowed() {
    // Given: a unit that warms up: 0.1 % slower after five minutes. Expect: within 1.5 ms of it; a
    // line through all five minutes would lie up to 37 ms off.
    Way way = jitter(0.02);
    double atS = 0;
    for (int k = 0; k < 96 * 300; k++) {
      takenS.add(atS);
      keep(clock.came(1, START_S + way.outS(atS)));
      atS += (1 + 1e-3 * atS / 300) / 96;
    }
    errorsLieWithin(10, 300, 0.2, 2.5);
  }

  @Test
  void aStillnessBeforeTheRateIsKnownBeginsAnew() {
    // Given: 0.8 s of samples, 0.6 s nothing, then a minute. Expect: the first by their own pace.
    send(r -> r + 0.004, 96, 4, 0, 0.8);
    send(r -> r + 0.004, 96, 4, 1.4, 60);
    errorsLieWithin(0, 60, 3.9, 4.1);
  }

  @Test
  void aCutWithNothingHeldTellsNothing() {
    assertThat(clock.cut()).isEmpty();
    send(r -> r, 96, 4, 0, 1);
    assertThat(toldS).isEmpty();
    keep(clock.cut());
    errorsLieWithin(0, 1, -1e-3, 1e-3);
  }
}
