package steadyturn.ingest.columnmap;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import steadyturn.ingest.recording.table.UnitWords;
import steadyturn.ingest.sample.UnitStream;

/**
 * Asks gravity and motion whether a map is right. Still parts must show 9.81 m/s^2; a gyroscope in
 * the right unit and axes keeps gravity in place while the unit turns. What neither can see: both
 * sensors turned alike, and an accelerometer with all three signs wrong.
 */
final class MapCheck {

  private static final double GRAVITY_MPS2 = 9.81;
  private static final double WITHIN = 0.05;

  /** A guess must explain the motion this much better than the map before the map is doubted. */
  private static final double CLEARLY = 3;

  /** Guesses this near the best one are told apart by how little they change. */
  private static final double AS_GOOD = 1.5;

  /** A unit at rest shows a bias of 3 deg/s at most; ten times that is another unit, rad/s. */
  private static final double LARGEST_BIAS_RAD_PER_S = 0.5;

  private MapCheck() {}

  static MapVerdict of(UnitStream unit, UnitColumns columns) {
    EvenSamples samples = EvenSamples.of(unit);
    List<QuietParts> found = QuietParts.in(samples);
    if (found.isEmpty()) {
      return new MapVerdict(
          List.of(),
          List.of(
              "no quiet part found, so the map could not be checked; let the unit lie still for"
                  + " three seconds at the start."));
    }
    QuietParts quiet = found.get(0);
    List<String> faults = new ArrayList<>();
    List<String> notices = new ArrayList<>();
    askGravity(quiet.gravity(), columns, faults);
    if (!isZero(quiet.gravity())) {
      askMotion(new GravityTrial(samples, quiet), columns, quiet, faults, notices);
    }
    return new MapVerdict(faults, notices);
  }

  private static boolean isZero(double gravity) {
    return gravity < 1e-6;
  }

  private static boolean isGravity(double sizeMps2) {
    return Math.abs(sizeMps2 / GRAVITY_MPS2 - 1) <= WITHIN;
  }

  private static void askGravity(double shown, UnitColumns columns, List<String> faults) {
    if (isGravity(shown)) {
      return;
    }
    String found =
        String.format(
            Locale.ROOT, "still parts show %.4g m/s^2 instead of 9.81 within 5 %%; ", shown);
    faults.add(found + likelyUnit(shown, columns.accelToMps2()));
  }

  /** The unit in which the same numbers would show gravity. */
  private static String likelyUnit(double shown, double mappedToMps2) {
    for (String word : List.of("m/s^2", "g", "mg", "cm/s^2")) {
      double factor = UnitWords.accelToMps2(word).orElseThrow();
      if (isGravity(shown / mappedToMps2 * factor)) {
        return "accel_unit is likely " + word + ".";
      }
    }
    if (shown < 1) {
      return "gravity seems to be taken out of these columns; map the raw acceleration.";
    }
    return "check accel_unit, and that accel names the three columns of one accelerometer.";
  }

  private static void askMotion(
      GravityTrial trial,
      UnitColumns columns,
      QuietParts quiet,
      List<String> faults,
      List<String> notices) {
    if (trial.hasEnough()) {
      double mapped = trial.scatter(AxisGuess.asMapped());
      double unturned = trial.scatterUnturned();
      List<Tried> tried =
          AxisGuess.all().stream().map(g -> new Tried(g, trial.scatter(g))).toList();
      double best = tried.stream().mapToDouble(Tried::scatter).min().orElse(mapped);
      if (best * CLEARLY < mapped && best * CLEARLY < unturned) {
        faults.add(simplest(tried, AS_GOOD * best).told(columns));
        return;
      }
      if (mapped * CLEARLY < unturned) {
        return;
      }
    }
    if (quiet.biasSizeRadPerS() > LARGEST_BIAS_RAD_PER_S) {
      faults.add(
          String.format(
              Locale.ROOT,
              "still parts show a rate of %.2g rad/s instead of about 0; gyro_unit is likely"
                  + " deg/s.",
              quiet.biasSizeRadPerS()));
    } else {
      notices.add("too little turning to check the gyroscope's unit, axes and signs.");
    }
  }

  private static AxisGuess simplest(List<Tried> tried, double upTo) {
    return tried.stream()
        .filter(t -> t.scatter() <= upTo)
        .min(
            Comparator.comparingInt((Tried t) -> t.guess().changes())
                .thenComparingDouble(Tried::scatter))
        .map(Tried::guess)
        .orElseThrow();
  }

  private record Tried(AxisGuess guess, double scatter) {}
}
