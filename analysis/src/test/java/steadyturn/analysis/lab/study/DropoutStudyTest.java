package steadyturn.analysis.lab.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.lab.LessonSimulator;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** The scan of dropouts in its short form; the long one is {@code accuracy --dropouts 400}. */
class DropoutStudyTest {

  private static final long SEED = 48;

  private static List<Recording> lesson() {
    LessonSpec spec =
        LessonSpec.standard()
            .withHits(2)
            .withPractices(0)
            .withWaggles(0)
            .withWalking(false)
            .withRateHz(200)
            .withWearSteps(Set.of());
    return List.of(LessonSimulator.simulate(spec, SEED).recording());
  }

  @Test
  void whatADropoutMovesSaysSoAndWhatDoesNotNeedItStays() {
    // Given: 48 dropouts of 0.02 to 2 s, one at a time, on a lesson of two swings at 200 Hz (seed
    // 48), over all units, phases and forms; and four of 12 s in one axis. Expect: no value moves
    // by more than its half-width without a wider interval, a worse grade or a flag; at most 5 % of
    // the values miss their twin; no swing is invented, none lost without a notice, no lesson
    // without result. Withheld though nothing they can need is lost: at most 1 %.
    DropoutStudy study = new DropoutStudy(List.of(lesson()), SEED, () -> {});
    DropoutStudy.Findings found = study.lay(48).layLong(4).findings(10);
    DropoutRow all = found.rows().get(found.rows().size() - 1);
    assertThat(all.cases()).isEqualTo(52);
    assertThat(all.inSilence()).as("%s", found.worst()).isZero();
    assertThat(all.missedPct()).as("%s", found.worst()).isLessThanOrEqualTo(5);
    assertThat(all.failures() + all.swingsInvented() + all.lostInSilence())
        .as("%s", found.worst())
        .isZero();
    assertThat(all.withheldForNothing()).as("%s", found.worst()).isLessThan(all.values() / 100);
    // not by withholding: most values stay, and some do move
    assertThat(all.withheld()).isBetween(1, all.values() / 3);
    assertThat(all.moved()).isPositive();
  }

  @Test
  void aDropoutTakesItsOwnSamplesOnly() {
    // Given: 100 samples at 100 Hz, noise by seed 1. Expect: of each form the samples from 0.2 s to
    // before 0.4 s, 20 of them, and nothing else.
    Random random = new Random(1);
    double[] time = new double[100];
    double[][] accel = new double[3][100];
    double[][] gyro = new double[3][100];
    for (int i = 0; i < 100; i++) {
      time[i] = i / 100.0;
      for (int axis = 0; axis < 3; axis++) {
        accel[axis][i] = random.nextGaussian();
        gyro[axis][i] = random.nextGaussian();
      }
    }
    double none = Double.POSITIVE_INFINITY;
    UnitStream hand =
        new UnitStream(
            new UnitFacts(BodyPoint.LEAD_HAND, "", 100, none, none, true), time, accel, gyro);
    Recording recording =
        new Recording("r", Player.unmeasured("p", Handedness.RIGHT), List.of(hand), List.of());
    List<Integer> lostValues = new ArrayList<>();
    for (Dropout.Form form : Dropout.Form.values()) {
      Dropout lost = new Dropout(BodyPoint.LEAD_HAND, form, 1, 0.2, 0.2);
      UnitStream left =
          lost.laidOn(List.of(recording)).get(0).unit(BodyPoint.LEAD_HAND).orElseThrow();
      int gone = 6 * (100 - left.size());
      for (int i = 0; i < left.size(); i++) {
        for (int axis = 0; axis < 3; axis++) {
          gone += Double.isNaN(left.accelMps2(axis, i)) ? 1 : 0;
          gone += Double.isNaN(left.gyroRadPerS(axis, i)) ? 1 : 0;
        }
      }
      lostValues.add(gone);
    }
    assertThat(lostValues).containsExactly(120, 120, 20, 20);
  }
}
