package steadyturn.ingest.clock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.clock.DeviceClock.Event;

/** Without latency: what the clock says at both sides of each of its limits. */
class DeviceClockLimitsTest {

  private static final double DAY_S = 5e8;
  private final DeviceClock clock = new DeviceClock();

  private Event send(double deviceS, double hostS) {
    return clock.arrived(deviceS, hostS, DAY_S + hostS);
  }

  /** Ten samples a second for two seconds: unit 7.0 to 9.0 s, host 100.0 to 102.0 s. */
  private void twoSeconds() {
    for (int k = 0; k <= 20; k++) {
      assertThat(send(7 + k / 10.0, 100 + k / 10.0)).isEqualTo(k == 0 ? Event.FIRST : Event.STEADY);
    }
    assertThat(clock.recordS()).isCloseTo(2, within(1e-9));
  }

  @ParameterizedTest(name = "unit {0} s, host {1} s later: {2}")
  @CsvSource({
    "0, 0.1, REPEATED",
    "-0.49, 0.1, REPEATED",
    "-0.51, 0.1, RESTARTED",
    "0.1, 0.1, STEADY",
    "0.1, 5.05, STEADY",
    "0.1, 5.15, RESTARTED",
    "2.05, 0.1, STEADY",
    "2.15, 0.1, RESTARTED"
  })
  void aStepIsJudgedByBothClocks(double deviceStepS, double hostStepS, Event expected) {
    twoSeconds();
    assertThat(send(9 + deviceStepS, 102 + hostStepS)).isEqualTo(expected);
    assertThat(clock.restarts()).isEqualTo(expected == Event.RESTARTED ? 1 : 0);
    double recordS =
        switch (expected) {
          case REPEATED -> 2;
          case RESTARTED -> 2 + hostStepS;
          default -> 2 + deviceStepS;
        };
    assertThat(clock.recordS()).isCloseTo(recordS, within(1e-9));
  }

  @ParameterizedTest(name = "wall {0} s later, unit {1} s: {2}")
  @CsvSource({
    "0.9, 0.9, STEADY",
    "60.1, 60.1, HOST_SLEPT",
    "60.1, 64.9, HOST_SLEPT",
    "60.1, 55.3, HOST_SLEPT",
    "60.1, 65.2, RESTARTED",
    "60.1, 54.9, RESTARTED",
    "60.1, 0.1, STEADY"
  })
  void aHostThatSleptIsKnownByTheTimeOfDay(double wallStepS, double deviceStepS, Event expected) {
    // Given: the host's steady clock moved 0.1 s, its time of day by more.
    twoSeconds();
    assertThat(clock.arrived(9 + deviceStepS, 102.1, DAY_S + 102 + wallStepS)).isEqualTo(expected);
  }

  @Test
  void aLateSampleMayBeCaughtUp() {
    // Given: a sample that came 3 s late. Expect: the next may be 2 + 3 s ahead, not more.
    twoSeconds();
    assertThat(send(9.1, 105.1)).isEqualTo(Event.STEADY);
    assertThat(send(14.05, 105.1)).isEqualTo(Event.STEADY);
    DeviceClockLimitsTest other = new DeviceClockLimitsTest();
    other.twoSeconds();
    other.send(9.1, 105.1);
    assertThat(other.send(14.15, 105.1)).isEqualTo(Event.RESTARTED);
  }

  @ParameterizedTest
  @CsvSource({"19.5, 0", "20.5, 100"})
  void underTwentySecondsThereIsNoSkew(double lengthS, double skewPpm) {
    for (int k = 0; k <= 10 * lengthS; k++) {
      send(7 + k / 10.0, 100 + k / 10.0 * (1 + 100e-6));
    }
    assertThat(clock.skewPpm()).isCloseTo(skewPpm, within(1e-3));
    assertThat(clock.recordZeroHostS()).isCloseTo(100, within(1e-6));
  }

  @Test
  void theStartIsReadFromTheFirstRunOnly() {
    // Given: a first run with a latency of 20 ms that never goes, a restart, a second without.
    for (int k = 0; k <= 20; k++) {
      send(7 + k / 10.0, 100.02 + k / 10.0);
    }
    assertThat(send(0.5, 110)).isEqualTo(Event.RESTARTED);
    for (int k = 1; k <= 20; k++) {
      assertThat(send(0.5 + k / 10.0, 110 + k / 10.0)).isEqualTo(Event.STEADY);
    }
    assertThat(clock.recordZeroHostS()).isCloseTo(100.02, within(1e-9));
    assertThat(clock.recordS()).isCloseTo(110 - 100.02 + 2, within(1e-9));
    assertThat(send(0.1, 120)).isEqualTo(Event.RESTARTED);
    assertThat(clock.recordZeroHostS()).isCloseTo(100.02, within(1e-9));
    assertThat(clock.restarts()).isEqualTo(2);
  }

  @Test
  void aRestartNeverGoesBackInTheRecord() {
    // Given: a unit ahead of the host that begins anew at once. Expect: a millionth of a second on.
    twoSeconds();
    assertThat(send(10.9, 102.1)).isEqualTo(Event.STEADY);
    assertThat(send(0, 102.1)).isEqualTo(Event.RESTARTED);
    assertThat(clock.recordS()).isCloseTo(3.9 + 1e-6, within(1e-9));
  }

  @Test
  void theSpreadIsTheMedianHeightAboveTheLine() {
    // Given: 0, 3, 3, 0, ... ms of latency in turn, one sample a second. Expect: 3 ms.
    for (int k = 0; k <= 30; k++) {
      send(k, 100 + k + (k % 3 == 0 ? 0 : 0.003));
    }
    assertThat(clock.spreadS()).isCloseTo(0.003, within(1e-6));
  }
}
