package steadyturn.fusion.rest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.trial.MadeUnit;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** What comes before and after a rest is no part of it. */
class RestTrimTest {

  private static final UnitFacts FACTS = UnitFacts.plain(BodyPoint.PELVIS, 200);

  /** Turns about one axis by so many deg/s, and sways by 0.4 deg/s RMS about another. */
  private static UnitStream turning(DoubleUnaryOperator degPerS) {
    double sway = Math.toRadians(0.4) * Math.sqrt(2);
    return MadeUnit.of(
        FACTS,
        8,
        t -> new Vector3(sway * Math.sin(15 * t), 0, Math.toRadians(degPerS.applyAsDouble(t))),
        t -> new Vector3(0, 0, 9.81));
  }

  @Test
  void slowlyComingToRestAndSettingOffAreNoRest() {
    // Given: a rest said to last from 2.5 to 4.9 s, in which 2.8 deg/s fade with 0.35 s and, from
    // 4.4 s on, 4 deg/s^2 set in. Expect: it begins when less than 1.3 deg/s are left (twice the
    // sway, and half a degree: 2.77 s) and ends before so many are there again (4.73 s). Within
    // 0.1 s: two of the parts the ends are judged by.
    UnitStream stream =
        turning(t -> t < 4.4 ? 2.8 * Math.exp((2.5 - t) / 0.35) : Math.min(60, 4 * (t - 4.4)));
    Rest rest = RestGate.settled(stream, Vector3.ZERO, new Rest(2.5, 4.9));
    assertThat(rest.startS()).isBetween(2.67, 2.87);
    assertThat(rest.endS()).isBetween(4.63, 4.83);
  }

  @Test
  void anEvenRestIsKeptWhole() {
    // Given: sway alone. Expect: no part cut off.
    Rest all = new Rest(2.5, 4.9);
    assertThat(RestGate.settled(turning(t -> 0), Vector3.ZERO, all)).isEqualTo(all);
  }

  @Test
  void ofAMomentBetweenTwoMovementsOnlyTheQuietestPartIsLeft() {
    // Given: a rest said to last from 2 to 3 s, in which a turn dies away to nothing at 2.4 s and
    // 12 deg/s^2 set in again. Expect: the 0.35 s around 2.4 s, within one part of 0.05 s.
    UnitStream stream = turning(t -> 12 * Math.abs(t - 2.4));
    Rest core = RestGate.core(stream, Vector3.ZERO, new Rest(2, 3), 0.9);
    assertThat(core.lengthS()).isCloseTo(0.35, within(1e-9));
    assertThat((core.startS() + core.endS()) / 2).isCloseTo(2.4, within(0.051));
  }

  @Test
  void aHoldIsKeptUpToWhereItTurnsThreeTimesAsMuch() {
    // Given: 1.5 s of sway of 0.4 deg/s, after which 4 deg/s^2 set in at 3.5 s. Expect: all but
    // what turns more than 3 x 0.4 + 0.5 deg/s, 0.42 s later; within two parts.
    UnitStream stream = turning(t -> Math.max(0, 4 * (t - 3.5)));
    Rest core = RestGate.core(stream, Vector3.ZERO, new Rest(2, 4.5), 0.9);
    assertThat(core.startS()).isEqualTo(2);
    assertThat(core.endS()).isCloseTo(3.92, within(0.1));
  }
}
