package steadyturn.analysis.limits;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * Made strokes ten seconds apart, each unit leaning about its y axis by so many degrees in each.
 * Our bounds: 11 deg where two addresses or more on either side say it, 18.7 where one does, 7 more
 * than the unit beside it.
 */
class SlipWatchTest {

  private static final double APART_S = 10;

  private final SlipWatch watch = new SlipWatch();
  private final List<Mark> marks = new ArrayList<>();

  private static Swing swing(int k) {
    double fromS = APART_S * k;
    return new Swing(
        k + 1,
        SwingKind.HIT,
        "",
        fromS,
        fromS + 4,
        List.of(
            at(SwingEvent.TAKEAWAY, fromS + WornUnit.TAKEAWAY_S),
            at(SwingEvent.TOP, fromS + WornUnit.TOP_S),
            at(SwingEvent.IMPACT, fromS + WornUnit.IMPACT_S)),
        List.of());
  }

  private static EventTime at(SwingEvent event, double timeS) {
    return new EventTime(event, timeS, 0.001, Grade.MEASURED, Reason.NONE);
  }

  private static UnitStream unit(BodyPoint point, int k, double deg) {
    double lean = Math.toRadians(30 + deg);
    WornUnit made = point == BodyPoint.PELVIS ? WornUnit.pelvis() : WornUnit.arm(point);
    return made.up(Math.cos(lean), 0, Math.sin(lean)).stream().shifted(APART_S * k);
  }

  /** Swings one after the other, of a pelvis alone or with both arm units. */
  private void pelvis(double... deg) {
    for (int k = 0; k < deg.length; k++) {
      see(k, unit(BodyPoint.PELVIS, k, deg[k]));
    }
  }

  private void see(int k, UnitStream... units) {
    Player player = Player.unmeasured("p", Handedness.RIGHT);
    watch.see(new Recording("made", player, List.of(units), marks), List.of(swing(k)));
  }

  @ParameterizedTest
  @CsvSource({"10.8, false", "11.2, true", "-11.2, true"})
  void twoAddressesOnEitherSideSayIt(double deg, boolean slipped) {
    pelvis(0, 0, deg, deg);
    assertThat(watch.slips()).hasSize(slipped ? 1 : 0);
    for (SlipWatch.Slip slip : watch.slips()) {
      assertThat(slip.lastBeforeS()).isEqualTo(11);
      assertThat(slip.firstAfterS()).isEqualTo(21);
      assertThat(Math.toDegrees(slip.angleRad())).isCloseTo(Math.abs(deg), within(1e-6));
      assertThat(slip.reason().code()).isEqualTo(MountReason.SLIPPED);
    }
  }

  @ParameterizedTest
  @CsvSource({"18.5, false", "18.9, true"})
  void aSingleAddressHasToSayMore(double deg, boolean slipped) {
    pelvis(0, 0, deg);
    assertThat(watch.slips()).hasSize(slipped ? 1 : 0);
  }

  @Test
  void aPlayerWhoNeverStandsAlikeSlipsNotAtAll() {
    pelvis(0, 14, -14, 13, 1, 15);
    assertThat(watch.slips()).isEmpty();
  }

  @Test
  void whatComesBeforeTheSlipIsKeptAndAWearStepMendsIt() {
    // Given: a slip between the second and the third of six swings; a bow before the fifth.
    pelvis(0, 0, 20, 20);
    marks.add(new Mark(38, 1, "bow", "", ""));
    see(4, unit(BodyPoint.PELVIS, 4, 20));
    see(5, unit(BodyPoint.PELVIS, 5, 20));
    assertThat(watch.movedBy(11)).isEmpty();
    assertThat(watch.movedBy(21)).isEqualTo(Set.of(BodyPoint.PELVIS));
    assertThat(watch.movedBy(31)).isEqualTo(Set.of(BodyPoint.PELVIS));
    assertThat(watch.movedBy(41)).isEmpty();
    assertThat(watch.slips()).hasSize(1);
  }

  @Test
  void aSwingSeenInTwoPiecesCountsOnce() {
    pelvis(0, 18);
    see(1, unit(BodyPoint.PELVIS, 1, 18));
    assertThat(watch.slips()).as("one address on either side").isEmpty();
  }

  @Test
  void aLongLessonIsAskedAtEverySwingInNoTime() {
    // Given: 400 swings that stand alike, seen and asked one by one. Expect: no slip, within 15 s
    // (half a second where nothing else runs); all pairs of groups at every question took minutes.
    assertTimeoutPreemptively(
        Duration.ofSeconds(15),
        () -> {
          for (int k = 0; k < 400; k++) {
            see(k, unit(BodyPoint.PELVIS, k, k % 7 - 3));
            assertThat(watch.movedBy(APART_S * k + 1)).isEmpty();
          }
        });
  }

  @ParameterizedTest
  @CsvSource({"0, LEAD_HAND", "12.8, LEAD_HAND", "13.2, ", "20, "})
  void forearmAndHandThatMoveTogetherDoNotSlip(double forearmDeg, BodyPoint slipped) {
    // Given: the hand at another lean by 20 deg from the third swing on, the forearm by so much.
    for (int k = 0; k < 4; k++) {
      see(
          k,
          unit(BodyPoint.LEAD_FOREARM, k, k < 2 ? 0 : forearmDeg),
          unit(BodyPoint.LEAD_HAND, k, k < 2 ? 0 : 20));
    }
    assertThat(watch.slips())
        .extracting(SlipWatch.Slip::point)
        .isEqualTo(slipped == null ? List.of() : List.of(slipped));
  }
}
