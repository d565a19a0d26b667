package steadyturn.cli.command.calibrate;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import steadyturn.cli.output.table.CalibrationReport;
import steadyturn.fusion.calibrate.FaceGuide;
import steadyturn.fusion.calibrate.GuidedStep;
import steadyturn.fusion.calibrate.KnownTurns;
import steadyturn.fusion.calibrate.NoiseFigures;
import steadyturn.fusion.calibrate.RestGuide;
import steadyturn.fusion.calibrate.SixPositions;
import steadyturn.fusion.calibrate.TableRest;
import steadyturn.fusion.calibrate.TableWork;
import steadyturn.fusion.calibrate.TurnGuide;
import steadyturn.fusion.calibrate.UnitCalibration;
import steadyturn.ingest.sample.UnitStream;

/** The steps of a calibration, in the order in which they must be done. */
enum CalibrationStep {
  REST,
  NOISE,
  TURNS,
  POSITIONS;

  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Who leads through it live. */
  GuidedStep guide(double gravityMps2, double noiseRestS) {
    return switch (this) {
      case REST -> RestGuide.tableRest();
      case NOISE -> RestGuide.longRest(noiseRestS);
      case TURNS -> new TurnGuide();
      case POSITIONS -> new FaceGuide(gravityMps2);
    };
  }

  /** What is known of a unit after this step, told in a line. */
  UnitCalibration take(
      TableWork work,
      UnitCalibration so,
      double gravityMps2,
      LocalDate today,
      CalibrationReport report) {
    return switch (this) {
      case REST -> {
        TableRest rest = work.rest();
        report.rest(rest);
        yield so.with(rest, today);
      }
      case NOISE -> noise(work.longRest(), so, report);
      case TURNS -> {
        KnownTurns turns = work.turns();
        report.turns(turns);
        yield so.with(turns, today);
      }
      case POSITIONS -> {
        SixPositions positions = work.positions(gravityMps2);
        report.positions(positions);
        yield so.with(positions, gravityMps2, today);
      }
    };
  }

  private static UnitCalibration noise(
      UnitStream rest, UnitCalibration so, CalibrationReport report) {
    UnitCalibration found = so;
    double stepS = (rest.timeS(rest.size() - 1) - rest.timeS(0)) / (rest.size() - 1);
    for (int axis = 0; axis < 3; axis++) {
      String name = List.of("x", "y", "z").get(axis);
      NoiseFigures gyro = NoiseFigures.of(withoutLosses(rest.gyroColumnRadPerS(axis)), stepS);
      report.noise(name, gyro);
      found =
          found
              .withFigure(
                  "gyro_" + name + "_random_walk_deg_per_sqrt_h",
                  60 * Math.toDegrees(gyro.whiteNoisePerRootS()))
              .withFigure(
                  "gyro_" + name + "_bias_instability_deg_per_h",
                  3600 * Math.toDegrees(gyro.biasInstability()));
    }
    return found;
  }

  /** A few lost values leave the figures as they are; they are passed over. */
  private static double[] withoutLosses(double[] column) {
    return Arrays.stream(column).filter(v -> !Double.isNaN(v)).toArray();
  }
}
