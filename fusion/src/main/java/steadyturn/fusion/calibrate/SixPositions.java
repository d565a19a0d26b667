package steadyturn.fusion.calibrate;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import steadyturn.fusion.rest.RestGate;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.StandardGravity;
import steadyturn.ingest.sample.UnitStream;

/**
 * Errors of an accelerometer from a recording of the unit lying on each of its six faces, in any
 * order, on a level table. Model: shown = E up g + bias, twelve numbers by least squares from at
 * least 18 readings; the six readings left over tell a face that lay crooked or was moved.
 *
 * @param bias what is shown without force, m/s^2
 * @param errors E: 1 for a perfect unit
 * @param residualMps2 RMS of what the model leaves over, m/s^2
 * @param poses positions used, in the order they were recorded
 */
public record SixPositions(Vector3 bias, AxisMatrix errors, double residualMps2, List<Pose> poses) {

  private static final double SHORTEST_S = 1;

  /** 0.04 m/s^2, a face 0.25 deg off: our choice, the size of a crumb under the unit. */
  private static final double LARGEST_RESIDUAL_MPS2 = 0.04;

  /** 0.001 m/s^2, 0.1 mg: no accelerometer repeats itself better (our choice). */
  private static final double LEAST_SPREAD_MPS2 = 0.001;

  public SixPositions {
    poses = List.copyOf(poses);
  }

  private record Reading(Pose pose, Vector3 shownMps2) {}

  /** Finds the six positions in a recording and the errors from them. */
  public static SixPositions of(UnitStream stream, double gravityMps2) {
    return ofStills(StillStretches.of(stream, SHORTEST_S), gravityMps2);
  }

  /**
   * The errors from stretches during which the unit lay still; those on no face are passed over.
   */
  public static SixPositions ofStills(List<UnitStream> stills, double gravityMps2) {
    List<Reading> readings = readings(stills);
    requireAll(readings);
    SixPositions fit = fit(readings, gravityMps2);
    if (fit.residualMps2 > LARGEST_RESIDUAL_MPS2) {
      throw moved(readings, fit, gravityMps2);
    }
    return fit;
  }

  private static List<Reading> readings(List<UnitStream> stills) {
    List<Reading> readings = new ArrayList<>();
    for (UnitStream still : stills) {
      Vector3 shown = RestGate.meanAccelMps2(still);
      Pose.of(shown).ifPresent(pose -> readings.add(new Reading(pose, shown)));
    }
    return readings;
  }

  /** The one position that does not fit the others, where there is one. */
  static Optional<Pose> misfit(List<UnitStream> stills, double gravityMps2) {
    List<Reading> readings = readings(stills);
    Misfit found = misfit(readings, fit(readings, gravityMps2), gravityMps2);
    return found.index < 0 ? Optional.empty() : Optional.of(readings.get(found.index).pose);
  }

  /**
   * One sigma of each part of the bias, m/s^2: the spread that the model leaves over, over the
   * readings.
   */
  public double biasSigmaMps2() {
    return spreadMps2() / Math.sqrt(poses.size());
  }

  /** One sigma of each entry of {@link #errors}: about each axis there are two readings or more. */
  public double errorsSigma() {
    return spreadMps2() / (StandardGravity.MPS2 * Math.sqrt(poses.size() / 3.0));
  }

  private double spreadMps2() {
    return Math.max(residualMps2, LEAST_SPREAD_MPS2);
  }

  private static void requireAll(List<Reading> readings) {
    Set<Pose> missing = EnumSet.allOf(Pose.class);
    readings.forEach(r -> missing.remove(r.pose));
    if (!missing.isEmpty()) {
      throw new CalibrationException(
          "position missing: "
              + missing.stream().map(Pose::words).collect(Collectors.joining(", "))
              + ". Lay the unit on every face for 2 s or more without touching it");
    }
  }

  private static CalibrationException moved(
      List<Reading> readings, SixPositions all, double gravityMps2) {
    Misfit found = misfit(readings, all, gravityMps2);
    if (found.index < 0) {
      return CalibrationException.of(
          "the positions do not fit each other (%.2f m/s^2 left over); use a level table and square"
              + " faces, and let go of the unit",
          all.residualMps2);
    }
    return CalibrationException.of(
        "position %s does not fit the others: it lay crooked or was moved (%.2f m/s^2 left over"
            + " with it, %.3f without); lay the unit on that face again",
        readings.get(found.index).pose.words(), all.residualMps2, found.withoutMps2);
  }

  /** Which reading does not fit, or -1; and what is left over without it. */
  private record Misfit(int index, double withoutMps2) {}

  /**
   * Finds the position that does not fit the others, if leaving one out helps. Leaving out a
   * position or its opposite helps equally; of the two, the crooked one leaves the larger
   * cross-talk when it stays.
   */
  private static Misfit misfit(List<Reading> readings, SixPositions all, double gravityMps2) {
    List<SixPositions> without = new ArrayList<>();
    for (int k = 0; k < readings.size(); k++) {
      List<Reading> rest = new ArrayList<>(readings);
      rest.remove(k);
      without.add(fit(rest, gravityMps2));
    }
    double least = without.stream().mapToDouble(SixPositions::residualMps2).min().orElseThrow();
    if (least > 0.5 * all.residualMps2) {
      return new Misfit(-1, least);
    }
    double limit = Math.max(2 * least, 0.25 * all.residualMps2);
    int worst = -1;
    for (int k = 0; k < without.size(); k++) {
      SixPositions fit = without.get(k);
      boolean better =
          worst < 0 || fit.errors.largestCrossTalk() < without.get(worst).errors.largestCrossTalk();
      worst = fit.residualMps2 <= limit && better ? k : worst;
    }
    return new Misfit(worst, least);
  }

  /** Each shown axis is linear in the vertical: three rows of E and three biases. */
  private static SixPositions fit(List<Reading> readings, double gravityMps2) {
    int n = readings.size();
    double[][] design = new double[n][];
    for (int k = 0; k < n; k++) {
      Vector3 up = readings.get(k).pose.up();
      design[k] =
          new double[] {gravityMps2 * up.x(), gravityMps2 * up.y(), gravityMps2 * up.z(), 1};
    }
    RealMatrix matrix = new Array2DRowRealMatrix(design);
    RealMatrix shown =
        new Array2DRowRealMatrix(
            readings.stream()
                .map(r -> new double[] {r.shownMps2.x(), r.shownMps2.y(), r.shownMps2.z()})
                .toArray(double[][]::new));
    RealMatrix found = new QRDecomposition(matrix).getSolver().solve(shown);
    double left = matrix.multiply(found).subtract(shown).getFrobeniusNorm();
    return new SixPositions(
        Vector3.of(found.getRow(3), 0),
        AxisMatrix.ofRows(found.getSubMatrix(0, 2, 0, 2).transpose().getData()),
        left / Math.sqrt(Math.max(1, 3 * n - 12)),
        readings.stream().map(Reading::pose).toList());
  }
}
