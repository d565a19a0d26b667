package steadyturn.cli.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.coach.MeanMotion;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.swing.SwingEvent;

/** Slide runs straight from 0 to -20 (or -40) mm at the top and on to 70 mm at impact. */
class MeanMotionTest {

  private static SwingResult swing(int number, double slideAtTopMm) {
    return DrawnLesson.swing(
        number,
        List.of(),
        DrawnLesson.curve(
            number, Measure.PELVIS_SLIDE, 0.5, 9, 1, 0, 1.75, slideAtTopMm, 2, 70, 2.5, 80),
        DrawnLesson.curve(number, Measure.PELVIS_TURN, 0.5, 1, 1, 0, 1.75, -45, 2, 40, 2.5, 60));
  }

  private static MeanMotion mean() {
    return new MeanMotion(Sheet.group(List.of(swing(1, -20), swing(2, -40))));
  }

  @Test
  void placesRunFromTakeawayOverTheTopToImpact() {
    // Given: two swings that differ at the top. Expect: the mean -30 mm there; a third of the way
    // to the top (place 25) a third of it; both ends of each part are in.
    List<double[]> back = mean().points(Measure.PELVIS_SLIDE, Measure.PELVIS_TURN, 0, 75);
    assertThat(back).hasSize(76);
    assertThat(back.get(0)).containsExactly(new double[] {0, 0}, within(1e-9));
    assertThat(back.get(25)).containsExactly(new double[] {-10, -15}, within(1e-9));
    assertThat(back.get(75)).containsExactly(new double[] {-30, -45}, within(1e-9));
    List<double[]> down = mean().points(Measure.PELVIS_SLIDE, Measure.PELVIS_TURN, 75, 100);
    assertThat(down).hasSize(26);
    assertThat(down.get(0)).containsExactly(new double[] {-30, -45}, within(1e-9));
    assertThat(down.get(25)).containsExactly(new double[] {70, 40}, within(1e-9));
  }

  @Test
  void whatNoSwingHasGivesNoPoints() {
    assertThat(mean().has(Measure.PELVIS_SLIDE)).isTrue();
    assertThat(mean().has(Measure.WRIST_COCK)).isFalse();
    assertThat(mean().points(Measure.PELVIS_SLIDE, Measure.WRIST_COCK, 0, 100)).isEmpty();
    assertThat(mean().points(Measure.WRIST_COCK, Measure.PELVIS_SLIDE, 0, 100)).isEmpty();
  }

  @Test
  void oneSwingGivesItsSamplesFromTakeawayToImpact() {
    // Given: samples at 0.5, 1, 1.75, 2 and 2.5 s. Expect: the three from takeaway (1 s) to impact.
    List<double[]> points =
        MeanMotion.points(swing(1, -20), Measure.PELVIS_SLIDE, Measure.PELVIS_TURN);
    assertThat(points)
        .containsExactly(new double[] {0, 0}, new double[] {-20, -45}, new double[] {70, 40});
    assertThat(MeanMotion.points(swing(1, -20), Measure.PELVIS_SLIDE, Measure.WRIST_COCK))
        .isEmpty();
    assertThat(MeanMotion.points(swing(1, -20), Measure.WRIST_COCK, Measure.PELVIS_SLIDE))
        .isEmpty();
  }

  @Test
  void aSwingWithoutHipsTakesNothingFromTheOthers() {
    // Given: a swing whose pelvis was not measured beside two that were. Expect: the mean of the
    // two; of swings without any hips no points.
    SwingResult bare = DrawnLesson.swing(3, List.of());
    MeanMotion mean = new MeanMotion(Sheet.group(List.of(swing(1, -20), swing(2, -40), bare)));
    assertThat(mean.points(Measure.PELVIS_SLIDE, Measure.PELVIS_TURN, 75, 75).get(0))
        .containsExactly(new double[] {-30, -45}, within(1e-9));
    assertThat(new MeanMotion(Sheet.group(List.of(bare))).has(Measure.PELVIS_TURN)).isFalse();
  }

  @Test
  void anEventThatWasNotFoundHasNoTime() {
    assertThat(swing(1, 0).timeS(SwingEvent.TOP)).isEqualTo(11.75);
    assertThat(swing(1, 0).timeS(SwingEvent.FINISH)).isNaN();
  }

  @Test
  void aStretchWithoutAValueIsLeftOut() {
    // Given: slide known from the top on only. Expect: no point before, all 26 after.
    SwingResult one =
        DrawnLesson.swing(
            1,
            List.of(),
            DrawnLesson.curve(1, Measure.PELVIS_SLIDE, 1.75, -20, 2, 70),
            DrawnLesson.curve(1, Measure.PELVIS_TURN, 1, 0, 1.75, -45, 2, 40));
    MeanMotion mean = new MeanMotion(Sheet.group(List.of(one)));
    assertThat(mean.points(Measure.PELVIS_SLIDE, Measure.PELVIS_TURN, 0, 100)).hasSize(26);
    assertThat(mean.points(Measure.PELVIS_TURN, Measure.PELVIS_SLIDE, 0, 100)).hasSize(26);
  }
}
