package steadyturn.analysis.pelvis;

import static steadyturn.analysis.measure.MeasureValue.Z95;

import java.util.function.DoubleBinaryOperator;

/**
 * The 95 % interval of a function of two pose components that may bend sharply: its smallest and
 * largest value over the ellipse that lies 1.96 spreads about the pose. For a straight function
 * that is the usual interval.
 */
record Range(double low, double high) {

  private static final int DIRECTIONS = 72;
  private static final int RINGS = 8;

  static Range of(PoseSpread spread, int first, int second, DoubleBinaryOperator function) {
    double[] pose = spread.pose().toArray();
    double sdFirst = spread.sd(first);
    double along = sdFirst > 0 ? spread.covariance(first, second) / sdFirst : 0;
    double apart = Math.sqrt(Math.max(0, spread.covariance(second, second) - along * along));
    double low = function.applyAsDouble(pose[first], pose[second]);
    double high = low;
    for (int i = 0; i < DIRECTIONS * RINGS; i++) {
      double angle = 2 * Math.PI * i / DIRECTIONS;
      double reach = Z95 * (1 + i / DIRECTIONS) / RINGS;
      double a = reach * Math.cos(angle);
      double b = reach * Math.sin(angle);
      double value =
          function.applyAsDouble(pose[first] + a * sdFirst, pose[second] + a * along + b * apart);
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
    return new Range(low, high);
  }
}
