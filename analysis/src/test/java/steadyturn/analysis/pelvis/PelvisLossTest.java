package steadyturn.analysis.pelvis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.Handedness;

/** What is said of a pelvis beside, inside and behind samples that are missing. */
class PelvisLossTest {

  private static final SkinShift NO_SKIN = new SkinShift(0, 0);
  private static final SkinCourse BARE = SkinCourse.of(NO_SKIN, List.of());
  private static final MadePelvis MADE = MadePelvis.of(Handedness.LEFT);
  private static final EventTime TAKEAWAY =
      PelvisMeasuresTest.event(SwingEvent.TAKEAWAY, MadePelvis.TAKEAWAY_S);
  private static final EventTime IMPACT =
      PelvisMeasuresTest.event(SwingEvent.IMPACT, MadePelvis.IMPACT_S);
  private static final Set<Measure> ANGLES =
      EnumSet.of(Measure.PELVIS_TURN, Measure.PELVIS_TILT, Measure.PELVIS_SIDETILT);

  private static LostSamples whole() {
    return LostSamples.none(MADE);
  }

  private static EventTime event(SwingEvent event, double timeS) {
    return PelvisMeasuresTest.event(event, timeS);
  }

  private static List<MeasureValue> read(LostSamples lost, EventTime... events) {
    return PelvisMeasures.of(lost.track(), List.of(events), 86.5, NO_SKIN, Reason.NONE, false);
  }

  private static MeasureValue circle(LostSamples lost, EventTime... events) {
    return PelvisMeasuresTest.find(read(lost, events), Measure.PELVIS_CIRCLE, "");
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.1, 0.25, 0.5, 0.8})
  void insideAGapThePoseFollowsTheCubicOfItsEndsAndTheirRates(double part) {
    // Given: 0.1 s missing of a swing of exact truth, with a turn that the gap may have cost.
    // Expect: the cubic of Hermite in its textbook form (u^3 - 2 u^2 + u and so on), by the truth
    // and its own slope over the 10 ms that are seen on each side. Within 1e-7: rounding, times the
    // gap. And the truth itself to 1e-3: 1.7^4 x 0.9 rad/s^4 x 0.1^4 / 384 of the cubic, and slopes
    // that stand 5 ms beside the ends.
    double a = 1.5;
    double b = 1.6;
    double instant = a + part * (b - a);
    PelvisTrack track = whole().without(a, b, 1e-9, 0).track();
    double[] pose = PoseSpread.at(track, instant, 0, BARE).pose().toArray();
    for (int i = 0; i < 6; i++) {
      double pa = MadePelvis.truth(a).toArray()[i];
      double pb = MadePelvis.truth(b).toArray()[i];
      double ra = (pa - MadePelvis.truth(a - 0.01).toArray()[i]) / 0.01;
      double rb = (MadePelvis.truth(b + 0.01).toArray()[i] - pb) / 0.01;
      double u = part;
      double u2 = u * u;
      double u3 = u * u * u;
      double expected =
          (2 * u3 - 3 * u2 + 1) * pa
              + (u3 - 2 * u2 + u) * (b - a) * ra
              + (3 * u2 - 2 * u3) * pb
              + (u3 - u2) * (b - a) * rb;
      assertThat(pose[i]).as("component " + i).isCloseTo(expected, within(1e-7));
      assertThat(pose[i]).isCloseTo(MadePelvis.truth(instant).toArray()[i], within(1e-3));
    }
  }

  @Test
  void insideAGapItsWholePriceIsPaidOnTopOfTheRest() {
    // Given: a gap that may have moved the pelvis by 20 mm. Expect: the lift's variance grows by
    // exactly that square; with a turn about level axes of 0.1 rad, the turn's by that square.
    double before = PoseSpread.at(whole().track(), 1.6, 0, BARE).sd(3);
    PelvisTrack moved = whole().without(1.5, 1.6, 0, 0.02).track();
    PoseSpread inside = PoseSpread.at(moved, 1.599, 0, BARE);
    assertThat(inside.sd(3)).isCloseTo(Math.hypot(before, 0.02), within(1e-9));
    double turnBefore = PoseSpread.at(whole().track(), 1.6, 0, BARE).sd(0);
    PelvisTrack turned = whole().without(1.5, 1.6, 0.1, 0).track();
    double turn = PoseSpread.at(turned, 1.599, 0, BARE).sd(0);
    // the pelvis leans by 17 deg, so that level x and y turn its hip line a little, too
    assertThat(turn).isBetween(Math.hypot(turnBefore, 0.1), Math.hypot(turnBefore, 0.104));
    assertThat(PoseSpread.at(moved, 1.7, 0, BARE).sd(3))
        .isCloseTo(PoseSpread.at(whole().track(), 1.7, 0, BARE).sd(3), within(1e-9));
  }

  @Test
  void besideAGapTheSideThatHasSamplesGivesTheRate() {
    // Expect: the slope of the truth over the 10 ms before the gap, and over those behind it; in
    // its middle nothing changes: at 30 ms of samples from it the usual 20 ms.
    PelvisTrack track = whole().without(1.5, 1.6, 0, 0).track();
    int a = track.nearest(1.5);
    int b = track.nearest(1.6);
    for (int i = 0; i < 6; i++) {
      assertThat(track.poseRate(a)[i]).isCloseTo(slope(1.49, 1.5, i), within(1e-8));
      assertThat(track.poseRate(b)[i]).isCloseTo(slope(1.6, 1.61, i), within(1e-8));
      assertThat(track.poseRate(a - 6)[i]).isCloseTo(slope(1.46, 1.48, i), within(1e-8));
    }
  }

  private static double slope(double fromS, double toS, int i) {
    return (MadePelvis.truth(toS).toArray()[i] - MadePelvis.truth(fromS).toArray()[i])
        / (toS - fromS);
  }

  @Test
  void aGapInTheAddressLeavesItsMeanWhereItWas() {
    // Given: a unit that drifts by some mm and mrad a second, so that its mean over the address
    // depends on when it is taken; the address is seen from 0.8 to 1.02 s, but for 0.85 to 0.95 s.
    // Expect: the pose of the whole address, as each sample counts for the time around it. Within a
    // third of what the mean of the samples alone would be off by: the ends count half.
    MadePelvis drifting = MADE.with(new double[] {0.01, 0.02, 0, 0, 0, 0, 0, 0, 0});
    double[] seen = LostSamples.none(drifting).track().pose(400).toArray();
    PelvisTrack lost = LostSamples.none(drifting).without(0.81, 0.93, 0, 0).track();
    double[] found = lost.pose(lost.nearest(2)).toArray();
    double[] drift = drifting.track().poseRate(100);
    double meanOfSamplesOff = 0.018; // s: the mean time of what is left lies so much later
    for (int i = 0; i < 4; i++) {
      assertThat(found[i]).isCloseTo(seen[i], within(Math.abs(drift[i]) * meanOfSamplesOff / 3));
    }
  }

  @Test
  void theLongestStepIsLookedForInTheSpanAlone() {
    PelvisTrack track = whole().without(1.5, 1.6, 0, 0).without(2.0, 2.25, 0, 0).track();
    assertThat(track.longestStepS(1.0, 1.4)).isCloseTo(0.005, within(1e-9));
    assertThat(track.longestStepS(1.0, 1.55)).isCloseTo(0.1, within(1e-9));
    assertThat(track.longestStepS(1.52, 1.58)).isCloseTo(0.1, within(1e-9));
    assertThat(track.longestStepS(0, 2.4)).isCloseTo(0.25, within(1e-9));
    assertThat(track.longestStepS(2.3, 9)).isCloseTo(0.005, within(1e-9));
    assertThat(track.longestStepS(0, 0.001)).isCloseTo(0.005, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"0.025,false", "0.035,true"})
  void shortGapsAreNotSpokenOf(double lengthS, boolean spoken) {
    // Expect: from 30 ms on a gap makes what lies behind it an estimate that says why.
    LostSamples lost = whole().without(1.5, 1.5 + lengthS, 0, 0);
    PelvisTrack track = lost.track();
    assertThat(track.hasGapBefore(1.7)).isEqualTo(spoken);
    assertThat(track.hasGapBefore(1.5)).isFalse();
    assertThat(track.gapAt(1.51).isPresent()).isEqualTo(spoken);
    assertThat(track.gapAt(1.6)).isEmpty();
    MeasureValue lift =
        PelvisMeasuresTest.find(
            read(lost, event(SwingEvent.TOP, 2)), Measure.PELVIS_LIFT, SwingEvent.TOP.word());
    assertThat(lift.grade()).isEqualTo(spoken ? Grade.ESTIMATED : Grade.MEASURED);
    assertThat(lift.why()).isEqualTo(spoken ? Reason.of(MeasureReason.PELVIS_GAP) : Reason.NONE);
  }

  @Test
  void aGapBeforeTheAddressIsNoOnesLoss() {
    PelvisTrack track = whole().without(0.3, 0.5, 0, 0).track();
    assertThat(track.hasGapBefore(2)).isFalse();
    assertThat(track.pose(track.nearest(2)).toArray())
        .containsExactly(MadePelvis.truth(2).toArray(), within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"0.85,0.9", "0.78,0.9"})
  void aGapInTheAddressCountsWithItsWholeSpread(double fromS, double toS) {
    // Given: a gap in the address, or over its beginning at 0.8 s, which the sample before it
    // stands for. Expect: it counts for all that lies behind, and errors are those since that
    // sample, as of an address whose middle it is, 140 ms before a takeaway.
    PelvisTrack lost = whole().without(fromS, toS, 0, 0).track();
    assertThat(lost.hasGapBefore(toS + 0.01)).isTrue();
    PelvisTrack since = whole().takenAwayAt(fromS + 0.14).track();
    double[][] expected = since.errors().columns(400);
    double[][] found = lost.errors().columns(lost.nearest(2));
    for (int row = 1; row < 4; row++) {
      assertThat(found[row]).containsExactly(expected[row], within(1e-7));
    }
  }

  @Test
  void aTakeawayAtTheVeryStartHasItsFirstSampleForAddress() {
    MadePelvis drifting = MADE.with(new double[] {0.01, 0.02, 0, 0, 0, 0, 0, 0, 0});
    PelvisTrack track = LostSamples.none(drifting).takenAwayAt(0).track();
    assertThat(track.pose(0).toArray()[1]).isCloseTo(0, within(1e-12));
    assertThat(track.pose(0).toArray()[0]).isCloseTo(0, within(1e-12));
  }

  @ParameterizedTest
  @CsvSource({"0.115,true", "0.125,false"})
  void ofAnInstantInsideALongGapNothingIsSaid(double lengthS, boolean given) {
    // Expect: up to 120 ms an estimate; inside a longer gap all eleven measures withheld for it.
    LostSamples lost = whole().without(1.95, 1.95 + lengthS, 1e-4, 1e-4);
    List<MeasureValue> top =
        read(lost, event(SwingEvent.TOP, 2)).stream().filter(m -> !m.at().isEmpty()).toList();
    assertThat(top).hasSize(12).allMatch(m -> m.given() == given);
    assertThat(top.stream().map(MeasureValue::measure).distinct()).hasSize(12);
    Reason why = Reason.of(given ? MeasureReason.PELVIS_GAP : MeasureReason.GAP_AT);
    assertThat(top.get(0).why()).isEqualTo(why);
    assertThat(top.get(0).grade()).isEqualTo(given ? Grade.ESTIMATED : Grade.WITHHELD);
  }

  @Test
  void behindAGapWhatIsKnownWorseThanItsLimitIsLost() {
    // Given: spreads of the motion that grow by 2 % from one try to the next, behind a gap. Expect:
    // an angle is lost beyond 10 deg, a place as soon as one of the three is beyond 60 mm, what
    // both make with a place or the turn; each for that gap. Without a gap nothing is lost.
    EventTime top = event(SwingEvent.TOP, 2);
    LostSamples gap = whole().without(1.5, 1.6, 1e-6, 1e-6);
    Set<Measure> seenGiven = EnumSet.noneOf(Measure.class);
    Set<Measure> seenLost = EnumSet.noneOf(Measure.class);
    for (double parts = 2; parts < 400; parts *= 1.02) {
      PelvisTrack track = gap.spread(parts).track();
      PoseSpread spread = PoseSpread.at(track, 2, 0, SkinCourse.of(NO_SKIN, List.of(top)));
      double placeSdM = Math.max(spread.sd(1), Math.max(spread.sd(2), spread.sd(3)));
      for (MeasureValue m : read(gap.spread(parts), top)) {
        if (m.at().isEmpty()) {
          continue;
        }
        boolean lost =
            ANGLES.contains(m.measure())
                ? sdOfAngle(m.measure(), spread) > Math.toRadians(10)
                : placeSdM > 0.06 || (!isPlace(m.measure()) && spread.sd(0) > Math.toRadians(10));
        assertThat(m.given()).as(m.measure().id() + " x" + parts).isEqualTo(!lost);
        (lost ? seenLost : seenGiven).add(m.measure());
        if (lost) {
          assertThat(m.why()).isEqualTo(Reason.of(MeasureReason.GAP_BEFORE));
        }
      }
    }
    assertThat(seenLost).hasSize(12);
    assertThat(seenGiven).hasSize(12);
    assertThat(read(whole().spread(300), top).stream().filter(m -> !m.at().isEmpty()))
        .allMatch(MeasureValue::given);
  }

  private static double sdOfAngle(Measure measure, PoseSpread spread) {
    return spread.sd(measure == Measure.PELVIS_TURN ? 0 : measure == Measure.PELVIS_TILT ? 4 : 5);
  }

  private static boolean isPlace(Measure measure) {
    return EnumSet.of(Measure.PELVIS_SLIDE, Measure.PELVIS_THRUST, Measure.PELVIS_LIFT)
        .contains(measure);
  }

  @Test
  void beyondACutAllIsWithheldForTheGap() {
    // Given: samples that end at 3 s, for a gap or for the next swing; a finish at 3.03 s.
    EventTime late = event(SwingEvent.FINISH, 3.03);
    List<MeasureValue> cut =
        PelvisMeasures.of(MADE.track(), List.of(late), 86.5, NO_SKIN, Reason.NONE, true);
    assertThat(cut.stream().filter(m -> !m.at().isEmpty()))
        .hasSize(12)
        .allMatch(m -> m.why().equals(Reason.of(MeasureReason.GAP_BEFORE)));
    List<MeasureValue> next =
        PelvisMeasures.of(MADE.track(), List.of(late), 86.5, NO_SKIN, Reason.NONE, false);
    assertThat(next.stream().filter(m -> !m.at().isEmpty()))
        .extracting(MeasureValue::measure)
        .containsExactly(Measure.PELVIS_TURN, Measure.PELVIS_SLIDE);
    assertThat(next.get(0).why()).isEqualTo(Reason.of(MeasureReason.OUTSIDE_THE_RESTS));
    assertThat(next.get(0).at()).isEqualTo("finish");
    assertThat(next.get(1).why()).isEqualTo(Reason.of(MeasureReason.OUTSIDE_THE_RESTS));
  }

  @ParameterizedTest
  @CsvSource({
    "1.5,1.61,true,PELVIS_GAP", // 110 ms
    "1.5,1.63,false,GAP_BEFORE", // 130 ms
    "2.4,2.6,true,", // behind impact
    "0.4,0.6,true,", // before the address
    "0.9,0.95,true,PELVIS_GAP"
  })
  void theCircleNeedsEverythingFromTakeawayToImpact(
      double fromS, double toS, boolean given, MeasureReason why) {
    MeasureValue circle = circle(whole().without(fromS, toS, 1e-6, 1e-6), TAKEAWAY, IMPACT);
    assertThat(circle.given()).isEqualTo(given);
    assertThat(circle.why()).isEqualTo(why == null ? Reason.NONE : Reason.of(why));
    Grade whenGiven = why == null ? Grade.MEASURED : Grade.ESTIMATED;
    assertThat(circle.grade()).isEqualTo(given ? whenGiven : Grade.WITHHELD);
  }

  @Test
  void theCircleIsWithheldBeyondTheSamplesAndWherePlaceIsLost() {
    EventTime late = event(SwingEvent.IMPACT, 3.03);
    assertThat(circle(whole(), TAKEAWAY, late).why())
        .isEqualTo(Reason.of(MeasureReason.GAP_BEFORE));
    assertThat(circle(whole(), TAKEAWAY, event(SwingEvent.IMPACT, 3.01)).given()).isTrue();
    assertThat(circle(whole(), TAKEAWAY).why())
        .isEqualTo(Reason.of(MeasureReason.NO_TAKEAWAY_OR_IMPACT));
    assertThat(circle(whole(), IMPACT).given()).isFalse();
    LostSamples lost = whole().without(1.5, 1.6, 1e-6, 1e-6);
    assertThat(circle(lost.spread(100), TAKEAWAY, IMPACT).why())
        .isEqualTo(Reason.of(MeasureReason.GAP_BEFORE));
    assertThat(circle(whole().spread(100), TAKEAWAY, IMPACT).given()).isTrue();
  }

  @Test
  void aCaveatOfTheWholeSwingGoesBeforeThatOfAGap() {
    Reason notStill = Reason.of(MeasureReason.ADDRESS_NOT_STILL);
    LostSamples lost = whole().without(1.5, 1.6, 1e-6, 1e-6);
    List<MeasureValue> all =
        PelvisMeasures.of(lost.track(), List.of(TAKEAWAY, IMPACT), 86.5, NO_SKIN, notStill, false);
    assertThat(all.stream().filter(m -> !m.measure().equals(Measure.PELVIS_TURN_TO_SLIDE)))
        .allMatch(m -> m.why().equals(notStill) && m.grade() == Grade.ESTIMATED);
  }
}
