package steadyturn.analysis.limits;

import static org.assertj.core.api.Assertions.as;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.reason.ReasonCode;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/** One made stroke, each figure of it just within a bound and just beyond. */
class WornCheckTest {

  private static final Swing SWING =
      new Swing(
          1,
          SwingKind.HIT,
          "",
          0,
          4,
          List.of(
              at(SwingEvent.TAKEAWAY, WornUnit.TAKEAWAY_S),
              at(SwingEvent.TOP, WornUnit.TOP_S),
              at(SwingEvent.IMPACT, WornUnit.IMPACT_S)),
          List.of());

  private static EventTime at(SwingEvent event, double timeS) {
    return new EventTime(event, timeS, 0.001, Grade.MEASURED, Reason.NONE);
  }

  private static Recording recording(Handedness handed, WornUnit... units) {
    List<UnitStream> streams = Stream.of(units).map(WornUnit::stream).toList();
    return new Recording("made", Player.unmeasured("p", handed), streams, List.of());
  }

  private static WornCheck right(WornUnit... units) {
    return WornCheck.of(recording(Handedness.RIGHT, units), List.of(SWING));
  }

  private static Optional<ReasonCode> said(WornCheck check, BodyPoint point) {
    return Optional.ofNullable(check.units().get(point)).map(Reason::code);
  }

  private static WornUnit forearm() {
    return WornUnit.arm(BodyPoint.LEAD_FOREARM);
  }

  private static WornUnit hand() {
    return WornUnit.arm(BodyPoint.LEAD_HAND).fast(1000);
  }

  @Test
  void whatOneStrokeShowsIsReadAsItWasMade() {
    // Given: up (0.6, 0, 0.8), 60 deg against the clock in 0.3 s, 5 ms before impact left out, pull
    // (-30, 4, 0), 200 deg/s about the vertical. Expect: 59 deg but for a sample; the pull, its
    // reach
    // 30 over the square of the rate across x; that rate.
    WornUnit unit = WornUnit.pelvis().up(0.6, 0, 0.8).pull(-30, 4, 0);
    StrokeSeen seen = StrokeSeen.of(unit.stream(), WornUnit.STROKE).orElseThrow();
    assertThat(seen.up().minus(new Vector3(0.6, 0, 0.8)).norm()).isLessThan(1e-12);
    assertThat(Math.toDegrees(seen.turnDownRad())).isCloseTo(58.5, within(1.5));
    assertThat(seen.pull().minus(new Vector3(-30, 4, 0)).norm()).isLessThan(1e-6);
    assertThat(Math.toDegrees(seen.fastestRadPerS())).isCloseTo(200, within(0.1));
    // across x: 0.8 of 200 deg/s
    assertThat(seen.reachM()).isCloseTo(30 / Math.pow(Math.toRadians(160), 2), within(1e-6));
  }

  @Test
  void aStrokeThatWasNotSeenWholeIsNotRead() {
    UnitStream unit = WornUnit.pelvis().stream();
    assertThat(StrokeSeen.of(unit.between(0, 2.2), WornUnit.STROKE)).isEmpty();
    assertThat(StrokeSeen.of(unit, new Stroke(1, 2, 5.2))).isEmpty();
    assertThat(StrokeSeen.of(unit, WornUnit.STROKE)).isPresent();
  }

  @Test
  void whatIsWornAsDrawnIsNotRefused() {
    WornCheck check = right(WornUnit.pelvis(), forearm(), hand());
    assertThat(check.units()).isEmpty();
    assertThat(check.side()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    // up at address along x and y, and whether z looks down; our bounds along x -0.35, 0.35, along
    // z
    // -0.1; across 0.2 and 22 deg from the back
    "0.36, 0, false, ",
    "0.34, 0, false, ON_ITS_SIDE",
    "-0.34, 0, false, ON_ITS_SIDE",
    "-0.36, 0, false, UPSIDE_DOWN",
    "0.996, 0, true, ",
    "0.994, 0, true, FACING_IN",
    "-0.8, 0, true, UPSIDE_DOWN",
    "0.8, 0.22, false, ",
    "0.8, 0.23, false, ROUND_THE_HIP",
    "0.8, -0.23, false, ROUND_THE_HIP",
    "0.975, 0.19, false, ",
    "0.975, 0.21, false, ROUND_THE_HIP"
  })
  void thePelvisUnitIsToldByItsLeanAtAddress(
      double x, double y, boolean looksDown, MountReason expected) {
    double z = Math.sqrt(1 - x * x - y * y) * (looksDown ? -1 : 1);
    WornUnit pelvis = WornUnit.pelvis().up(x, y, z);
    assertThat(said(right(pelvis, forearm(), hand()), BodyPoint.PELVIS))
        .isEqualTo(Optional.ofNullable(expected));
  }

  @Test
  void aUnitOnItsSideSaysHowFar() {
    WornUnit onItsSide = WornUnit.pelvis().up(0, 0.8, 0.6);
    assertThat(right(onItsSide, forearm()).units())
        .extractingByKey(BodyPoint.PELVIS)
        .extracting(why -> why.args().get("offDeg"), as(InstanceOfAssertFactories.DOUBLE))
        .isCloseTo(90, within(1e-6));
  }

  @ParameterizedTest
  @CsvSource({
    // up along x and y, pull along x; bounds 0, 0.1 (for a right-hander) and 25 outward
    "-0.02, 0, -80, ", "0.02, 0, -80, TOWARDS_ELBOW", "-0.9, 0, 26, TOWARDS_ELBOW",
    "-0.9, 0, 24, ", "-0.9, 0.095, -80, ", "-0.9, 0.105, -80, FACING_IN"
  })
  void anArmUnitIsToldByHowItHangsAndIsPulled(
      double x, double y, double pull, MountReason expected) {
    WornUnit hand =
        hand().up(x, y, Math.sqrt(1 - x * x - y * y)).pull(pull, Math.abs(pull) < 25 ? 30 : 0, 0);
    assertThat(said(right(WornUnit.pelvis(), hand), BodyPoint.LEAD_HAND))
        .isEqualTo(Optional.ofNullable(expected));
  }

  @Test
  void theBackOfALeftHandersHandLooksTheOtherWay() {
    WornUnit pelvis = WornUnit.pelvis().down(-60);
    WornUnit hand = hand().up(-0.9, 0.3, 0.3).down(-60);
    assertThat(WornCheck.of(recording(Handedness.LEFT, pelvis, hand), List.of(SWING)).units())
        .isEmpty();
    WornUnit inward = hand().up(-0.9, -0.3, 0.3).down(-60);
    WornCheck check = WornCheck.of(recording(Handedness.LEFT, pelvis, inward), List.of(SWING));
    assertThat(said(check, BodyPoint.LEAD_HAND)).contains(MountReason.FACING_IN);
  }

  @ParameterizedTest
  @CsvSource({"-9, -9, true", "-7, -9, false", "-9, 9, false", "9, 9, false"})
  void theSideIsWrongWhereAllTurnTheOtherWay(double pelvis, double arm, boolean isOther) {
    // Given: turns down of so many deg, a right-hander. Expect: 8 deg the other way, of all, for
    // it.
    double seen = 0.3 / 0.295; // 5 ms before impact are left out
    WornCheck check =
        right(WornUnit.pelvis().down(pelvis * seen), forearm().fast(0).down(arm * seen));
    assertThat(check.side().map(Reason::code))
        .isEqualTo(isOther ? Optional.of(BodyReason.SIDE) : Optional.empty());
  }

  @Test
  void withTheSideTheArmUnitsAreJudgedByTheOtherOne() {
    // Given: a left-hander's swing under the word right. Expect: the side alone.
    WornCheck check =
        right(WornUnit.pelvis().down(-60), hand().up(-0.9, 0.3, 0.3).fast(0).down(-60));
    assertThat(check.side()).isPresent();
    assertThat(check.units()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"26, 24, true", "24, 24, false", "26, 26, false"})
  void aWildTrunkBesideAQuietArmIsAnExchange(double trunk, double arm, boolean isExchanged) {
    WornCheck check = right(WornUnit.pelvis().pull(0, 0, trunk), hand().pull(-arm, 0, 0));
    assertThat(check.units().values())
        .allMatch(why -> why.code() == MountReason.EXCHANGED)
        .hasSize(isExchanged ? 2 : 0);
  }

  @ParameterizedTest
  @CsvSource({
    // pulls of hand and forearm to the shoulder, alike fast: the further out reaches farther
    "100, 84, EXCHANGED",
    "100, 86, SAME_PLACE",
    "86, 100, SAME_PLACE",
    "84, 100,"
  })
  void theHandTurnsAboutANearerPoint(double ofHand, double ofForearm, MountReason what) {
    // Given: both at the same rates. Expect: exchanged where the unit named hand reaches farther,
    // one bone where both reach as far, bounds at 1.18 and its inverse; sound from there on.
    WornCheck check =
        right(
            WornUnit.pelvis(),
            forearm().fast(800).pull(-ofForearm, 0, 0),
            hand().fast(800).pull(-ofHand, 0, 0));
    assertThat(check.units().values())
        .allMatch(why -> why.code() == what)
        .hasSize(what == null ? 0 : 2);
  }

  @Test
  void aHandThatTurnsFasterMayReachFarther() {
    WornCheck check =
        right(
            WornUnit.pelvis(),
            forearm().fast(800).pull(-70, 0, 0),
            hand().fast(1000).pull(-95, 0, 0));
    assertThat(check.units()).isEmpty();
  }

  @Test
  void aHandThatTurnsFasterIsOnAnotherBone() {
    // Given: hand and forearm that reach as far, as in slow swings that let go late, the hand by 15
    // % faster: product 1.15, inside the bound of one bone. Expect: sound, as no skin rings so.
    double faster = 1.15;
    WornCheck check =
        right(
            WornUnit.pelvis(),
            forearm().fast(800).pull(-70, 0, 0),
            hand().fast(800 * faster).pull(-70 * faster * faster, 0, 0));
    assertThat(check.units()).isEmpty();
  }

  @Test
  void withoutASwingOnlyWhatIsPulledLikeOneIsJudged() {
    // Given: a hand at 600 deg/s before impact and up the wrong way, once pulled by 24 m/s^2, once
    // by 26. Expect: the calm one is everyday movement, of which nothing is said.
    WornUnit calm = hand().up(0.9, -0.2, 0.1).fast(600).pull(-24, 0, 0);
    WornUnit wild = hand().up(0.9, -0.2, 0.1).fast(600).pull(-26, 0, 0);
    assertThat(WornCheck.of(recording(Handedness.RIGHT, calm), List.of()).units()).isEmpty();
    assertThat(WornCheck.of(recording(Handedness.RIGHT, wild), List.of()).units()).hasSize(1);
  }
}
