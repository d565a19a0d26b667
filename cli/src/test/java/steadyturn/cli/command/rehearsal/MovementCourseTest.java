package steadyturn.cli.command.rehearsal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.lab.LessonSimulator;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

class MovementCourseTest {

  private static final double RATE_HZ = 100;
  private static final int SEED = 5;

  /** The instants shown from a wish on until the player waits again, s. */
  private static List<Double> shown(MovementCourse course, UnitStream unit) {
    course.wish("hit");
    List<Double> timesS = new ArrayList<>();
    do {
      timesS.add(unit.timeS(Math.abs(course.next()) - 1));
    } while (course.isBusy() && timesS.size() < 60 * RATE_HZ);
    return timesS;
  }

  @Test
  void everyBallIsShownWholeAndTheFirstComesAgainAfterTheLast() {
    // Given: a made lesson of two balls, 100 Hz, seed 5. Expect: each of three wishes shows a ball
    // from the begin of its mark to its end, where the finish is held, as without that no ball
    // is answered: the first, the second, the first again. (The last ball once ended before the
    // club came down.)
    Recording lesson =
        LessonSimulator.simulate(
                LessonSpec.standard()
                    .withHits(2)
                    .withPractices(0)
                    .withWalking(false)
                    .withRateHz(RATE_HZ)
                    .withLossPct(0)
                    .withJitterS(0)
                    .withUnitStartSpreadS(0)
                    .withUnitStartErrorS(0),
                SEED)
            .recording();
    UnitStream unit = lesson.units().get(0);
    List<Mark> hits =
        lesson.marks().stream().filter(mark -> mark.trialType().equals("hit")).toList();
    assertThat(hits).hasSize(2);
    MovementCourse course = new MovementCourse(lesson, RATE_HZ);
    for (Mark hit : List.of(hits.get(0), hits.get(1), hits.get(0))) {
      List<Double> timesS = shown(course, unit);
      for (double atS = hit.onsetS(); atS < hit.endS() + 0.2; atS += 0.1) {
        double instantS = atS;
        assertThat(timesS).anyMatch(t -> Math.abs(t - instantS) < 0.02);
      }
    }
  }
}
