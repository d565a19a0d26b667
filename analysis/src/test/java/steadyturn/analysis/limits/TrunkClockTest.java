package steadyturn.analysis.limits;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.analysis.lab.FamilyLessons;
import steadyturn.analysis.lab.family.Half;
import steadyturn.analysis.lab.family.Situation;
import steadyturn.analysis.swing.Faults;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.find.SwingFinder;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.ingest.clock.AlignedRecording;
import steadyturn.ingest.clock.ClockFit;
import steadyturn.ingest.clock.ClockLink;
import steadyturn.ingest.clock.ClockReason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/** A lesson for tuning (seed 3, two swings) whose units are tied by their stated starts alone. */
class TrunkClockTest {

  private static final Recording SOUND =
      FamilyLessons.simulate(Situation.STANDARD, Half.TUNING, 3).recording();

  private static AlignedRecording judged(double lateS, double sdS) {
    List<UnitStream> units =
        SOUND.units().stream().map(u -> u.point().isTrunk() ? u : u.shifted(lateS)).toList();
    Recording shifted = new Recording(SOUND.id(), SOUND.player(), units, SOUND.marks());
    ClockFit known = new ClockFit(0, 0, 0, sdS, 0, 0);
    List<ClockLink> links =
        List.of(
            new ClockLink(BodyPoint.LEAD_FOREARM, BodyPoint.PELVIS, known, 0),
            new ClockLink(BodyPoint.LEAD_HAND, BodyPoint.LEAD_FOREARM, ClockFit.reference(), 0));
    AlignedRecording aligned = new AlignedRecording(shifted, Map.of(), links, Map.of());
    List<Swing> swings = SwingFinder.withDefaults().find(shifted);
    assertThat(swings).hasSize(2);
    return TrunkClock.judged(aligned, swings, RestBiases.of(shifted), Faults.usual());
  }

  @Test
  void aSoundClockKeepsItsSpread() {
    AlignedRecording judged = judged(0, 0.012);
    assertThat(judged.sdBetweenS(BodyPoint.PELVIS, BodyPoint.LEAD_HAND, 50)).isLessThan(0.014);
    assertThat(judged.reasons()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.25, -0.15, 0.15, 0.25})
  void startsStatedWrongAreDoubtedByTheirSize(double lateS) {
    AlignedRecording judged = judged(lateS, 0.012);
    assertThat(judged.sdBetweenS(BodyPoint.PELVIS, BodyPoint.LEAD_FOREARM, 50))
        .isBetween(0.7 * Math.abs(lateS), 1.3 * Math.abs(lateS));
    assertThat(judged.sdBetweenS(BodyPoint.LEAD_HAND, BodyPoint.LEAD_FOREARM, 50)).isZero();
    assertThat(judged.reasons().get(BodyPoint.PELVIS))
        .singleElement()
        .satisfies(why -> assertThat(why.code()).isEqualTo(ClockReason.BODY));
  }

  @Test
  void aClockThatBlowsTiedIsNotAsked() {
    // Given: off by 0.25 s and yet, as if by blows, known to 4 ms. Expect: as it was.
    assertThat(judged(0.25, 0.004).sdBetweenS(BodyPoint.PELVIS, BodyPoint.LEAD_HAND, 50))
        .isEqualTo(0.004);
  }
}
