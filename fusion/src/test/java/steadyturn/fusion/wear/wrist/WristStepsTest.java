package steadyturn.fusion.wear.wrist;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.trial.MadeUnit;
import steadyturn.fusion.wear.StepResult;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** Which steps are folded into which alignment, by the units that are worn. */
class WristStepsTest {

  private static final Mark POSE = new Mark(0.5, 2, "neutral-wrist", "", "");
  private static final Mark COCKING = new Mark(4, 3, "cocking", "", "");
  private static final Mark BOW = new Mark(4, 3, "bow", "", "");

  /** Hangs for 3 s, then cocks about its own z from 4 s on, where it is no forearm. */
  private static UnitStream unit(BodyPoint point, Vector3 along) {
    boolean cocks = point != BodyPoint.LEAD_FOREARM;
    return MadeUnit.of(
        UnitFacts.plain(point, 100),
        7,
        t -> Vector3.Z.times(cocks && t > 4 ? 2 * Math.sin(2 * Math.PI * t) : 0),
        t -> along.unit().times(-9.8));
  }

  private static WristSteps steps(List<Mark> marks, BodyPoint... points) {
    List<UnitStream> units = new ArrayList<>();
    for (BodyPoint point : points) {
      units.add(unit(point, new Vector3(1, 0.1, point == BodyPoint.LEAD_HAND ? 0.2 : -0.1)));
    }
    Recording recording =
        new Recording("made", Player.unmeasured("p", Handedness.LEFT), units, marks);
    return WristSteps.of(recording, RestBiases.of(recording), WristSteps.NONE);
  }

  @Test
  void poseAndCockingOfForearmAndHandAreFoldedInOrder() {
    WristSteps steps =
        steps(List.of(POSE, COCKING, BOW), BodyPoint.LEAD_FOREARM, BodyPoint.LEAD_HAND);
    assertThat(steps.results()).hasSize(2).allMatch(StepResult::used);
    assertThat(steps.alignment().source()).isEqualTo(WristAlignment.Source.COCKING);
    assertThat(steps.alignment().posed()).isTrue();
    // beside a club the same pose shows the forearm alone
    assertThat(steps.shaft().source()).isEqualTo(WristAlignment.Source.POSE);
    assertThat(steps.shaft().posed()).isFalse();
    assertThat(steps.shaft().hand()).isEqualTo(UnitMount.onShaft());
    Vector3 bone = steps.alignment().forearm().qUnitSegment().rotate(Vector3.X);
    assertThat(bone.minus(new Vector3(1, 0.1, -0.1).unit()).norm()).isLessThan(1e-9);
  }

  @Test
  void withoutAHandTheShaftIsAlignedAndTheHandStaysAsDrawn() {
    WristSteps steps = steps(List.of(POSE, COCKING), BodyPoint.LEAD_FOREARM, BodyPoint.CLUB_SHAFT);
    assertThat(steps.results()).hasSize(2).allMatch(StepResult::used);
    assertThat(steps.shaft().source()).isEqualTo(WristAlignment.Source.COCKING);
    assertThat(steps.alignment().hand()).isEqualTo(UnitMount.onSkin());
    assertThat(steps.alignment().forearm()).isEqualTo(steps.shaft().forearm());
    assertThat(steps.alignment().source()).isEqualTo(WristAlignment.Source.POSE);
    assertThat(steps.alignment().hangSdRad()).isZero();
  }

  @Test
  void withoutAForearmOrAPartnerNothingIsRead() {
    List<Mark> marks = List.of(POSE, COCKING);
    assertThat(steps(marks, BodyPoint.LEAD_FOREARM).results()).isEmpty();
    assertThat(steps(marks, BodyPoint.LEAD_HAND).results()).isEmpty();
    assertThat(steps(marks, BodyPoint.LEAD_HAND).alignment()).isEqualTo(WristAlignment.nominal());
  }

  @Test
  void whatAnEarlierRecordingTaughtStaysAndItsResultsGo() {
    WristSteps first = steps(List.of(POSE), BodyPoint.LEAD_FOREARM, BodyPoint.LEAD_HAND);
    Recording later =
        new Recording(
            "later",
            Player.unmeasured("p", Handedness.LEFT),
            List.of(unit(BodyPoint.LEAD_FOREARM, Vector3.X), unit(BodyPoint.LEAD_HAND, Vector3.X)),
            List.of());
    WristSteps second = WristSteps.of(later, RestBiases.of(later), first);
    assertThat(second.alignment()).isEqualTo(first.alignment());
    assertThat(second.shaft()).isEqualTo(first.shaft());
    assertThat(second.results()).isEmpty();
  }
}
