package steadyturn.cli.command.calibrate;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.cli.CommandLineRun;
import steadyturn.fusion.calibrate.CalibrationStore;
import steadyturn.fusion.calibrate.UnitCalibration;

class CalibrateCommandTest {

  private static final double G = 9.80665;
  private static final double[] ACCEL_BIAS = {0.2, -0.1, 0.15};
  private static final double[] GYRO_BIAS = {0.017, -0.01, 0.008};

  @TempDir private Path folder;

  private CommandLineRun calibrate(Path table, String... more) {
    String[] start = {
      "calibrate",
      table.toString(),
      "--map",
      HandledUnit.MAP,
      "--serial",
      "AB-12",
      "--into",
      folder.toString()
    };
    String[] all = java.util.Arrays.copyOf(start, start.length + more.length);
    System.arraycopy(more, 0, all, start.length, more.length);
    return CommandLineRun.of(all);
  }

  private Path sixFaces(boolean withLast) throws IOException {
    HandledUnit unit = new HandledUnit(ACCEL_BIAS, GYRO_BIAS);
    for (int axis = 0; axis < 3; axis++) {
      for (int sign : new int[] {1, -1}) {
        if (axis == 2 && sign == -1 && !withLast) {
          continue;
        }
        double[] up = new double[3];
        up[axis] = sign * G;
        unit.lie(2.5, up[0], up[1], up[2]).pickUp();
      }
    }
    return unit.write(folder.resolve("faces.csv"));
  }

  @Test
  void sixFacesAndARestAreKeptAndTheirEffectIsShown() throws IOException {
    CommandLineRun run = calibrate(sixFaces(true), "--steps", "rest,positions");
    assertThat(run.exitCode()).as(run.err()).isZero();
    assertThat(run.out())
        .contains("serial number AB-12")
        .contains("table rest")
        .contains("accel bias +0.2")
        .contains("effect         at 6 rests")
        .contains("kept in");
    UnitCalibration kept = CalibrationStore.of(folder).latest("AB-12").orElseThrow();
    assertThat(kept.parts().keySet())
        .containsExactly(UnitCalibration.SIX_POSITION, UnitCalibration.TABLE_REST);
    // Within 0.01 m/s^2 and 0.001 rad/s: means of 200 samples with noise 0.01 and 0.001.
    assertThat(kept.accel().bias().x()).isBetween(0.19, 0.21);
    assertThat(kept.gyro().bias().x()).isBetween(0.016, 0.018);
  }

  @Test
  void aMissingFaceIsNamedAndNothingIsKept() throws IOException {
    CommandLineRun run = calibrate(sixFaces(false), "--steps", "positions");
    assertThat(run.exitCode()).isEqualTo(1);
    assertThat(run.err()).contains("position missing: -z up");
    assertThat(CalibrationStore.of(folder).latest("AB-12")).isEmpty();
  }

  @Test
  void aLaterStepGoesOnFromTheOneBefore() throws IOException {
    assertThat(calibrate(sixFaces(true), "--steps", "positions").exitCode()).isZero();
    Path rest =
        new HandledUnit(ACCEL_BIAS, GYRO_BIAS).lie(5, 0, 0, G).write(folder.resolve("rest.csv"));
    assertThat(calibrate(rest, "--latitude", "50").exitCode()).isZero();
    UnitCalibration kept = CalibrationStore.of(folder).latest("AB-12").orElseThrow();
    assertThat(kept.parts()).containsKeys(UnitCalibration.SIX_POSITION, UnitCalibration.TABLE_REST);
    assertThat(kept.accel().bias().x()).isBetween(0.19, 0.21);
  }

  @Test
  void turnsAgainstABlockGiveTheGyroscope() throws IOException {
    HandledUnit unit = new HandledUnit(ACCEL_BIAS, GYRO_BIAS).lie(4, 0, 0, G);
    double[][] axes = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
    for (double[] axis : axes) {
      double rate = 1.01 * Math.PI; // half a turn in 1 s, shown 1 % too fast
      double[] shown = {rate * axis[0], rate * axis[1], rate * axis[2]};
      unit.add(1, new double[] {0, 0, G}, shown, false).lie(1.5, 0, 0, G);
    }
    CommandLineRun run =
        calibrate(unit.write(folder.resolve("turns.csv")), "--steps", "rest,turns");
    assertThat(run.exitCode()).as(run.err()).isZero();
    assertThat(run.out()).contains("3 turns: gyro scale off by up to 1.");
  }

  @Test
  void aTableNeedsAnArchiveToBeKeptIn() throws IOException {
    CommandLineRun run =
        CommandLineRun.of("calibrate", sixFaces(true).toString(), "--map", HandledUnit.MAP);
    assertThat(run.exitCode()).isEqualTo(2);
    assertThat(run.err()).contains("--into");
  }

  @Test
  void aLessonOfRawUnitsIsCalibratedByItsMarkedTableRest() throws IOException {
    // Given: a simulated lesson of raw units, whose events name the table rest. Expect: a bias for
    // the pelvis unit is found and kept, and the lesson can still be analysed.
    Path archive = folder.resolve("lesson");
    String[] simulate = {
      "simulate", "--out", archive.toString(), "--swings", "1", "--rate", "200", "--unit", "raw"
    };
    assertThat(CommandLineRun.of(simulate).exitCode()).isZero();
    CommandLineRun run =
        CommandLineRun.of("calibrate", archive.toString(), "--point", "pelvis", "--serial", "S9");
    assertThat(run.exitCode()).as(run.err()).isZero();
    assertThat(run.out()).contains("table rest").contains("kept in");
    assertThat(CalibrationStore.of(archive).latest("S9")).isPresent();
    assertThat(CommandLineRun.of("analyze", archive.toString()).exitCode()).isZero();
  }
}
