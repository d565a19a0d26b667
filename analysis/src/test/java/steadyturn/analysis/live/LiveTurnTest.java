package steadyturn.analysis.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;

/**
 * The turn of this moment. Given in all: a pelvis unit at 200 Hz that leans forward by 30 deg,
 * without noise, still for 2 s, then turned about the vertical at 60 deg/s. Within 1 deg: the
 * filter takes some of the turn for bias. Our choices: a rest within 7.5 deg of the start is the
 * new start after 0.4 s, one elsewhere after 4 s, one turned towards the target by 25 to 150 deg
 * after 20 s.
 */
class LiveTurnTest {

  private static final double STEP_S = 0.005;
  private static final double UP_X = Math.cos(Math.toRadians(30));
  private static final double UP_Z = Math.sin(Math.toRadians(30));

  private LiveTurn turn = of(1, 0);
  private double nowS;

  private static LiveTurn of(int handSign, double askEveryS) {
    return new LiveTurn(UnitFacts.plain(BodyPoint.PELVIS, 200), handSign, askEveryS);
  }

  private void goOn(double seconds, double degPerS) {
    double rate = Math.toRadians(degPerS);
    double[] accel = {9.80665 * UP_X, 0, 9.80665 * UP_Z};
    for (long i = Math.round(seconds / STEP_S); i > 0; i--) {
      turn.sample(nowS, accel, new double[] {rate * UP_X, 0, rate * UP_Z});
      nowS += STEP_S;
    }
  }

  /** Turned by so much at 60 deg/s. */
  private void turnBy(double deg) {
    goOn(Math.abs(deg) / 60, Math.signum(deg) * 60);
  }

  private void is(double deg) {
    assertThat(turn.turnDeg()).isCloseTo(deg, within(1.0));
  }

  @Test
  void beforeTheFirstSampleThereIsNone() {
    assertThat(turn.turnDeg()).isNaN();
    assertThat(turn.atS()).isNaN();
  }

  @ParameterizedTest
  @CsvSource({"1, 45, 45", "1, -60, -60", "-1, 45, -45", "1, 200, 200", "-1, -200, 200"})
  void itIsTheTurnSinceTheRestTowardsTheTarget(int handSign, double deg, double expected) {
    turn = of(handSign, 0);
    goOn(2, 0);
    is(0);
    turnBy(deg);
    is(expected);
    assertThat(turn.atS()).isCloseTo(nowS - STEP_S, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"-39, 0", "-35, 10"})
  void aRestNearTheStartIsTheNewStart(double backDeg, double expected) {
    // Given: 45 deg there, so much back, two seconds still.
    goOn(2, 0);
    turnBy(45);
    turnBy(backDeg);
    is(45 + backDeg);
    goOn(2.5, 0);
    is(expected);
    turnBy(30);
    is(expected + 30);
  }

  @ParameterizedTest
  @CsvSource({"-60, 3.9", "20, 3.9", "60, 19.9", "140, 19.9", "160, 3.9"})
  void aFinishIsNoNewStartHoweverLongThePlayerLooksAfterTheBall(double deg, double stillS) {
    goOn(2, 0);
    turnBy(deg);
    goOn(stillS, 0);
    is(deg);
    goOn(3, 0);
    is(0);
  }

  @Test
  void whoBeginsInAFinishIsAtTheAddressWhenAtRestFarBack() {
    // Given: as a rehearsed drill began. Turned back by 80 deg, farther than a top; a pause at a
    // top, 60 deg back, is none.
    goOn(2, 0);
    turnBy(-60);
    goOn(2.5, 0);
    is(-60);
    turnBy(-20);
    goOn(2.5, 0);
    is(0);
  }

  @Test
  void afterAFinishTheNextSwingCountsFromItsOwnAddress() {
    // Given: a rehearsed lesson found it: a swing to the finish, six seconds there, back to the
    // ball, one second still, turned back by 40 deg. Expect: -40; with the finish as start, -100.
    goOn(2, 0);
    turnBy(60);
    goOn(6, 0);
    turnBy(-60);
    goOn(1, 0);
    turnBy(-40);
    is(-40);
  }

  @Test
  void itIsTakenFromTheFilterAsOftenAsAsked() {
    // Given: every 0.0975 s, which is every twentieth sample. Expect: of the sample at 2.3 s,
    // though 2.395 s were seen.
    turn = of(1, 0.0975);
    goOn(2, 0);
    goOn(0.4, 60);
    assertThat(turn.atS()).isCloseTo(2.3, within(0.0051));
    is(60 * (turn.atS() - 2));
  }
}
