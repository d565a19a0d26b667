package steadyturn.cli.command.mat;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.ingest.reason.Reason;

/**
 * What is read from three metres; expected texts worked by hand from LOOK: no sign, no fine digits.
 */
class BigFigureTest {

  private static MeasureValue value(Measure measure, double value, double half) {
    return new MeasureValue(
        measure, "top", value, value - half, value + half, Grade.MEASURED, Reason.NONE);
  }

  private static String told(MeasureValue value) {
    ObjectNode big = BigFigure.of(value);
    return String.join(
            " ",
            big.path("number").asText(),
            big.path("unit").asText(),
            big.path("half").asText(),
            big.path("way").asText())
        .strip();
  }

  @Test
  void aDirectionIsSaidInWordsAndNoNumberIsFinerThanAPersonCanChange() {
    assertThat(told(value(Measure.PELVIS_SLIDE, -53, 16)))
        .isEqualTo("5.5 cm ± 2 away from the target"); // 1.6 is not 1.5
    assertThat(told(value(Measure.PELVIS_SLIDE, 108, 19)))
        .isEqualTo("11 cm ± 2 towards the target");
    assertThat(told(value(Measure.PELVIS_TURN, -22.6, 2.7)))
        .isEqualTo("23 ° ± 3 away from the target");
    assertThat(told(value(Measure.WRIST_RELEASE, 93, 9))).isEqualTo("95 ms ± 10 before impact");
    assertThat(told(value(Measure.WRIST_RELEASE, 93, 7))).isEqualTo("95 ms ± 10 before impact");
    assertThat(told(value(Measure.PELVIS_TURN, -22.6, 2.01)))
        .isEqualTo("23 ° ± 3 away from the target");
    assertThat(told(value(Measure.TEMPO_RATIO, 2.31, 0.1))).isEqualTo("2.3  ± 0.1");
  }

  @Test
  void aGoalIsSaidLikeTheValueThatItStandsBeside() {
    MeasureValue turn = value(Measure.PELVIS_TURN, -23, 3);
    MeasureValue slide = value(Measure.PELVIS_SLIDE, -53, 16);
    assertThat(BigFigure.goal(turn, -62, -40)).isEqualTo("goal 40 to 62°");
    assertThat(BigFigure.goal(slide, -40, 20))
        .isEqualTo("goal 4 cm away to 2 cm towards the target");
    assertThat(BigFigure.usual(slide, -61)).isEqualTo("usual 6 cm");
    assertThat(BigFigure.usual(slide, Double.NaN)).isEmpty();
  }

  @Test
  void aValueIsChangedWhenItMovedByMoreThanHalfItsHalfWidth() {
    // Given: -50 ± 10, then 4.9 and 5.1 further on.
    MeasureValue first = value(Measure.PELVIS_SLIDE, -50, 10);
    assertThat(BallBoard.isChanged(first, value(Measure.PELVIS_SLIDE, -45.1, 8))).isFalse();
    assertThat(BallBoard.isChanged(first, value(Measure.PELVIS_SLIDE, -55.1, 8))).isTrue();
  }
}
