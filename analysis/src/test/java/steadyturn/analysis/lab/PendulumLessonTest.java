package steadyturn.analysis.lab;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.lab.body.BodyErrors;
import steadyturn.analysis.lab.pendulum.DoublePendulum;
import steadyturn.analysis.lab.pendulum.PendulumBody;
import steadyturn.analysis.lab.pendulum.PendulumDrive;
import steadyturn.analysis.lab.pendulum.PendulumNode;
import steadyturn.analysis.lab.pendulum.PendulumSwing;
import steadyturn.analysis.lab.truth.SwingTruth;
import steadyturn.analysis.lab.unit.UnitGrade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitStream;

class PendulumLessonTest {

  private static final long SEED = 5;
  private static final List<PendulumSwing> SWINGS =
      List.of(
          DoublePendulum.swing(PendulumBody.driver(), PendulumDrive.cast()),
          DoublePendulum.swing(PendulumBody.driver(), PendulumDrive.kept()),
          DoublePendulum.swing(PendulumBody.driver(), PendulumDrive.late()));

  private static SyntheticLesson steelLesson() {
    LessonSpec spec =
        LessonSpec.standard()
            .withBody(BodyErrors.none())
            .withUnitGrade(UnitGrade.PERFECT)
            .withWalking(false)
            .withWearSteps(false)
            .withClockSkewPpm(0)
            .withJitterS(0)
            .withLossPct(0)
            .withUnitStartErrorS(0)
            .withUnitStartSpreadS(0);
    return PendulumLessons.simulate(spec, SWINGS, SEED);
  }

  @Test
  void armAndWristOfTheLessonFollowThePendulum() {
    // Given: a body without sway. Expect: cock and arm rate of the truth are those of the pendulum
    // at the same time before impact. Within 1e-7: the same quintic pieces, shifted in time, read
    // back from directions; across the forearm its plane's lean, under 100 deg/s, comes beside.
    SyntheticLesson lesson = steelLesson();
    assertThat(lesson.truth().swings()).hasSize(3);
    for (int i = 0; i < 3; i++) {
      SwingTruth truth = lesson.truth().swings().get(i);
      double impactS = truth.eventS(SwingEvent.IMPACT).orElseThrow();
      for (double before = 0.001; before < SWINGS.get(i).impactS(); before += 0.0037) {
        PendulumNode node = SWINGS.get(i).at(SWINGS.get(i).impactS() - before);
        assertThat(truth.cockRad(impactS - before)).isCloseTo(node.cockRad(), within(1e-7));
        double across = truth.armRateRadPerS(impactS - before);
        double lean2 = across * across - node.armRateRadPerS() * node.armRateRadPerS();
        assertThat(lean2).isBetween(-1e-6, 3.05);
      }
    }
  }

  @Test
  void aForearmUnitFeelsTheArmRateOfThePendulum() {
    // Given: perfect units 2.5 deg off their mounting would spread the rate over their axes; here
    // they sit as drawn, forearm rolled by 90 deg, so the arm turns about the unit's z (about x and
    // y only its plane leans).
    // Within 1e-6 rad/s: exact chain.
    SyntheticLesson lesson = steelLesson();
    UnitStream forearm = lesson.recording().unit(BodyPoint.LEAD_FOREARM).orElseThrow();
    SwingTruth truth = lesson.truth().swings().get(1);
    int k = forearm.indexAt(truth.eventS(SwingEvent.IMPACT).orElseThrow() - 0.1);
    double beforeS = truth.eventS(SwingEvent.IMPACT).orElseThrow() - forearm.timeS(k);
    double expected = SWINGS.get(1).at(SWINGS.get(1).impactS() - beforeS).armRateRadPerS();
    assertThat(forearm.gyroRadPerS(2, k)).isCloseTo(expected, within(1e-6));
  }

  @Test
  void aCastAndAKeptAngleDifferByWhatIsKeptAndByTheRelease() {
    // Given: cast and kept pendulums; by the table the cock is 35.96 and 90.00 deg with the arm
    // level, 11.33 and 55.75 deg with the shaft level. Expect: the truth of the lesson says so.
    // Within 0.05 deg: the table's half digit and the events' millisecond grid, halved 40 times.
    SyntheticLesson lesson = steelLesson();
    SwingTruth cast = lesson.truth().swings().get(0);
    SwingTruth kept = lesson.truth().swings().get(1);
    assertThat(cockDeg(cast, SwingEvent.LEAD_ARM_LEVEL_DOWN)).isCloseTo(35.96, within(0.05));
    assertThat(cockDeg(kept, SwingEvent.LEAD_ARM_LEVEL_DOWN)).isCloseTo(90.00, within(0.05));
    assertThat(cockDeg(cast, SwingEvent.SHAFT_LEVEL_DOWN)).isCloseTo(11.33, within(0.05));
    assertThat(cockDeg(kept, SwingEvent.SHAFT_LEVEL_DOWN)).isCloseTo(55.75, within(0.05));
    assertThat(value(cast, Measure.WRIST_RELEASE))
        .isGreaterThan(value(kept, Measure.WRIST_RELEASE) + 20);
  }

  private static double cockDeg(SwingTruth swing, SwingEvent event) {
    return Math.toDegrees(swing.cockRad(swing.eventS(event).orElseThrow()));
  }

  private static double value(SwingTruth swing, Measure measure) {
    return swing.truth(measure, "").orElseThrow().value();
  }
}
