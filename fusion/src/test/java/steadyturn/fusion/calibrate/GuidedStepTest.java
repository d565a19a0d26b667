package steadyturn.fusion.calibrate;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.UnitStream;

/** The guides of a live calibration, fed with a recording that grows by 0.1 s from look to look. */
class GuidedStepTest {

  private static final double LOOK_S = 0.1;

  private static TableUnit unit() {
    return TableUnit.raw(0.001, 20260201);
  }

  private static List<String> heard(GuidedStep step, UnitStream whole) {
    List<String> heard = new ArrayList<>();
    double endS = whole.timeS(whole.size() - 1);
    for (double nowS = LOOK_S; nowS <= endS && !step.isDone(); nowS += LOOK_S) {
      UnitStream recent = whole.between(step.neededFromS(), nowS);
      if (recent.size() > 0) {
        step.look(recent).ifPresent(heard::add);
      }
    }
    return heard;
  }

  @Test
  void aRestIsTakenAsSoonAsItIsLongEnoughAndBegunAnewWhenMoved() {
    // Given: 3 s of rest, a push of 10 deg, 8 s of rest. Expect: told of the push (to a window of
    // 0.2 s), then taken: 5 s
    // that lie after the push and begin one window of 0.2 s after it ended, within a window more.
    RestGuide guide = RestGuide.tableRest();
    UnitStream lain = unit().lie(3).turn(Vector3.Z.times(0.17), 0.5).lie(8).stream();
    List<String> heard = heard(guide, lain);
    assertThat(heard).hasSize(2);
    assertThat(heard.get(0)).containsPattern("moved after (2.[89]|3.0) s").contains("Do it again");
    assertThat(heard.get(1)).isEqualTo("Rest of 5 s taken.");
    assertThat(guide.taken().get(0).onsetS()).isBetween(3.7, 3.95);
    assertThat(guide.taken().get(0).durationS()).isBetween(5.0, 5.2);
  }

  @Test
  void aLongRestLooksAtTheNewestSecondOnlyAndStillSeesAKnock() {
    RestGuide guide = RestGuide.longRest(90);
    UnitStream lain = unit().lie(40).turn(Vector3.X.times(0.1), 0.3).lie(95).stream();
    List<String> heard = heard(guide, lain);
    assertThat(heard).hasSize(2);
    assertThat(heard.get(0)).containsPattern("moved after (39.[89]|40.0) s");
    assertThat(guide.taken().get(0).onsetS()).isBetween(40.4, 40.8);
    assertThat(lain.timeS(0)).isLessThan(guide.neededFromS() - 100);
  }

  @Test
  void eachFaceIsTakenOnceAndTheMissingOnesAreNamed() {
    FaceGuide guide = new FaceGuide(TableUnit.G);
    TableUnit unit = unit();
    for (Pose pose : List.of(Pose.X_UP, Pose.X_DOWN, Pose.X_UP, Pose.Y_UP, Pose.Y_DOWN)) {
      unit.lieWithUp(pose.up(), 0, 2.4);
    }
    List<String> heard = heard(guide, unit.lieWithUp(Pose.Z_UP.up(), 0, 2.4).stream());
    assertThat(heard).hasSize(6);
    assertThat(heard.get(0)).startsWith("+x up taken. Missing: -x up, +y up");
    assertThat(heard.get(2)).startsWith("+x up was taken already. Missing: +y up");
    assertThat(heard.get(5)).isEqualTo("+z up taken. Missing: -z up.");
    assertThat(guide.isDone()).isFalse();
  }

  @Test
  void aFaceLeftTooEarlyOrOnAnEdgeIsToldAtOnce() {
    FaceGuide guide = new FaceGuide(TableUnit.G);
    UnitStream lain =
        unit().lieWithUp(Vector3.X, 0, 1.2).lieWithUp(Vector3.Y, Math.toRadians(40), 3).stream();
    List<String> heard = heard(guide, lain);
    assertThat(heard).hasSize(2);
    assertThat(heard.get(0)).startsWith("It was moved after 1.");
    assertThat(heard.get(1)).startsWith("It lies on no face");
    assertThat(guide.taken()).isEmpty();
  }

  @Test
  void aCrookedFaceIsNamedAndTakenAgain() {
    // Given: six faces, +y up 2 deg crooked, then +y up once more, square. Expect: that one is
    // asked for again, then all fit, and the marks give the errors of the unit.
    FaceGuide guide = new FaceGuide(TableUnit.G);
    TableUnit unit = unit();
    for (Pose pose : Pose.values()) {
      unit.lieWithUp(pose.up(), pose == Pose.Y_UP ? Math.toRadians(2) : 0, 2.4);
    }
    UnitStream lain = unit.lieWithUp(Vector3.Y, 0, 2.4).stream();
    List<String> heard = heard(guide, lain);
    assertThat(heard.get(5)).contains("Do it again: position +y up does not fit the others");
    assertThat(heard.get(6)).isEqualTo("+y up taken. All six fit one another.");
    SixPositions found =
        SixPositions.ofStills(
            guide.taken().stream().map(m -> lain.between(m.onsetS(), m.endS())).toList(),
            TableUnit.G);
    // Within 4 sigma as stated: one miss in 16000 for each of the three.
    for (int axis = 0; axis < 3; axis++) {
      double off = found.bias().get(axis) - unit.accelBias.get(axis);
      assertThat(Math.abs(off)).isLessThan(4 * found.biasSigmaMps2());
    }
  }

  @Test
  void turnsAreCountedAboutEachAxisAndOddOnesAreNot() {
    TurnGuide guide = new TurnGuide();
    TableUnit unit = unit().lie(2);
    unit.turn(Vector3.Z.times(Math.toRadians(60)), 1).lie(2);
    unit.turn(new Vector3(1, 1, 0), 1).lie(2);
    for (Vector3 axis : List.of(Vector3.Z, Vector3.X, Vector3.Y)) {
      unit.turn(axis.times(Math.PI / 2), 1).lie(2).turn(axis.times(-Math.PI), 2).lie(2);
    }
    UnitStream lain = unit.stream();
    List<String> heard = heard(guide, lain);
    assertThat(heard).hasSize(8);
    assertThat(heard.get(0)).startsWith("Does not count: a turn of 60 deg is not a multiple");
    assertThat(heard.get(1)).startsWith("Does not count: a turn of 81 deg was not about one axis");
    assertThat(heard.get(2)).startsWith("Turn of +90 deg about z taken. Missing: 2 turns about x");
    assertThat(heard.get(7)).isEqualTo("Turn of -180 deg about y taken. That is all.");
    KnownTurns found =
        KnownTurns.ofEach(
            guide.taken().stream().map(m -> lain.between(m.onsetS(), m.endS())).toList());
    // Within 3 sigma as stated, which counts the block's 0.1 deg; this block was exact.
    for (int row = 0; row < 3; row++) {
      for (int axis = 0; axis < 3; axis++) {
        double off = found.errors().row(row).get(axis) - unit.gyroErrors.row(row).get(axis);
        assertThat(Math.abs(off)).isLessThan(3 * found.errorsSigma(axis));
      }
    }
  }

  @Test
  void aGapInTheMiddleOfATurnIsToldAsSuch() {
    UnitStream whole = unit().lie(2).turn(Vector3.Z.times(Math.PI), 2).lie(2).stream();
    UnitStream first = whole.between(0, 2.8);
    UnitStream second = whole.between(3.2, 9);
    List<String> heard = heard(new TurnGuide(), Joined.of(first, second));
    assertThat(heard).hasSize(1);
    assertThat(heard.get(0)).contains("a rate is lost at 3.2");
  }

  /** Two stretches of a recording with a gap between. */
  private static final class Joined {

    static UnitStream of(UnitStream a, UnitStream b) {
      double[][] accel = new double[3][];
      double[][] gyro = new double[3][];
      for (int axis = 0; axis < 3; axis++) {
        accel[axis] = joined(a.accelColumnMps2(axis), b.accelColumnMps2(axis));
        gyro[axis] = joined(a.gyroColumnRadPerS(axis), b.gyroColumnRadPerS(axis));
      }
      return new UnitStream(a.facts(), joined(a.timeColumnS(), b.timeColumnS()), accel, gyro);
    }

    private static double[] joined(double[] a, double[] b) {
      double[] out = java.util.Arrays.copyOf(a, a.length + b.length);
      System.arraycopy(b, 0, out, a.length, b.length);
      return out;
    }
  }
}
