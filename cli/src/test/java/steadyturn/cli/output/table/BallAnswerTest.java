package steadyturn.cli.output.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.coach.teaching.TeachingReader;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.ingest.reason.Reason;

/** What is said after a ball, as it is read. */
class BallAnswerTest {

  private static SwingResult ball(int number, String club, double turnDeg) {
    return new SwingResult(
        number,
        club,
        SwingKind.HIT,
        List.of(),
        List.of(),
        List.of(
            new MeasureValue(
                Measure.PELVIS_TURN,
                "top",
                turnDeg,
                turnDeg - 2,
                turnDeg + 2,
                Grade.MEASURED,
                Reason.NONE),
            MeasureValue.withheld(Measure.WRIST_RELEASE, "", MeasureReason.NO_WRIST_BENDS_SO)),
        List.of());
  }

  @Test
  void setsABallBesideTheUsualAndTheGoal() throws Exception {
    BallAnswer answer = new BallAnswer("mika", TeachingReader.shipped());
    // given two balls with the 7-iron at -30 and -34, one with the driver at -50, and a third
    // 7-iron
    List<String> lines =
        answer.lines(
            ball(4, "7-iron", -41),
            List.of(ball(1, "7-iron", -30), ball(2, "driver", -50), ball(3, "7-iron", -34)));
    // expect their mean without the driver; the goal of the shipped teaching file (40 to 62 deg)
    assertEquals("", lines.get(0));
    assertEquals("Ball 4, 7-iron, hit", lines.get(1));
    assertEquals("  turn at top  -41 ±2 deg  usual -32  goal -62 to -40", lines.get(2));
    // a withheld value is told with its reason, and no line is wider than a terminal of 80 columns
    assertTrue(lines.get(3).startsWith("  release      -"), lines.get(3));
    assertTrue(lines.get(4).startsWith("  - release: "), lines.get(4));
    assertTrue(lines.stream().allMatch(line -> line.length() <= 78), lines.toString());
  }

  @Test
  void callsNothingUsualAfterOneBall() throws Exception {
    BallAnswer answer = new BallAnswer("mika", TeachingReader.shipped());
    List<String> lines = answer.lines(ball(2, "7-iron", -41), List.of(ball(1, "7-iron", -30)));
    assertEquals("  turn at top  -41 ±2 deg    goal -62 to -40", lines.get(2));
  }

  @Test
  void aBallWithoutItsPelvisUnitSaysSoInThePlaceOfEachValue() throws Exception {
    // given a ball whose pelvis unit is missing: one reason stands for the whole swing
    SwingResult without =
        new SwingResult(
            5,
            "7-iron",
            SwingKind.HIT,
            List.of(),
            List.of(),
            List.of(
                MeasureValue.withheld(Measure.PELVIS_TURN, "", MeasureReason.NEEDS_PELVIS),
                MeasureValue.withheld(Measure.PELVIS_SLIDE, "", MeasureReason.NEEDS_PELVIS)),
            List.of());
    BallAnswer answer = new BallAnswer("mika", TeachingReader.shipped());
    List<SwingResult> before = List.of(ball(1, "7-iron", -30), ball(3, "7-iron", -34));
    List<String> lines = answer.lines(without, before);
    // expect the turn and slide that are told of every ball, each as a dash, the usual beside it,
    // and the reason once; the same from what is kept of a ball for later
    assertTrue(lines.get(2).startsWith("  turn at top      -"), lines.get(2));
    assertTrue(lines.get(2).contains("usual -32"), lines.get(2));
    assertTrue(
        lines.stream().anyMatch(line -> line.startsWith("  slide at impact  -")), lines + "");
    assertEquals(1, lines.stream().filter(line -> line.startsWith("  - ")).count(), lines + "");
    assertEquals(lines, answer.lines(BallAnswer.kept(without), before));
  }
}
