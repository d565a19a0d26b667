package steadyturn.ingest.quality;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import steadyturn.ingest.quality.gravity.GravityTurns;
import steadyturn.ingest.quality.gravity.GravityTurns.Reading;
import steadyturn.ingest.quality.gravity.TurnScale;

/**
 * Holds the two sensors of a unit against each other: when it turns, gravity must move in the
 * accelerometer as the gyroscope says. Where it does not, and does so well under another reading of
 * the gyroscope, that reading tells what is wrong: axes of another hand, a sign, axes exchanged,
 * degrees for radians, turns. Where it moves as much more or less, the rate is stated wrong or the
 * scale of the gyroscope is. One wrong sign of the accelerometer looks like two of the gyroscope,
 * two like one.
 */
final class TurnCheck {

  /** So many turns may fit anything by chance; a few must speak more clearly. */
  private static final int FEW_PAIRS = 8;

  private static final int FEWEST_PAIRS = 4;

  /**
   * Sound units of all families stay below 0.9 on the trunk, where a sign that hardly matters gives
   * 1, and reach 13 on arms that are never still; there no other reading fits either.
   */
  private static final double DOUBTFUL = 0.8;

  private static final double DOUBTFUL_OF_FEW = 6;

  private static final double WELL_OF_FEW = 1;

  /** Another reading must fit so much better, and so well (our choice). */
  private static final double BETTER = 0.3;

  private static final double WELL = 6;

  private static final double[] SCALES = {
    Math.toRadians(1), Math.toDegrees(1), 2 * Math.PI, 1 / (2 * Math.PI)
  };

  /** A scale known worse than this says nothing: then what passed for calm leans it. */
  private static final double SCALE_KNOWN = 0.025;

  /** No calibration is so much off, in all units alike or in one of them (our choice). */
  private static final double OF_ALL = 0.03;

  private static final double OF_ONE = 0.06;

  private static final double SCALE_SPREADS = 3.5;

  /**
   * Units agree where the squares of their distances, in spreads, sum to less: 1 % of three do not.
   */
  private static final double MOST_APART = 9;

  private static final int[][] ORDERS = {
    {0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}
  };

  private TurnCheck() {}

  static List<Finding> of(GravityTurns turns) {
    int pairs = turns.pairs().size();
    double asGiven = turns.misfit(Reading.AS_GIVEN);
    boolean few = pairs < FEW_PAIRS;
    if (pairs < FEWEST_PAIRS || !(asGiven > (few ? DOUBTFUL_OF_FEW : DOUBTFUL))) {
      return List.of();
    }
    record Tried(Reading reading, double misfit) {}
    double most = Math.min(few ? WELL_OF_FEW : WELL, BETTER * asGiven);
    return others().stream()
        .map(reading -> new Tried(reading, turns.misfit(reading, most)))
        .min(Comparator.comparingDouble(Tried::misfit))
        .filter(best -> best.misfit < most)
        .filter(best -> best.reading.scale() == 1 || asGiven > DOUBTFUL_OF_FEW)
        .map(best -> List.of(finding(best.reading)))
        .orElse(List.of());
  }

  /** What the scales of all units, and of one of them, say of that one. */
  static List<Finding> ofScale(TurnScale own, List<TurnScale> all) {
    TurnScale common = TurnScale.common(all);
    long known = all.stream().filter(s -> Double.isFinite(s.sd())).count();
    double apart = all.stream().mapToDouble(s -> square(s, common)).sum();
    if (isOff(own, OF_ONE)) {
      return List.of(ofScale(1 + own.off()));
    }
    return known > 1 && apart < MOST_APART && isOff(common, OF_ALL)
        ? List.of(ofScale(1 + common.off()))
        : List.of();
  }

  private static double square(TurnScale scale, TurnScale common) {
    double spreads = (scale.off() - common.off()) / scale.sd();
    return spreads * spreads;
  }

  private static Finding ofScale(double times) {
    return Finding.of(Verdict.NOT_USABLE, QualityReason.TURN_SCALE, times);
  }

  private static boolean isOff(TurnScale scale, double least) {
    return scale.sd() < SCALE_KNOWN
        && Math.abs(scale.off()) > Math.max(least, SCALE_SPREADS * scale.sd());
  }

  private static List<Reading> others() {
    List<Reading> out = new ArrayList<>();
    for (double scale : SCALES) {
      out.add(Reading.AS_GIVEN.times(scale));
    }
    for (int[] order : ORDERS) {
      for (int signs = 0; signs < 8; signs++) {
        out.add(
            new Reading(
                List.of(order[0], order[1], order[2]),
                List.of(sign(signs, 1), sign(signs, 2), sign(signs, 4)),
                1));
      }
    }
    out.remove(Reading.AS_GIVEN);
    return out;
  }

  private static int sign(int signs, int bit) {
    return (signs & bit) == 0 ? 1 : -1;
  }

  private static Finding finding(Reading best) {
    if (best.scale() == SCALES[0]) {
      return Finding.of(Verdict.NOT_USABLE, QualityReason.GYRO_IN_DEGREES);
    }
    if (best.scale() == SCALES[1]) {
      return Finding.of(Verdict.NOT_USABLE, QualityReason.GYRO_IN_RADIANS);
    }
    if (best.scale() != 1) {
      return ofScale(best.scale());
    }
    if (!best.axes().equals(Reading.AS_GIVEN.axes())) {
      return Finding.of(Verdict.NOT_USABLE, QualityReason.AXES);
    }
    List<Integer> turned = new ArrayList<>();
    List<Integer> kept = new ArrayList<>();
    for (int axis = 0; axis < 3; axis++) {
      (best.signs().get(axis) < 0 ? turned : kept).add(axis);
    }
    return switch (turned.size()) {
      case 3 -> Finding.of(Verdict.NOT_USABLE, QualityReason.MIRRORED);
      case 1 ->
          Finding.of(Verdict.NOT_USABLE, QualityReason.SIGN, "gyro-" + "xyz".charAt(turned.get(0)));
      default ->
          Finding.of(Verdict.NOT_USABLE, QualityReason.SIGN, "accel-" + "xyz".charAt(kept.get(0)));
    };
  }
}
