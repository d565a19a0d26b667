package steadyturn.cli.page.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.cli.page.paper.Labels.Spot;

/** Labels on a paper of 200 x 100 px; a text of 10 letters of 10 px is 52 px wide. */
class LabelsTest {

  private static final String TEXT = "ten.letter";

  @Test
  void theFirstSpotWithRoomIsTaken() {
    // Given: a line through the first spot, none near the other two.
    Labels labels = new Labels(200, 100).avoid(0, 50, 200, 50, 4);
    Spot on = new Spot(20, 54, "start");
    Spot clear = new Spot(20, 90, "start");
    Spot other = new Spot(120, 90, "start");
    assertThat(labels.place(TEXT, 10, List.of(on, clear, other))).isEqualTo(clear);
    // and now the first label lies on the second spot
    assertThat(labels.place(TEXT, 10, List.of(on, clear, other))).isEqualTo(other);
  }

  @Test
  void withoutRoomAnywhereTheRoomiestIsTaken() {
    Labels labels = new Labels(200, 100).avoid(0, 50, 200, 50, 40);
    Spot worst = new Spot(20, 54, "start");
    Spot better = new Spot(20, 70, "start");
    assertThat(labels.place(TEXT, 10, List.of(worst, better))).isEqualTo(better);
  }

  @Test
  void roomIsTheGapToTheNearestStroke() {
    // Given: a line 4 px thick at y 20; a label on y 60, its middle 14/3 higher and 7 px to either
    // side. Expect: 60 - 14/3 - 20 - 2 - 7. Half of it beyond the paper: ten times what is missing.
    Labels labels = new Labels(200, 100).avoid(0, 20, 200, 20, 4);
    assertThat(labels.clearance(new Spot(100, 60, "middle"), 52))
        .isCloseTo(31 - 14.0 / 3, within(1e-9));
    assertThat(labels.clearance(new Spot(20, 60, "end"), 52)).isCloseTo(-320, within(1e-9));
    assertThat(labels.clearance(new Spot(160, 60, "start"), 52)).isCloseTo(-120, within(1e-9));
  }
}
