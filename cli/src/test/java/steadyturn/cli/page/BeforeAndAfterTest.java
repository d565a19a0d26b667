package steadyturn.cli.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import steadyturn.analysis.coach.drill.DrillScore;
import steadyturn.analysis.coach.teaching.Drill;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.coach.teaching.TeachingReader;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.cli.page.paper.Ink;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Mark;

/**
 * Three swings before a drill, two repetitions in it, three swings after it. The chart is 408 px
 * wide from 58 on (136 px a column) and 194 px high from 10 on.
 */
class BeforeAndAfterTest {

  /** The drill of the shipped rules that turn at the top judges. */
  static final Drill DRILL =
      TeachingReader.shipped().drills().stream()
          .filter(d -> d.judgedBy().measure() == Measure.PELVIS_TURN)
          .findFirst()
          .orElseThrow();

  private static final double ROOM = 4;

  private static MeasureValue turn(double deg) {
    return DrawnLesson.value(DRILL.judgedBy().measure(), DRILL.judgedBy().at(), deg, 2);
  }

  private static double low() {
    return DRILL.low() - ROOM;
  }

  /** Swings 1 to 3 below the goal, 4 and 5 repetitions in it, 6 to 8 above. */
  static List<SwingResult> swings() {
    List<SwingResult> swings = new ArrayList<>();
    for (int k = 1; k <= 8; k++) {
      double deg =
          k <= 3 ? low() - k : k <= 5 ? (DRILL.low() + DRILL.high()) / 2 : DRILL.high() + k;
      SwingResult swing = DrawnLesson.swing(k, List.of(turn(deg)));
      swings.add(k == 4 || k == 5 ? repetition(swing) : swing);
    }
    return swings;
  }

  private static SwingResult repetition(SwingResult s) {
    return new SwingResult(
        s.number(), s.club(), SwingKind.DRILL, s.flags(), s.events(), s.measures(), s.curves());
  }

  static DrillScore score(List<SwingResult> swings) {
    Teaching teaching = TeachingReader.shipped();
    List<Mark> marks =
        List.of(
            new Mark(40.5, 5, MarkWord.DRILL_REP.word(), "", DRILL.name()),
            new Mark(50.5, 5, MarkWord.DRILL_REP.word(), "", DRILL.name()));
    List<DrillScore> scores = DrillScore.of(teaching, marks, swings, List.of());
    assertThat(scores).hasSize(1);
    return scores.get(0);
  }

  private static Picture drawn() {
    List<SwingResult> all = swings();
    DrawnLesson lesson = new DrawnLesson(Handedness.RIGHT);
    all.stream().filter(s -> s.number() <= 3 || s.number() >= 6).forEach(lesson::with);
    return Picture.of(BeforeAndAfter.draw(lesson.pen(), score(all)).orElseThrow());
  }

  private static double y(double deg) {
    double lowest = low() - 3 - 2;
    double highest = DRILL.high() + 8 + 2;
    double room = 0.06 * (highest - lowest);
    return 10 + (highest + room - deg) / (highest - lowest + 2 * room) * 194;
  }

  private static void expect(Element dot, double x, double deg) {
    assertThat(Picture.dot(dot)).containsExactly(new double[] {x, y(deg)}, within(Picture.PX));
  }

  @Test
  void beforeDrillAndAfterStandInTheirColumns() {
    // Expect: swing i of n in a column at (i + 1) / (n + 1) of its 136 px.
    Picture picture = drawn();
    List<Element> before = picture.all("circle", "fill", Ink.BACK);
    List<Element> reps = picture.all("circle", "fill", Ink.POINT);
    List<Element> after = picture.all("circle", "fill", Ink.DOWN);
    assertThat(before).hasSize(3);
    assertThat(reps).hasSize(2);
    assertThat(after).hasSize(3);
    for (int i = 0; i < 3; i++) {
      expect(before.get(i), 58 + 136 * (i + 1) / 4.0, low() - 1 - i);
      expect(after.get(i), 58 + 272 + 136 * (i + 1) / 4.0, DRILL.high() + 6 + i);
    }
    for (int i = 0; i < 2; i++) {
      expect(reps.get(i), 58 + 136 + 136 * (i + 1) / 3.0, (DRILL.low() + DRILL.high()) / 2);
    }
  }

  @Test
  void everyDotHasItsRange() {
    List<Element> ranges = drawn().all("line", "stroke", Ink.QUIET);
    assertThat(ranges).hasSize(8);
    assertThat(Picture.line(ranges.get(0)))
        .containsExactly(new double[] {92, y(low() - 3), 92, y(low() + 1)}, within(Picture.PX));
  }

  @Test
  void theGoalIsABandOverAllColumns() {
    assertThat(Picture.box(drawn().the("rect", "stroke", Ink.GOAL)))
        .containsExactly(
            new double[] {58, y(DRILL.high()), 408, y(DRILL.low()) - y(DRILL.high())},
            within(2 * Picture.PX));
  }

  @Test
  void theColumnsAreNamedInTheirMiddle() {
    Picture picture = drawn();
    String[] names = {"before", "drill", "after"};
    for (int i = 0; i < 3; i++) {
      assertThat(Picture.place(picture.words(names[i])))
          .containsExactly(new double[] {126 + 136 * i, 226}, within(Picture.PX));
    }
    assertThat(picture.the("title").getTextContent()).startsWith("Before and after: ");
    assertThat(picture.words()).contains("deg");
    assertThat(picture.the("desc").getTextContent()).contains(": before −", ", after −");
  }

  @Test
  void withoutSwingsOnBothSidesThereIsNoPicture() {
    List<SwingResult> all = swings().subList(0, 5);
    DrawnLesson lesson = new DrawnLesson(Handedness.RIGHT);
    all.forEach(lesson::with);
    assertThat(BeforeAndAfter.draw(lesson.pen(), score(all))).isEmpty();
  }

  @Test
  void aWithheldSwingHasNoDot() {
    List<SwingResult> all = swings();
    DrawnLesson lesson = new DrawnLesson(Handedness.RIGHT);
    all.stream().filter(s -> s.number() <= 3).forEach(lesson::with);
    lesson.with(
        DrawnLesson.swing(
            9,
            List.of(
                MeasureValue.withheld(
                    DRILL.judgedBy().measure(),
                    DRILL.judgedBy().at(),
                    Reason.of(MeasureReason.NEEDS_PELVIS)))));
    Picture picture = Picture.of(BeforeAndAfter.draw(lesson.pen(), score(all)).orElseThrow());
    assertThat(picture.all("circle", "fill", Ink.DOWN)).isEmpty();
  }
}
