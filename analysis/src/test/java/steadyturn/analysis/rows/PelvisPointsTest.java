package steadyturn.analysis.rows;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.analysis.lesson.AimReason;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.lesson.Notice;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Curve;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.ingest.marker.MarkerTracks;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;

/**
 * Given in every test: pelvis 250 mm wide and 200 mm deep, so hip centres 0.33 * 250 + 7.3 = 89.8
 * mm off the middle (Harrington et al. 2007), held still in one pose for 0.2 s. Within 1e-6 m:
 * straight lines between equal values, and sums of few numbers.
 */
final class PelvisPointsTest {

  private static final double HIP_M = 0.0898;

  private static MarkerTracks points(Handedness handed, double openDeg, double... pose) {
    Player player =
        new Player(
            "mika",
            handed,
            OptionalDouble.of(250),
            OptionalDouble.of(200),
            OptionalDouble.empty(),
            OptionalDouble.empty());
    List<Double> timeS = IntStream.rangeClosed(0, 13).mapToObj(i -> 5 + 0.015 * i).toList();
    List<Measure> measures = RowTable.curves().subList(0, pose.length);
    List<Curve> curves =
        measures.stream()
            .map(
                m ->
                    new Curve(
                        m.id(),
                        m.unit(),
                        timeS,
                        timeS.stream().map(t -> pose[measures.indexOf(m)]).toList(),
                        timeS))
            .toList();
    SwingResult swing =
        new SwingResult(1, "", SwingKind.HIT, List.of(), List.of(), List.of(), curves);
    Notice aim = new Notice("aim", Reason.of(AimReason.SEEN, openDeg, openDeg - 1, openDeg + 1));
    List<Notice> notices = openDeg == 0 ? List.of() : List.of(aim);
    return PelvisPoints.of(
        new LessonResult("r", player, "aim-step", List.of(), List.of(swing), notices), swing);
  }

  private static double[] at(MarkerTracks points, String name) {
    double[][] of = points.of(name);
    return new double[] {of[0][3], of[1][3], of[2][3]};
  }

  private static void assertAt(MarkerTracks points, String name, double... placeM) {
    double[] is = at(points, name);
    for (int axis = 0; axis < 3; axis++) {
      assertThat(is[axis]).as(name + " " + axis).isCloseTo(placeM[axis], within(1e-6));
    }
  }

  @ParameterizedTest
  @CsvSource({"RIGHT,hip_left,hip_right,-1", "LEFT,hip_right,hip_left,1"})
  void atAddressTheLeadHipIsTowardsTheTargetAndTheFrontTowardsTheBall(
      Handedness handed, String lead, String trail, int ball) {
    // Expect: x to the target, y to the left of it, so that a right-handed player faces -y.
    MarkerTracks points = points(handed, 0, 0, 0, 0, 0, 0, 0);
    assertAt(points, "mid_hip", 0, 0, 0);
    assertAt(points, lead, HIP_M, 0, 0);
    assertAt(points, trail, -HIP_M, 0, 0);
    // 0.24 * 200 + 9.9 mm in front of the hips, 0.30 * 250 + 10.9 mm above them
    String front = lead.replace("hip", "front");
    assertAt(points, front, 0.125, ball * 0.0579, 0.0859);
  }

  @ParameterizedTest
  @CsvSource({"RIGHT,hip_left,-1", "LEFT,hip_right,1"})
  void everySignMovesThePointsAsThePageOfSignsSays(Handedness handed, String lead, int ball) {
    // Given: docs/frames-and-signs.md. Expect: slide to the target, thrust to the ball, lift up;
    // turned 90 deg to the target the front faces it and the lead hip is away from the ball;
    // lead hip up by 30 deg: 0.5 of it up; tilted forward by 90 deg the front's height is forward.
    MarkerTracks moved = points(handed, 0, 0, 30, 20, 10, 0, 0);
    assertAt(moved, "mid_hip", 0.03, ball * 0.02, 0.01);
    MarkerTracks turned = points(handed, 0, 90, 0, 0, 0, 0, 0);
    assertAt(turned, lead, 0, -ball * HIP_M, 0);
    assertThat(at(turned, lead.replace("hip", "front"))[0]).isCloseTo(0.0579, within(1e-6));
    assertThat(at(points(handed, 0, 0, 0, 0, 0, 0, 30), lead)[2])
        .isCloseTo(HIP_M / 2, within(1e-6));
    double[] front = at(points(handed, 0, 0, 0, 0, 0, 90, 0), lead.replace("hip", "front"));
    assertThat(front[1]).isCloseTo(ball * 0.0859, within(1e-6));
    assertThat(front[2]).isCloseTo(-0.0579, within(1e-6));
  }

  @ParameterizedTest
  @CsvSource({"RIGHT,hip_left,-1", "LEFT,hip_right,1"})
  void hipsThatStoodOpenAreTurnedBeforeTheSwingBegins(Handedness handed, String lead, int ball) {
    // Given: an aim step that saw the hips 10 deg open. Expect: as a turn of 10 deg.
    MarkerTracks open = points(handed, 10, 0, 0, 0, 0, 0, 0);
    double rad = Math.toRadians(10);
    assertAt(open, lead, HIP_M * Math.cos(rad), -ball * HIP_M * Math.sin(rad), 0);
  }

  @Test
  void theStepsAreEvenAndAPoseThatIsWithheldGivesNoPoint() {
    // Given: curves in steps of 15 ms; one without places. Expect: steps of 10 ms; no instant.
    double[] timeS = points(Handedness.RIGHT, 0, 0, 0, 0, 0, 0, 0).timeS();
    assertThat(timeS).hasSize(20);
    assertThat(timeS[19] - timeS[18]).isCloseTo(0.01, within(1e-9));
    assertThat(points(Handedness.RIGHT, 0, 0, 0).timeS()).isEmpty();
  }
}
