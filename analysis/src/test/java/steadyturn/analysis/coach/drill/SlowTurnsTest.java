package steadyturn.analysis.coach.drill;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import steadyturn.analysis.coach.teaching.Drill;
import steadyturn.analysis.coach.teaching.TeachingReader;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

class SlowTurnsTest {

  private static final double RATE_HZ = 200;
  private static final double[] TURNS_DEG = {-48, -30, -44, -52, -20};

  @ParameterizedTest
  @EnumSource(Handedness.class)
  void rehearsalsFromRestToRestAreFoundWithTheirTurn(Handedness handed) {
    // Given: five slow turns of 2 s back and forth with rests of 2 s, a gyroscope bias of 0.5 deg/s
    // and noise of 0.1 deg/s, right- and left-handed. Expect: five turns, negative for both.
    // Within 2 deg: the bias is taken out at the rests; noise and what is left of it stay below.
    List<Rehearsal> found = SlowTurns.of(recording(handed, 0, TURNS_DEG));
    assertThat(found).hasSameSizeAs(boxed());
    for (int i = 0; i < TURNS_DEG.length; i++) {
      MeasureValue turn = found.get(i).measures().get(0);
      assertThat(turn.value()).isBetween(TURNS_DEG[i] - 2, TURNS_DEG[i] + 2);
      assertThat(turn.low()).isLessThan(TURNS_DEG[i]);
      assertThat(turn.high()).isGreaterThan(TURNS_DEG[i]);
    }
  }

  @Test
  void aPauseWithThePelvisTurnedIsNoNewStart() {
    // Given: the same turns, held for 1.5 s where they are furthest. Expect: the same turns.
    List<Rehearsal> found = SlowTurns.of(recording(Handedness.RIGHT, 1.5, TURNS_DEG));
    assertThat(found).hasSameSizeAs(boxed());
    assertThat(found.get(0).measures().get(0).value()).isBetween(-50.0, -46.0);
  }

  @Test
  void smallMovementsAndTurnsTowardsTheTargetAreNone() {
    // Given: shifts of 8 deg and a turn of 40 deg towards the target. Expect: no rehearsal.
    assertThat(SlowTurns.of(recording(Handedness.RIGHT, 0, -8, 40, -8))).isEmpty();
  }

  @Test
  void whoTurnsAwayAndStaysOrTurnsRoundIsNotRehearsing() {
    // Given: 48 deg away for 10 s, as someone who walks to the next ball; a turn of 120 deg and
    // back, as someone who looks round. Expect: no rehearsal.
    assertThat(SlowTurns.of(recording(Handedness.RIGHT, 10, -48))).isEmpty();
    assertThat(SlowTurns.of(recording(Handedness.RIGHT, 0, -120))).isEmpty();
  }

  @Test
  void rehearsalsInOneMarkedStretchAreScoredInTheBand() {
    // Given: turns of -48, -30, -44, -52, -20 deg in one stretch, goal -55 to -40 deg. Expect:
    // three in the goal, two of them in a row; no swing number.
    Recording recording = recording(Handedness.RIGHT, 0, TURNS_DEG);
    DrillScore score =
        DrillScore.of(
                TeachingReader.shipped(), recording.marks(), List.of(), SlowTurns.of(recording))
            .get(0);
    assertThat(score.reps()).hasSize(5).allMatch(rep -> rep.swing() == 0);
    assertThat(score.inBand()).isEqualTo(3);
    assertThat(score.longestRun()).isEqualTo(2);
    assertThat(score.unseen()).isZero();
  }

  @Test
  void aRehearsalOfASlideDrillCannotBeJudged() {
    // Given: the same movement marked as a drill that slide judges. Expect: all five unseen.
    Recording turns = recording(Handedness.RIGHT, 0, TURNS_DEG);
    var mark = new Mark(2, 60, MarkWord.DRILL_REP.word(), "", "bag-beside-hip");
    DrillScore score =
        DrillScore.of(TeachingReader.shipped(), List.of(mark), List.of(), SlowTurns.of(turns))
            .get(0);
    assertThat(score.reps()).isEmpty();
    assertThat(score.unseen()).isEqualTo(5);
  }

  @Test
  void aRepetitionAtTheEdgeOfTheBandIsNotSure() {
    // Given: goal -55 to -40 deg; -41 +- 2.0 crosses the edge, -48 +- 2.0 does not.
    Drill drill = TeachingReader.shipped().drill("club-across-hips");
    assertThat(DrillRep.of(drill, 0, 1, turn(-41)).sure()).isFalse();
    assertThat(DrillRep.of(drill, 0, 1, turn(-48)).sure()).isTrue();
  }

  private static MeasureValue turn(double deg) {
    return MeasureValue.of(Measure.PELVIS_TURN, "top", deg, 1, Grade.MEASURED, Reason.NONE);
  }

  private static List<Double> boxed() {
    return Arrays.stream(TURNS_DEG).boxed().toList();
  }

  /** A unit with x up the spine, at rest 4 s, then each turn: 1 s out, a pause, 1 s back, rest. */
  private static Recording recording(Handedness handed, double pauseS, double... turnsDeg) {
    double cycleS = 4 + pauseS;
    int n = (int) ((4 + turnsDeg.length * cycleS + 2) * RATE_HZ);
    double[] timeS = new double[n];
    double[][] accel = new double[3][n];
    double[][] gyro = new double[3][n];
    Random random = new Random(7);
    for (int i = 0; i < n; i++) {
      timeS[i] = i / RATE_HZ;
      double sinceS = timeS[i] - 4;
      int k = (int) Math.floor(sinceS / cycleS);
      double rate = k < 0 || k >= turnsDeg.length ? 0 : rate(sinceS - k * cycleS, pauseS);
      double size = rate == 0 ? 0 : handed.sign() * turnsDeg[k] * rate;
      for (int axis = 0; axis < 3; axis++) {
        double trueDegPerS = axis == 0 ? size : 0;
        gyro[axis][i] = Math.toRadians(trueDegPerS + 0.5 + 0.1 * random.nextGaussian());
        accel[axis][i] = (axis == 0 ? 9.81 : 0) + 0.02 * random.nextGaussian();
      }
    }
    var unit = new UnitStream(UnitFacts.plain(BodyPoint.PELVIS, RATE_HZ), timeS, accel, gyro);
    var mark = new Mark(2, timeS[n - 1] - 2, MarkWord.DRILL_REP.word(), "", "club-across-hips");
    return new Recording(
        "drill", Player.unmeasured("p01", handed), List.of(unit), new ArrayList<>(List.of(mark)));
  }

  /** Part of the turn a second: a raised cosine of 1 s out, minus the same back. */
  private static double rate(double s, double pauseS) {
    if (s < 1) {
      return 1 - Math.cos(2 * Math.PI * s);
    }
    double back = s - 1 - pauseS;
    return back >= 0 && back < 1 ? Math.cos(2 * Math.PI * back) - 1 : 0;
  }
}
