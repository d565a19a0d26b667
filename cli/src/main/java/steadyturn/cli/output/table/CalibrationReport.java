package steadyturn.cli.output.table;

import java.io.PrintWriter;
import java.util.Locale;
import steadyturn.fusion.calibrate.AxisMatrix;
import steadyturn.fusion.calibrate.CalibrationEffect;
import steadyturn.fusion.calibrate.KnownTurns;
import steadyturn.fusion.calibrate.NoiseFigures;
import steadyturn.fusion.calibrate.SixPositions;
import steadyturn.fusion.calibrate.TableRest;
import steadyturn.fusion.rotation.Vector3;

/** A calibration as lines for people, one a step. */
public final class CalibrationReport {

  private static final double DEG = 180 / Math.PI;

  private final PrintWriter out;

  public CalibrationReport(PrintWriter out) {
    this.out = out;
  }

  /** Which unit, and the gravity it is held against. */
  public void unit(String point, String serialNumber, double gravityMps2, boolean byLatitude) {
    line(
        "unit %s, serial number %s; gravity %.5f m/s^2 (%s)",
        point,
        serialNumber,
        gravityMps2,
        byLatitude ? "by latitude, WGS-84" : "the standard value; --latitude gives yours");
  }

  /** A table rest. */
  public void rest(TableRest rest) {
    line(
        "  table rest     %.1f s: gyro bias %s deg/s (sd %.3f), noise %.3f deg/s and %.3f m/s^2",
        rest.lengthS(),
        triple(rest.gyroBiasRadPerS().times(DEG), "%+.3f"),
        DEG * rest.gyroBiasSigmaRadPerS(),
        DEG * rest.gyroNoiseRadPerS(),
        rest.accelNoiseMps2());
  }

  /** Noise of one gyroscope axis. */
  public void noise(String axis, NoiseFigures gyro) {
    line(
        "  noise %s        gyro random walk %.3f deg/sqrt(h), bias instability %.1f deg/h or less"
            + " (flat at %.1f s)",
        axis,
        60 * DEG * gyro.whiteNoisePerRootS(),
        3600 * DEG * gyro.biasInstability(),
        gyro.floorTauS());
  }

  /** Known turns. */
  public void turns(KnownTurns turns) {
    line(
        "  known turns    %d turns: gyro %s (sd %.2f %%), left over %.2f deg a turn",
        turns.turns().size(),
        errors(turns.errors()),
        100 * Math.max(turns.errorsSigma(0), Math.max(turns.errorsSigma(1), turns.errorsSigma(2))),
        DEG * turns.residualRad());
  }

  /** Six positions. */
  public void positions(SixPositions positions) {
    line(
        "  six positions  %d rests: accel bias %s m/s^2 (sd %.4f), %s (sd %.3f %%), left over %.4f"
            + " m/s^2",
        positions.poses().size(),
        triple(positions.bias(), "%+.3f"),
        positions.biasSigmaMps2(),
        errors(positions.errors()),
        100 * positions.errorsSigma(),
        positions.residualMps2());
  }

  /** What it changes on the same recording. */
  public void effect(CalibrationEffect effect) {
    line(
        "  effect         at %d rests: gravity off by %.4f m/s^2 before, %.4f after; rate %.3f"
            + " deg/s before, %.3f after",
        effect.stretches(),
        effect.gravityErrorBeforeMps2(),
        effect.gravityErrorAfterMps2(),
        DEG * effect.rateBeforeRadPerS(),
        DEG * effect.rateAfterRadPerS());
  }

  private static String errors(AxisMatrix errors) {
    return String.format(
        Locale.ROOT,
        "scale off by up to %.2f %%, axes by %.2f deg",
        100 * errors.largestScaleError(),
        DEG * errors.largestCrossTalk());
  }

  private static String triple(Vector3 v, String format) {
    String three = String.join(" ", format, format, format);
    return String.format(Locale.ROOT, three, v.x(), v.y(), v.z());
  }

  private void line(String format, Object... values) {
    out.println(String.format(Locale.ROOT, format, values));
  }
}
