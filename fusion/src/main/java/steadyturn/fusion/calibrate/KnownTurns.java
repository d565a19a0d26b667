package steadyturn.fusion.calibrate;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.fusion.rest.RestGate;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.UnitStream;

/**
 * Errors of a gyroscope from turns by quarter, half or whole turns about its own axes, on a table
 * against a square block: rest, turn, rest. Model: sum of rates = E (angle axis), one column of E
 * from the turns about each axis by least squares; bias from the rests on both sides.
 *
 * @param errors E: 1 for a perfect unit
 * @param residualRad RMS of what the model leaves over per turn and axis, rad
 * @param turns the turns used
 */
public record KnownTurns(AxisMatrix errors, double residualRad, List<Turn> turns) {

  private static final double QUARTER = Math.PI / 2;
  private static final double SHORTEST_REST_S = 0.6;

  /** A turn counts when so much of it is about one axis of the unit (18 deg off at most). */
  private static final double LEAST_COSINE = 0.95;

  /**
   * A turn counts when its size is within 8 % of quarters: twice the scale error of a poor unit.
   */
  private static final double LARGEST_PART_OFF = 0.08;

  /** Over a longer gap a turn is not known, s (our choice: a hand's rate changes in 0.1 s). */
  private static final double LONGEST_GAP_S = 0.05;

  /** 0.1 deg: nobody lays a unit against a block better (our choice). */
  private static final double LEAST_SPREAD_RAD = Math.toRadians(0.1);

  public KnownTurns {
    turns = List.copyOf(turns);
  }

  /**
   * One turn between two rests.
   *
   * @param axis 0 x, 1 y, 2 z of the unit
   * @param shownRad sum of the rates, bias taken off, rad
   * @param trueRad the multiple of a quarter turn it was, signed, rad
   */
  public record Turn(int axis, Vector3 shownRad, double trueRad) {}

  /** Finds the turns in a recording and the errors from them. */
  public static KnownTurns of(UnitStream stream) {
    List<UnitStream> rests = StillStretches.of(stream, SHORTEST_REST_S);
    List<Turn> turns = new ArrayList<>();
    for (int k = 0; k + 1 < rests.size(); k++) {
      between(stream, rests.get(k), rests.get(k + 1)).ifPresent(turns::add);
    }
    return fit(turns);
  }

  /** The errors from stretches that each hold one turn with the rests around it. */
  public static KnownTurns ofEach(List<UnitStream> stretches) {
    List<Turn> turns = new ArrayList<>();
    stretches.forEach(stretch -> turnIn(stretch).ifPresent(turns::add));
    return fit(turns);
  }

  /** The turn between the first and the last rest of a stretch; none where it hardly turned. */
  static Optional<Turn> turnIn(UnitStream stretch) {
    List<UnitStream> rests = StillStretches.of(stretch, SHORTEST_REST_S);
    return rests.size() < 2
        ? Optional.empty()
        : between(stretch, rests.get(0), rests.get(rests.size() - 1));
  }

  private static Optional<Turn> between(UnitStream stream, UnitStream before, UnitStream after) {
    Vector3 shown = shownRad(stream, before, after);
    return shown.norm() > 0.5 * QUARTER ? Optional.of(turn(shown)) : Optional.empty();
  }

  /** One sigma of each entry of {@link #errors} in the column of an axis. */
  public double errorsSigma(int axis) {
    double squares = 0;
    for (Turn t : turns) {
      squares += t.axis == axis ? t.trueRad * t.trueRad : 0;
    }
    int n = 3 * turns.size();
    double spread = residualRad * Math.sqrt(n / Math.max(1.0, n - 9.0));
    return Math.max(spread, LEAST_SPREAD_RAD) / Math.sqrt(squares);
  }

  private static Vector3 shownRad(UnitStream stream, UnitStream before, UnitStream after) {
    Vector3 bias =
        RestGate.meanRateRadPerS(before).plus(RestGate.meanRateRadPerS(after)).times(0.5);
    double[] sum = new double[3];
    int from = stream.indexAt(before.timeS(before.size() - 1)) + 1;
    int to = stream.indexAt(after.timeS(0));
    for (int i = from; i <= to; i++) {
      double stepS = stream.timeS(i) - stream.timeS(i - 1);
      for (int axis = 0; axis < 3; axis++) {
        double rate = stream.gyroRadPerS(axis, i);
        if (Double.isNaN(rate) || stepS > LONGEST_GAP_S) {
          throw CalibrationException.of(
              "a rate is lost at %.2f s, in the middle of a turn; record the turns again",
              stream.timeS(i));
        }
        sum[axis] += stepS * (rate - bias.get(axis));
      }
    }
    return Vector3.of(sum, 0);
  }

  private static Turn turn(Vector3 shown) {
    int axis = 0;
    for (int k = 1; k < 3; k++) {
      axis = Math.abs(shown.get(k)) > Math.abs(shown.get(axis)) ? k : axis;
    }
    double about = shown.get(axis);
    double trueRad = QUARTER * Math.round(about / QUARTER);
    if (Math.abs(about) < LEAST_COSINE * shown.norm()) {
      throw CalibrationException.of(
          "a turn of %.0f deg was not about one axis of the unit; slide it flat on the table",
          Math.toDegrees(shown.norm()));
    }
    if (Math.abs(about - trueRad) > LARGEST_PART_OFF * Math.max(QUARTER, Math.abs(trueRad))) {
      throw CalibrationException.of(
          "a turn of %.0f deg is not a multiple of a quarter turn; end it against the block",
          Math.toDegrees(about));
    }
    return new Turn(axis, shown, trueRad);
  }

  private static KnownTurns fit(List<Turn> turns) {
    double[][] rows = new double[3][3];
    for (int axis = 0; axis < 3; axis++) {
      Vector3 along = Vector3.ZERO;
      double squares = 0;
      for (Turn t : turns) {
        if (t.axis == axis) {
          along = along.plus(t.shownRad.times(t.trueRad));
          squares += t.trueRad * t.trueRad;
        }
      }
      if (squares == 0) {
        throw CalibrationException.of(
            "no turn about the unit's %s axis; turn it by a quarter or more about each axis, with"
                + " a second of rest before and after",
            "xyz".charAt(axis));
      }
      for (int row = 0; row < 3; row++) {
        rows[row][axis] = along.get(row) / squares;
      }
    }
    AxisMatrix errors = AxisMatrix.ofRows(rows);
    return new KnownTurns(errors, residualRad(errors, turns), turns);
  }

  private static double residualRad(AxisMatrix errors, List<Turn> turns) {
    double squares = 0;
    for (Turn t : turns) {
      Vector3 turned = Vector3.axis(t.axis).times(t.trueRad);
      Vector3 left = errors.times(turned).minus(t.shownRad);
      squares += left.dot(left);
    }
    return Math.sqrt(squares / (3 * turns.size()));
  }
}
