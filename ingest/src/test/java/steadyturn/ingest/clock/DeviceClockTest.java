package steadyturn.ingest.clock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.ingest.clock.DeviceClock.Event;

class DeviceClockTest {

  private static final double START_HOST_S = 1000;

  private final DeviceClock clock = new DeviceClock();
  private final Random random = new Random(3);

  /** A sample taken at a host time, by a unit whose clock shows deviceS, arriving some ms later. */
  private Event send(double deviceS, double hostS) {
    double latencyS = 0.0005 - 0.002 * Math.log(1 - random.nextDouble());
    return clock.arrived(deviceS, hostS + latencyS, hostS + latencyS + 5e8);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-50, 0, 20, 50})
  void skewAndStartAreFoundUnderVaryingLatency(double skewPpm) {
    // Given: ten minutes at 200 Hz, latency 0.5 ms and an exponential tail of 2 ms, a burst of 80
    // ms
    // once a minute. Expect: skew within 2 ppm and the start within 0.5 ms of the least latency:
    // in a second of 200 samples the least of the tails is some 0.01 ms.
    for (int k = 0; k < 600 * 200; k++) {
      double trueS = k / 200.0;
      double burst = trueS % 60 < 0.3 ? 0.08 : 0;
      double deviceS = 77 + trueS / (1 + skewPpm * 1e-6);
      send(deviceS, START_HOST_S + trueS + burst);
    }
    assertThat(clock.skewPpm()).isCloseTo(skewPpm, within(2.0));
    assertThat(clock.recordZeroHostS()).isCloseTo(START_HOST_S + 0.0005, within(0.0005));
    assertThat(clock.spreadS()).isLessThan(0.0005);
    assertThat(clock.restarts()).isZero();
  }

  @Test
  void aUnitThatStartsAgainGoesOnWhereTheHostsClockSaysItIs() {
    run(0, 10, 500, 0);
    // Given: off for 7 s, then its clock begins at 0.2 s again.
    assertThat(send(0.2, START_HOST_S + 17)).isEqualTo(Event.RESTARTED);
    // Within 20 ms: the latency of the one sample that arrives first is not known.
    assertThat(clock.recordS()).isCloseTo(17, within(0.02));
    assertThat(clock.recordZeroHostS()).isCloseTo(START_HOST_S, within(0.001));
    assertThat(clock.restarts()).isEqualTo(1);
  }

  @Test
  void aRestartIsSeenEvenWhenTheNewClockLooksLater() {
    // Given: the unit had run for 5 s, was off for 30 s, and its new clock shows 6 s.
    run(0, 5, 0, 0);
    assertThat(send(6, START_HOST_S + 41)).isEqualTo(Event.RESTARTED);
    assertThat(clock.recordS()).isCloseTo(41, within(0.02));
  }

  @Test
  void anUnpluggedUnitThatRanOnKeepsItsClock() {
    run(0, 5, 0, 0);
    assertThat(send(25, START_HOST_S + 25)).isEqualTo(Event.STEADY);
    // Within 1e-9 s: the unit's own clock counts, not the host's.
    assertThat(clock.recordS()).isCloseTo(25, within(1e-9));
  }

  @Test
  void aHostThatSleptChangesNothingInTheRecord() {
    run(0, 30, 0, 0);
    // Given: the lid was closed for an hour: the steady clock stood still, the time of day did not.
    double hostS = START_HOST_S + 31;
    assertThat(clock.arrived(3631, hostS, hostS + 5e8 + 3600)).isEqualTo(Event.HOST_SLEPT);
    assertThat(clock.recordS()).isCloseTo(3631, within(1e-9));
    assertThat(clock.restarts()).isZero();
    assertThat(clock.arrived(3631.005, hostS + 0.005, hostS + 5e8 + 3600.005))
        .isEqualTo(Event.STEADY);
    assertThat(clock.recordZeroHostS()).isCloseTo(START_HOST_S, within(0.001));
  }

  @Test
  void aBlockedReaderThatCatchesUpIsNoRestart() {
    run(0, 10, 0, 0);
    // Given: three seconds of samples arrive at once.
    for (int k = 1; k <= 600; k++) {
      assertThat(send(10 + k / 200.0, START_HOST_S + 13)).isEqualTo(Event.STEADY);
    }
    assertThat(send(13.005, START_HOST_S + 13.005)).isEqualTo(Event.STEADY);
  }

  @Test
  void aRepeatedOrOvertakenSampleIsToldToBeDropped() {
    run(0, 1, 0, 0);
    double lastS = clock.recordS();
    assertThat(send(lastS, START_HOST_S + 1)).isEqualTo(Event.REPEATED);
    assertThat(send(lastS - 0.01, START_HOST_S + 1)).isEqualTo(Event.REPEATED);
    assertThat(clock.recordS()).isEqualTo(lastS);
  }

  @Test
  void twelveHoursFitIntoTheSameMemory() {
    for (int k = 0; k < 12 * 3600; k++) {
      send(k, START_HOST_S + k * (1 + 30e-6));
    }
    // Within 0.5 ppm: 43,200 s of lever arm.
    assertThat(clock.skewPpm()).isCloseTo(30, within(0.5));
  }

  private void run(double fromS, double toS, double deviceZeroS, double skewPpm) {
    for (int k = 0; k < (toS - fromS) * 200; k++) {
      double trueS = fromS + k / 200.0;
      send(deviceZeroS + trueS / (1 + skewPpm * 1e-6), START_HOST_S + trueS);
    }
  }
}
