package steadyturn.cli.command.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.cli.CommandLineRun;
import steadyturn.fusion.calibrate.CalibrationStore;
import steadyturn.fusion.calibrate.UnitCalibration;
import steadyturn.ingest.lab.BinaryFrameEncoder;
import steadyturn.ingest.lab.UnitFaults;
import steadyturn.ingest.lab.VirtualPort;
import steadyturn.ingest.lab.VirtualUnit;

/** The whole way: a virtual unit with known errors at a virtual port, played faster than real. */
class LiveCalibrationTest {

  private static final double SPEED = 20;

  /** Slower, so that a busy machine opens the port before it is pulled out. */
  private static final double PLUG_SPEED = 6;

  private static final List<String> FACES = List.of("+x", "-x", "+y", "-y", "+z", "-z");

  @TempDir private Path folder;

  @BeforeEach
  void needsSocat() {
    boolean isThere = Files.exists(Path.of("/usr/bin/socat"));
    boolean mustBeThere = "1".equals(System.getenv("STEADYTURN_CHECK"));
    assumeTrue(isThere || mustBeThere, "the program socat is not installed");
  }

  private CommandLineRun calibrate(TableStream handled, UnitFaults faults, String... more)
      throws Exception {
    double speed = faults.unplugged().isEmpty() ? SPEED : PLUG_SPEED;
    Path path = folder.resolve("port");
    String[] start = {"calibrate", folder.toString(), "--live", "pelvis=" + path, "--go-on"};
    String[] all = java.util.Arrays.copyOf(start, start.length + more.length);
    System.arraycopy(more, 0, all, start.length, more.length);
    try (VirtualPort port = VirtualPort.at(path)) {
      VirtualUnit unit =
          new VirtualUnit(
              handled.stream(), new BinaryFrameEncoder(16, 2000), port, faults, 0, speed, 1);
      Thread playing = new Thread(unit, "virtual unit");
      playing.start();
      CommandLineRun run = CommandLineRun.of(all);
      unit.stop();
      playing.join();
      return run;
    }
  }

  @Test
  void theErrorsOfALiveUnitAreFoundWithinTheirSigma() throws Exception {
    // Given: a unit with known bias, scale and cross-talk: a rest, two turns about each axis, six
    // faces, one of them twice, another 2 deg crooked and then once more. Expect: those errors.
    // Within 4 sigma as the calibration states it.
    TableStream handled = new TableStream(20260203).lie(25);
    for (int axis = 0; axis < 3; axis++) {
      handled.turn(axis, 90).lie(2.5).turn(axis, -90).lie(2.5);
    }
    handled.lie(2);
    for (String face : FACES) {
      handled.pickUp().lieOn(face, face.equals("+y") ? 2 : 0, 3.5);
      if (face.equals("-x")) {
        handled.pickUp().lieOn("+x", 0, 3.5);
      }
    }
    handled.pickUp().lieOn("+y", 0, 3.5);
    CommandLineRun run = calibrate(handled.lie(20), UnitFaults.NONE);

    assertThat(run.exitCode()).as(run.err()).isZero();
    assertThat(run.err())
        .contains("Step 1 of 3: Lay the unit on a firm table")
        .contains("Rest of 5 s taken.")
        .contains("Turn of +90 deg about x taken. Missing: one turn about x")
        .contains("was taken already. Missing:")
        .contains("Do it again: position +y up does not fit the others")
        .contains("All six fit one another.");
    assertThat(run.out())
        .contains("serial number " + TableStream.SERIAL)
        .contains("effect ")
        .contains("kept in")
        .contains("recorded in " + folder.resolve("sourcedata/calibration"));
    UnitCalibration kept = CalibrationStore.of(folder).latest(TableStream.SERIAL).orElseThrow();
    assertThat(kept.complete()).isTrue();
    double gyroBiasSigma = Math.toRadians(figure(kept, "gyro_bias_sigma_deg_per_s"));
    double accelBiasSigma = figure(kept, "accel_bias_sigma_m_per_s2");
    double accelSigma = figure(kept, "accel_matrix_sigma");
    for (int row = 0; row < 3; row++) {
      near(kept.gyro().bias().get(row), TableStream.GYRO_BIAS[row], gyroBiasSigma);
      near(kept.accel().bias().get(row), TableStream.ACCEL_BIAS[row], accelBiasSigma);
      for (int axis = 0; axis < 3; axis++) {
        double gyroSigma = figure(kept, "gyro_matrix_sigma_" + "xyz".charAt(axis));
        double gyro = kept.gyro().matrix().inverse().row(row).get(axis);
        near(gyro, TableStream.GYRO_ERRORS[row][axis], gyroSigma);
        double accel = kept.accel().matrix().inverse().row(row).get(axis);
        near(accel, TableStream.ACCEL_ERRORS[row][axis], accelSigma);
      }
    }
  }

  private static double figure(UnitCalibration kept, String name) {
    assertThat(kept.figures()).containsKey(name);
    return kept.figures().getOrDefault(name, Double.NaN);
  }

  private static void near(double found, double truth, double sigma) {
    assertThat(Math.abs(found - truth)).as("%s for %s", found, truth).isLessThan(4 * sigma);
  }

  @Test
  void aMissingFaceEndsInOneLineThatNamesItAndNothingIsKept() throws Exception {
    // Given: five faces, after a rest so long that a program that starts late misses none of them.
    TableStream handled = new TableStream(20260204).lie(20);
    for (String face : FACES.subList(0, 5)) {
      handled.pickUp().lieOn(face, 0, 3);
    }
    CommandLineRun run =
        calibrate(handled.lie(60), UnitFaults.NONE, "--steps", "positions", "--patience", "2");
    assertThat(run.exitCode()).isEqualTo(1);
    assertThat(run.err().lines().filter(line -> line.startsWith("steadyturn:")).toList())
        .singleElement()
        .asString()
        .contains("gave up after 2 s")
        .contains("missing: -z up.");
    assertThat(CalibrationStore.of(folder).latest(TableStream.SERIAL)).isEmpty();
    assertThat(folder.resolve("sourcedata/calibration/participants.tsv")).exists();
  }

  @Test
  void aUnitPulledOutIsToldAndTheStepGoesOnWhenItIsThereAgain() throws Exception {
    // Given: a unit pulled out 4.5 s after it was switched on, in the middle of its rest, and
    // plugged
    // in again 6 s later (1 s of the machine's time).
    UnitFaults unplugged =
        new UnitFaults(0, 0, 0, 0, 0, List.of(new UnitFaults.Stretch(4.5, 10.5)));
    CommandLineRun run = calibrate(new TableStream(20260206).lie(60), unplugged, "--steps", "rest");
    assertThat(run.exitCode()).as(run.err()).isZero();
    assertThat(run.err())
        .containsPattern("port (is gone|does not exist); plug it in again")
        .contains("it is there again")
        .contains("Rest of 5 s taken.");
  }

  @Test
  void aPortWithoutAUnitIsToldInOneLine() {
    CommandLineRun run =
        CommandLineRun.of(
            "calibrate", folder.toString(), "--live", folder.resolve("none").toString(), "--go-on");
    assertThat(run.exitCode()).isEqualTo(1);
    assertThat(run.err().lines().toList())
        .singleElement()
        .asString()
        .contains("none does not exist; plug the unit in");
  }

  @Test
  void withoutATerminalItMustBeToldToGoOnByItself() {
    CommandLineRun run =
        CommandLineRun.of("calibrate", folder.toString(), "--live", folder.resolve("p").toString());
    assertThat(run.exitCode()).isEqualTo(2);
    assertThat(run.err()).contains("--go-on goes from step to step");
  }
}
