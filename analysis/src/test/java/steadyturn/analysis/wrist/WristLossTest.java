package steadyturn.analysis.wrist;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static steadyturn.analysis.wrist.WristLawsTest.IMPACT_S;
import static steadyturn.analysis.wrist.WristLawsTest.RIGHT;
import static steadyturn.analysis.wrist.WristLawsTest.TOP_S;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.strapdown.Bridge;
import steadyturn.fusion.wear.SkinSlip;
import steadyturn.fusion.wear.wrist.UnitMount;
import steadyturn.fusion.wear.wrist.WristAlignment;
import steadyturn.fusion.wear.wrist.WristSteps;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** What is said of a wrist that was not seen, held too little, or is watched by a shaft unit. */
class WristLossTest {

  private static final Swing SWING = WristLawsTest.swing(0, 0);
  private static final Set<Measure> RELEASE =
      EnumSet.of(
          Measure.WRIST_RELEASE,
          Measure.WRIST_RELEASE_PART,
          Measure.WRIST_RATE,
          Measure.WRIST_RATE_TIME);

  private static UnitStream unit(BodyPoint point) {
    return RIGHT.unit(point).orElseThrow();
  }

  private static Recording of(UnitStream... units) {
    return new Recording("made", RIGHT.player(), List.of(units), List.of());
  }

  private static WristReading read(
      Recording recording, Swing swing, WristSteps worn, double clockS) {
    RestBiases none =
        RestBiases.of(new Recording("none", recording.player(), List.of(), List.of()));
    return WristReading.of(recording, none, swing, worn, WristClocks.within(clockS));
  }

  private static WristReading read(Recording recording) {
    return read(recording, SWING, WristSteps.NONE, 1e-4);
  }

  private static MeasureValue find(WristReading reading, Measure measure, String at) {
    return WristLawsTest.find(reading, measure, at);
  }

  private static String word(SwingEvent event) {
    return event.word();
  }

  /** A hand that cocks by another law, deg from the straight wrist. */
  private static UnitStream hand(BodyPoint point, DoubleUnaryOperator cockDeg) {
    DoubleFunction<Quaternion> attitude =
        t ->
            WristLawsTest.forearm(t)
                .times(Quaternion.aboutY(Math.toRadians(WristLawsTest.flexionDeg(t))))
                .times(Quaternion.aboutZ(Math.toRadians(-cockDeg.applyAsDouble(t))));
    return WristLawsTest.unit(point, Handedness.RIGHT, attitude);
  }

  /** The same stream whose rates say nothing between two instants. */
  private static UnitStream without(UnitStream unit, double fromS, double toS) {
    double[][] gyro = new double[3][];
    double[][] accel = new double[3][];
    for (int axis = 0; axis < 3; axis++) {
      gyro[axis] = unit.gyroColumnRadPerS(axis).clone();
      accel[axis] = unit.accelColumnMps2(axis);
      for (int i = 0; i < unit.size(); i++) {
        boolean lost = unit.timeS(i) > fromS && unit.timeS(i) < toS;
        gyro[axis][i] = lost ? Double.NaN : gyro[axis][i];
      }
    }
    return new UnitStream(unit.facts(), unit.timeColumnS(), accel, gyro);
  }

  private static Swing swing(double startS, double endS, EventTime... changed) {
    List<EventTime> events = new ArrayList<>(SWING.events());
    for (EventTime change : changed) {
      events.replaceAll(e -> e.event() == change.event() ? change : e);
    }
    return new Swing(1, SWING.kind(), "", startS, endS, events, List.of());
  }

  @ParameterizedTest
  @CsvSource({"LEAD_FOREARM", "LEAD_HAND"})
  void aGapOnTheWayDownHidesWhatNeedsItAndNothingElse(BodyPoint point) {
    // Given: rates missing from 2.15 to 2.20 s of one unit. Expect: positions before it stand, the
    // shaft's at 2.19 s and all of the release are withheld for the gap, as the plateau, the
    // highest rate and what is kept are looked for from top to impact; impact itself is given, and
    // known worse than without.
    BodyPoint other = point == BodyPoint.LEAD_HAND ? BodyPoint.LEAD_FOREARM : BodyPoint.LEAD_HAND;
    WristReading lost = read(of(without(unit(point), 2.15, 2.20), unit(other)));
    WristReading whole = read(RIGHT);
    Reason gap = Reason.of(MeasureReason.WRIST_GAP);
    for (MeasureValue m : lost.measures()) {
      boolean hidden =
          RELEASE.contains(m.measure())
              || m.measure() == Measure.WRIST_KEPT
              || m.measure() == Measure.WRIST_COCK_MAX
              || m.at().equals(word(SwingEvent.SHAFT_LEVEL_DOWN));
      assertThat(m.given()).as(m.measure().id() + " " + m.at()).isEqualTo(!hidden);
      if (hidden) {
        assertThat(m.why()).isEqualTo(gap);
      }
    }
    MeasureValue impact = find(lost, Measure.WRIST_COCK, "impact");
    MeasureValue asWhole = find(whole, Measure.WRIST_COCK, "impact");
    assertThat(impact.high() - impact.low()).isGreaterThan(asWhole.high() - asWhole.low());
    assertThat(Math.abs(impact.value() - asWhole.value()))
        .isLessThan(impact.high() - impact.value());
    for (int i = 0; i < lost.curves(IMPACT_S).get(0).timeS().size(); i++) {
      assertThat(lost.curves(IMPACT_S).get(0).timeS().get(i))
          .matches(t -> t < 2.1511 || t > 2.1989, "outside the gap");
    }
  }

  @Test
  void aGapOnTheWayUpLeavesTheReleaseButNotTheHighestCockWhereItMayLieInIt() {
    // Given: rates missing from 1.4 to 1.45 s: between the address and the stretch of 0.2 s before
    // the top in which the cock may be highest. Expect: everything given. From 1.82 to 1.87 s: the
    // highest cock alone withheld.
    WristReading early =
        read(of(unit(BodyPoint.LEAD_FOREARM), without(unit(BodyPoint.LEAD_HAND), 1.4, 1.45)));
    assertThat(early.measures()).allMatch(MeasureValue::given);
    WristReading late =
        read(of(unit(BodyPoint.LEAD_FOREARM), without(unit(BodyPoint.LEAD_HAND), 1.82, 1.87)));
    assertThat(late.measures().stream().filter(m -> !m.given()))
        .extracting(MeasureValue::measure)
        .containsExactly(Measure.WRIST_COCK_MAX);
  }

  @Test
  void bridgesThatTogetherMayTurnByMoreThanTwelveDegreesHideWhatLiesBehind() {
    // Given: bridges at 1.4 and 1.8 s of 9 and 7.9 deg: 11.98 together by squares; of 9 and 8.1:
    // 12.11. Expect: the latter hides what lies behind it, not what lies before; each alone not.
    assertThat(gaps(9, 7.9).hide(2)).isFalse();
    assertThat(gaps(9, 8.1).hide(2)).isTrue();
    assertThat(gaps(9, 8.1).isBeyond(2)).isTrue();
    assertThat(gaps(9, 8.1).hide(1.8)).isFalse();
    assertThat(gaps(0, 12.1).hide(1.81)).isTrue();
    assertThat(gaps(0, 11.9).hide(1.81)).isFalse();
  }

  private static WristGaps gaps(double firstDeg, double secondDeg) {
    return new WristGaps(
        List.of(),
        List.of(
            new Bridge(1, 1.4, 1.5, Math.toRadians(firstDeg), 9, 9),
            new Bridge(2, 1.8, 1.9, Math.toRadians(secondDeg), 9, 9)));
  }

  @ParameterizedTest
  @CsvSource({
    "LEAD_FOREARM+LEAD_HAND, HAND_NOT_THROUGH",
    "LEAD_FOREARM+CLUB_SHAFT, SHAFT_NOT_THROUGH",
    "LEAD_FOREARM, NEEDS_HAND",
    "LEAD_HAND, NEEDS_FOREARM_BESIDE_HAND",
    "CLUB_SHAFT, NEEDS_FOREARM_AND_HAND",
    "PELVIS, NEEDS_FOREARM_AND_HAND"
  })
  void whatIsMissingIsNamed(String points, MeasureReason why) {
    // Given: units that show nothing of the address. Expect: all eight withheld, saying which unit
    // it would have needed, or which one did not last through the swing.
    List<UnitStream> units = new ArrayList<>();
    for (String point : List.of(points.split("\\+", -1))) {
      units.add(hand(BodyPoint.valueOf(point), WristLawsTest::cockDeg).between(2.5, 3));
    }
    WristReading reading = read(of(units.toArray(UnitStream[]::new)));
    assertThat(reading.measures()).hasSize(8);
    assertThat(reading.measures()).allMatch(m -> m.why().equals(Reason.of(why)));
    assertThat(reading.flags()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"0.39, false", "0.43, true"})
  void aWristThatHardlyCocksHasNoRelease(double part, boolean given) {
    // Given: the cock lessened, so that 50 deg of it become 19.5 or 21.5. Expect: a release and
    // what is kept from a plateau of 20 deg on; the rate in any case.
    UnitStream little = hand(BodyPoint.LEAD_HAND, t -> 12 + part * (WristLawsTest.cockDeg(t) - 12));
    WristReading reading = read(of(unit(BodyPoint.LEAD_FOREARM), little));
    for (Measure measure : List.of(Measure.WRIST_RELEASE, Measure.WRIST_RELEASE_PART)) {
      assertThat(find(reading, measure, "").given()).isEqualTo(given);
    }
    MeasureValue kept = find(reading, Measure.WRIST_KEPT, word(SwingEvent.LEAD_ARM_LEVEL_DOWN));
    assertThat(kept.given()).isEqualTo(given);
    assertThat(find(reading, Measure.WRIST_RATE, "").given()).isTrue();
    if (!given) {
      assertThat(kept.why()).isEqualTo(Reason.of(MeasureReason.LITTLE_COCK, 20.0));
      assertThat(find(reading, Measure.WRIST_RELEASE, "").why()).isEqualTo(kept.why());
    }
  }

  @Test
  void anAngleKeptPastImpactIsNotReleased() {
    // Given: a wrist that lets go by 10 of 50 deg only. Expect: no release, and the reason.
    UnitStream keeps =
        hand(
            BodyPoint.LEAD_HAND,
            t ->
                12
                    + 50 * WristLawsTest.smooth(t, 1.3, 1.9)
                    - 10 * WristLawsTest.smooth(t, 2.1, 2.3));
    WristReading reading = read(of(unit(BodyPoint.LEAD_FOREARM), keeps));
    for (Measure measure : List.of(Measure.WRIST_RELEASE, Measure.WRIST_RELEASE_PART)) {
      assertThat(find(reading, measure, "").why())
          .isEqualTo(Reason.of(MeasureReason.KEEPS_PAST_IMPACT));
    }
    assertThat(find(reading, Measure.WRIST_KEPT, word(SwingEvent.SHAFT_LEVEL_DOWN)).given())
        .isTrue();
  }

  @ParameterizedTest
  @ValueSource(doubles = {1e-4, 0.0014, 0.0016, 0.004})
  void theReleaseIsKnownByItsAngleOverItsRateAndByTheClocks(double clockSdS) {
    // Expect, by the law of the class: the angle against the plateau over the rate of the truth,
    // the time of impact, and half of what the clocks are apart, as impact is the mean of two; the
    // whole from 1.5 ms on, as then one unit alone felt it. Within 3 %: the rate is the truth's,
    // and the
    // cock is found to 0.3 deg.
    WristReading reading = read(RIGHT, SWING, WristSteps.NONE, clockSdS);
    WristMotion motion = reading.motion().orElseThrow();
    EventTime top = SWING.event(SwingEvent.TOP).orElseThrow();
    EventTime impact = SWING.event(SwingEvent.IMPACT).orElseThrow();
    Plateau plateau = Release.of(motion, top, impact).orElseThrow().plateau();
    MeasureValue release = find(reading, Measure.WRIST_RELEASE, "");
    double releaseS = IMPACT_S - release.value() / 1000;
    int k = motion.indexAt(releaseS) - 1;
    double rate = -motion.cockRateDegPerS(k);
    double truth =
        (WristLawsTest.cockDeg(motion.timeS(k) - 1e-4)
                - WristLawsTest.cockDeg(motion.timeS(k) + 1e-4))
            / 2e-4;
    assertThat(rate).isCloseTo(truth, within(0.03 * truth));
    double clock = clockSdS > 0.0015 ? clockSdS : clockSdS / 2;
    double expected = 1000 * Math.hypot(plateau.againstSdDeg(motion, k, 1) / rate, clock);
    assertThat(WristLawsTest.sd(release)).isCloseTo(expected, within(1e-6 * expected));
    assertThat(motion.cockDegAt(releaseS)).isCloseTo(plateau.deg() - 15, within(1e-6));
  }

  @Test
  void theMomentOfTheRateIsKnownByTheBendOfItsPeak() {
    // Given: a least-jerk fall of 70 deg in 0.2 s: its rate bends by 30 x 70 / 0.2^3 = 262,500
    // deg/s^3 at its highest. Expect: beside the 6 ms of units that ring on their skin, a slope in
    // the
    // error of the rate over that bend; a step of 2 ms over the root of 12; half of the clocks.
    // Within 8 %: the peak is read 0.5 % below, where
    // it is flatter.
    WristReading reading = read(RIGHT);
    WristMotion motion = reading.motion().orElseThrow();
    MeasureValue time = find(reading, Measure.WRIST_RATE_TIME, "");
    double slopeSd =
        motion.spreads().cockBendDegPerS2(motion.indexAt(IMPACT_S - time.value() / 1000));
    double seconds =
        Math.sqrt(Math.pow(slopeSd / 262_500, 2) + Math.pow(0.002, 2) / 12 + Math.pow(5e-5, 2));
    double withoutSkin = Math.sqrt(Math.pow(WristLawsTest.sd(time), 2) - 6 * 6);
    assertThat(withoutSkin).isCloseTo(1000 * seconds, within(80 * seconds));
  }

  @Test
  void theSlopeOfTheRateIsTheSecondDifferenceOverTwentyMilliseconds() {
    WristMotion motion = read(RIGHT).motion().orElseThrow();
    int k = motion.indexAt(2.2);
    double second =
        motion.spreads().combinedDeg(new int[] {k - 10, k, k + 10}, new double[] {1, -2, 1});
    assertThat(motion.spreads().cockBendDegPerS2(k))
        .isCloseTo(second / (0.02 * 0.02), within(0.11 * second / (0.02 * 0.02)));
  }

  @Test
  void whatIsKeptIsKnownByItsAngleAndByTheTimeOfItsPosition() {
    // Given: the forearm level at 2.13 s +- 4 ms. Expect: the spread of the angle against its part
    // of the plateau, and the fall of the truth in 4 ms, by squares, in percent of the plateau.
    EventTime level = WristLawsTest.at(SwingEvent.LEAD_ARM_LEVEL_DOWN, 2.13, 0.004);
    WristReading reading = read(RIGHT, swing(0, 3.4, level), WristSteps.NONE, 1e-4);
    WristMotion motion = reading.motion().orElseThrow();
    EventTime top = SWING.event(SwingEvent.TOP).orElseThrow();
    EventTime impact = SWING.event(SwingEvent.IMPACT).orElseThrow();
    Plateau plateau = Release.of(motion, top, impact).orElseThrow().plateau();
    MeasureValue kept = find(reading, Measure.WRIST_KEPT, word(SwingEvent.LEAD_ARM_LEVEL_DOWN));
    double rate = (WristLawsTest.cockDeg(2.1301) - WristLawsTest.cockDeg(2.1299)) / 2e-4;
    double angle = plateau.againstSdDeg(motion, motion.indexAt(2.13), kept.value() / 100);
    double expected = 100 * Math.hypot(angle, 0.004 * rate) / plateau.deg();
    assertThat(WristLawsTest.sd(kept)).isCloseTo(expected, within(0.01 * expected));
  }

  @Test
  void aPlateauMayLieAtEitherOfItsEnds() {
    // Expect: the mean of both squares, by how likely each is.
    WristMotion motion = read(RIGHT).motion().orElseThrow();
    int k = motion.indexAt(2.2);
    int at = motion.indexAt(2.0);
    int far = motion.indexAt(2.1);
    double here = motion.spreads().combinedDeg(new int[] {k, at}, new double[] {1, -0.8});
    double there = motion.spreads().combinedDeg(new int[] {k, far}, new double[] {1, -0.8});
    double expected = Math.sqrt(0.7 * here * here + 0.3 * there * there);
    assertThat(new Plateau(50, at, far, 0.3).againstSdDeg(motion, k, 0.8))
        .isCloseTo(expected, within(1e-9));
  }

  @Test
  void aShaftUnitInPlaceOfTheHandsGivesEstimates() {
    WristReading reading =
        read(of(unit(BodyPoint.LEAD_FOREARM), hand(BodyPoint.CLUB_SHAFT, WristLawsTest::cockDeg)));
    assertThat(reading.flags()).containsExactly("wrist-from-shaft");
    assertThat(reading.motion().orElseThrow().fromShaft()).isTrue();
    MeasureValue top = find(reading, Measure.WRIST_COCK, "top");
    assertThat(top.value()).isCloseTo(50, within(0.3));
    assertThat(top.grade()).isEqualTo(Grade.ESTIMATED);
    assertThat(top.why().code()).isEqualTo(MeasureReason.WRIST_FROM_SHAFT);
  }

  @Test
  void whereTheShaftTurnsInTheHandTheTruthLiesBetweenTheTwo() {
    // Given: a shaft that turns by up to 24 deg about the hand's cocking axis from 1.4 to 1.9 s.
    // Expect: a flag; half of that turn, 12 deg, added in squares to the spread of the cock at the
    // top, since address and from the straight wrist; nothing to that of the flexion, whose axis is
    // another; a change that both saw alike known as before.
    UnitStream shaft =
        hand(
            BodyPoint.CLUB_SHAFT,
            t -> WristLawsTest.cockDeg(t) + 24 * WristLawsTest.smooth(t, 1.4, 1.9));
    WristReading reading = read(of(unit(BodyPoint.LEAD_FOREARM), unit(BodyPoint.LEAD_HAND), shaft));
    WristSpreads alone = read(RIGHT).motion().orElseThrow().spreads();
    WristMotion motion = reading.motion().orElseThrow();
    assertThat(reading.flags()).containsExactly("hand-moves-on-shaft");
    int k = motion.indexAt(TOP_S);
    double cock = Math.hypot(alone.cockDeg(k), 12);
    assertThat(motion.spreads().cockDeg(k)).isCloseTo(cock, within(0.5));
    double absolute = Math.hypot(alone.absoluteCockDeg(k), 12);
    assertThat(motion.spreads().absoluteCockDeg(k)).isCloseTo(absolute, within(0.5));
    assertThat(motion.spreads().flexionDeg(k)).isCloseTo(alone.flexionDeg(k), within(0.5));
    assertThat(motion.spreads().absoluteFlexionDeg(k))
        .isCloseTo(alone.absoluteFlexionDeg(k), within(0.5));
    int after = motion.indexAt(2.2);
    assertThat(motion.spreads().changeDeg(k, after))
        .isCloseTo(alone.changeDeg(k, after), within(0.1));
    int before = motion.indexAt(1.3);
    assertThat(motion.spreads().changeDeg(before, k))
        .isCloseTo(Math.hypot(alone.changeDeg(before, k), 12), within(0.5));
  }

  @Test
  void withAPoseAnglesAreThoseFromTheStraightWrist() {
    // Given: units whose long axes are known by a pose. Expect: 12 deg of cock and -6 of flexion at
    // address, 62 at the top; the curves alike.
    UnitMount posed =
        new UnitMount(Quaternion.IDENTITY, Math.toRadians(2), Math.toRadians(5), SkinSlip.SD_RAD);
    WristAlignment alignment = new WristAlignment(posed, posed, 0, WristAlignment.Source.POSE);
    WristSteps worn = new WristSteps(alignment, WristAlignment.nominalShaft(), List.of());
    WristReading reading = read(RIGHT, SWING, worn, 1e-4);
    WristMotion motion = reading.motion().orElseThrow();
    assertThat(motion.absolute()).isTrue();
    MeasureValue address = find(reading, Measure.WRIST_COCK, word(SwingEvent.ADDRESS));
    assertThat(address.value()).isCloseTo(12, within(0.3));
    assertThat(find(reading, Measure.WRIST_FLEXION, word(SwingEvent.ADDRESS)).value())
        .isCloseTo(-6, within(0.3));
    MeasureValue top = find(reading, Measure.WRIST_COCK, "top");
    assertThat(top.value()).isCloseTo(62, within(0.3));
    int k = motion.indexAt(TOP_S);
    assertThat(WristLawsTest.sd(top)).isCloseTo(motion.spreads().absoluteCockDeg(k), within(1e-6));
    MeasureValue most = find(reading, Measure.WRIST_COCK_MAX, "");
    assertThat(most.value()).isCloseTo(62, within(0.3));
    assertThat(WristLawsTest.sd(most)).isCloseTo(WristLawsTest.sd(top), within(0.2));
    assertThat(WristLawsTest.sd(find(reading, Measure.WRIST_FLEXION, "top")))
        .isCloseTo(motion.spreads().absoluteFlexionDeg(k), within(1e-6));
    assertThat(reading.curves(1.1).get(0).value().get(50)).isCloseTo(12, within(0.3));
    assertThat(reading.curves(1.1).get(1).value().get(50)).isCloseTo(-6, within(0.3));
  }

  @Test
  void theStretchReachesFrom1200MillisecondsBeforeTakeawayTo1600BehindImpactWithinTheSwing() {
    WristMotion inside = read(RIGHT, swing(0.3, 3.0), WristSteps.NONE, 1e-4).motion().orElseThrow();
    assertThat(inside.timeS(0)).isCloseTo(0.3, within(1e-9));
    assertThat(inside.timeS(inside.size() - 1)).isBetween(2.995, 3.0);
    EventTime takeaway = WristLawsTest.at(SwingEvent.TAKEAWAY, 1.3, 0);
    EventTime top = WristLawsTest.at(SwingEvent.TOP, 1.6, 0);
    EventTime impact = WristLawsTest.at(SwingEvent.IMPACT, 1.7, 0);
    WristMotion early =
        read(RIGHT, swing(-5, 9, takeaway, top, impact), WristSteps.NONE, 1e-4)
            .motion()
            .orElseThrow();
    assertThat(early.timeS(0)).isBetween(0.0999, 0.1021);
    assertThat(early.timeS(early.size() - 1)).isBetween(3.295, 3.3001);
  }

  @Test
  void aGyroscopeThatEndsTooLowIsSaidToAndWhatItHidesWithheld() {
    // Given: rates cut at 500 deg/s: the hand's highest are above for some 150 ms. Expect: beyond
    // repair, so that the release, which lies behind the beginning of the cut, is withheld for it,
    // and the cock at impact; what lies before stands.
    UnitStream hand = unit(BodyPoint.LEAD_HAND);
    double full = Math.toRadians(500);
    double[][] gyro = new double[3][];
    double[][] accel = new double[3][];
    for (int axis = 0; axis < 3; axis++) {
      gyro[axis] = hand.gyroColumnRadPerS(axis).clone();
      accel[axis] = hand.accelColumnMps2(axis);
      for (int i = 0; i < hand.size(); i++) {
        gyro[axis][i] = Math.max(-full, Math.min(full, gyro[axis][i]));
      }
    }
    UnitFacts facts =
        new UnitFacts(BodyPoint.LEAD_HAND, "", 500, Double.POSITIVE_INFINITY, full, true);
    WristReading reading =
        read(
            of(
                unit(BodyPoint.LEAD_FOREARM),
                new UnitStream(facts, hand.timeColumnS(), accel, gyro)));
    assertThat(reading.flags()).contains("gyro-repaired");
    WristMotion motion = reading.motion().orElseThrow();
    boolean beyond = motion.cutBeyondRepairBefore(IMPACT_S);
    assertThat(reading.flags().contains("gyro-beyond-repair")).isEqualTo(beyond);
    assertThat(find(reading, Measure.WRIST_COCK, "top").given()).isTrue();
    MeasureValue impact = find(reading, Measure.WRIST_COCK, "impact");
    assertThat(impact.given()).isEqualTo(!beyond);
    assertThat(find(reading, Measure.WRIST_RATE, "").given()).isEqualTo(!beyond);
  }

  @ParameterizedTest
  @CsvSource({
    "0.94, 1.07, true", // 120 of the 250 ms before the takeaway: less than half
    "0.94, 1.082, false", // 132 of them
    "0.44, 0.81, true", // 360 of the 630 ms that level the unit: less than 0.6
    "0.44, 0.84, false", // 390 of them
    "1.215, 9, true", // 0.26 s of both units are seen
    "1.185, 9, false" // 0.23 s
  })
  void soMuchMustBeSeenOfAddressLevelAndSwing(double fromS, double toS, boolean enough) {
    WristReading reading =
        read(of(unit(BodyPoint.LEAD_FOREARM), without(unit(BodyPoint.LEAD_HAND), fromS, toS)));
    assertThat(reading.motion().isPresent()).isEqualTo(enough);
  }

  @ParameterizedTest
  @CsvSource({"10, false", "60, true"})
  void unitsThatNoWristAllowsAreSaidToDisagree(double rollDeg, boolean flagged) {
    // Given: a hand that also rolls against the forearm, which no wrist does, by little or by much.
    // Expect: a flag where more than 7 deg RMS are left of what two axes cannot do; where samples
    // were lost, too, nothing but that flag.
    Recording both = rolling(rollDeg);
    WristReading reading = read(both);
    assertThat(reading.motion().orElseThrow().constraintRmsDeg() > 7).isEqualTo(flagged);
    assertThat(reading.flags().contains("wrist-units-disagree")).isEqualTo(flagged);
    Swing gap = new Swing(1, SWING.kind(), "", 0, 3.4, SWING.events(), List.of("arm-gap"));
    WristReading lost = read(both, gap, WristSteps.NONE, 1e-4);
    assertThat(lost.motion().isPresent()).isEqualTo(!flagged);
    assertThat(lost.flags()).isEqualTo(reading.flags());
    if (flagged) {
      assertThat(lost.measures()).allMatch(m -> m.why().equals(Reason.of(MeasureReason.WRIST_GAP)));
    }
  }

  private static Recording rolling(double mostDeg) {
    double most = Math.toRadians(mostDeg);
    return of(
        unit(BodyPoint.LEAD_FOREARM),
        WristLawsTest.unit(
            BodyPoint.LEAD_HAND,
            Handedness.RIGHT,
            t ->
                WristLawsTest.hand(t)
                    .times(Quaternion.aboutX(most * Math.sin(9 * Math.max(0, t - 1.2))))));
  }

  @ParameterizedTest
  @CsvSource({"0.02, 0.015", "-0.02, -0.015"})
  void aPositionIsReadBetweenItsSamplesOfTheStretch(double outsideS, double insideS) {
    // Given: a finish beyond the end of the stretch, or an address before its beginning. Expect:
    // neither cock nor flexion there, as nothing was seen; inside both.
    SwingEvent event = outsideS > 0 ? SwingEvent.FINISH : SwingEvent.ADDRESS;
    UnitMount posed =
        new UnitMount(Quaternion.IDENTITY, Math.toRadians(2), Math.toRadians(5), SkinSlip.SD_RAD);
    WristAlignment alignment = new WristAlignment(posed, posed, 0, WristAlignment.Source.POSE);
    WristSteps worn = new WristSteps(alignment, WristAlignment.nominalShaft(), List.of());
    double edgeS = outsideS > 0 ? 3.0 : 0.3;
    for (double byS : new double[] {outsideS, outsideS - 2 * insideS}) {
      EventTime at = WristLawsTest.at(event, edgeS + byS, 0);
      long said =
          read(RIGHT, swing(0.3, 3.0, at), worn, 1e-4).measures().stream()
              .filter(m -> m.at().equals(event.word()))
              .count();
      assertThat(said).isEqualTo(byS == outsideS ? 0 : 2);
    }
  }

  @Test
  void aBendThatNoWristMakesIsNotTold() {
    // Given: a hand that goes 2.5 and 3.2 times as far as a wrist: from 12 to 62 deg of cock makes
    // 125
    // and 160 deg since address. Expect: the first is told, nothing of the second, and why; 130 deg
    // is our choice of what no wrist does.
    for (double times : new double[] {2.5, 3.2}) {
      UnitStream far = hand(BodyPoint.LEAD_HAND, t -> times * (WristLawsTest.cockDeg(t) - 12) + 12);
      WristReading reading = read(of(unit(BodyPoint.LEAD_FOREARM), far));
      MeasureValue top = find(reading, Measure.WRIST_COCK, "top");
      assertThat(top.given()).as(times + " times").isEqualTo(times < 3);
      if (times > 3) {
        assertThat(top.why()).isEqualTo(Reason.of(MeasureReason.NO_WRIST_BENDS_SO));
        assertThat(reading.motion()).isEmpty();
      }
    }
  }
}
