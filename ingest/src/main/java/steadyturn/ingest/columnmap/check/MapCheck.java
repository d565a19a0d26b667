package steadyturn.ingest.columnmap.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import steadyturn.ingest.columnmap.layout.MappedVector;
import steadyturn.ingest.columnmap.layout.UnitColumns;
import steadyturn.ingest.recording.table.UnitWords;
import steadyturn.ingest.sample.UnitStream;

/**
 * Asks gravity and motion whether a map is right. Still parts must show 9.81 m/s^2; a gyroscope in
 * the right unit and axes keeps gravity in place while the unit turns. What neither can see: both
 * sensors turned alike, and an accelerometer with all three signs wrong.
 */
public final class MapCheck {

  private static final double GRAVITY_MPS2 = 9.81;
  private static final double WITHIN = 0.05;

  /** A guess must explain the motion this much better than the map before the map is doubted. */
  private static final double CLEARLY = 3;

  /** Guesses this near the best one are told apart by how little they change. */
  private static final double AS_GOOD = 1.5;

  /** A unit at rest shows a bias of 3 deg/s at most; ten times that is another unit, rad/s. */
  private static final double LARGEST_BIAS_RAD_PER_S = 0.5;

  /** What moves and shows less than this in its middle lacks gravity: our choice. */
  private static final double LEAST_GRAVITY_MPS2 = 3;

  private static final String NO_GRAVITY =
      "gravity seems to be taken out of these columns; map the raw acceleration, or name the"
          + " columns of gravity too (gravity = [...]).";

  private MapCheck() {}

  public static MapVerdict of(UnitStream unit, UnitColumns columns) {
    EvenSamples samples = EvenSamples.of(unit);
    List<QuietParts> found = QuietParts.in(samples);
    if (found.isEmpty() && samples.medianSize() < LEAST_GRAVITY_MPS2) {
      return new MapVerdict(List.of(NO_GRAVITY), List.of());
    }
    if (found.isEmpty()) {
      return new MapVerdict(
          List.of(),
          List.of(
              "no quiet part found, so axes, signs and units could not be checked. Record anew: let"
                  + " the unit lie still for three seconds, then turn it in the hand through all"
                  + " attitudes for half a minute."));
    }
    QuietParts quiet = found.get(0);
    List<String> faults = new ArrayList<>();
    List<String> unasked = new ArrayList<>();
    askGravity(quiet.gravity(), columns, faults);
    AngleColumns.among(samples, columns).ifPresent(faults::add);
    if (!isZero(quiet.gravity()) && faults.isEmpty()) {
      askMotion(new GravityTrial(samples, quiet), columns, quiet, faults, unasked);
    }
    return new MapVerdict(faults, unasked);
  }

  /** What the quiet parts show, or the middle of all where none is quiet, in mapped m/s^2. */
  public static double shownMps2(UnitStream unit) {
    EvenSamples samples = EvenSamples.of(unit);
    return QuietParts.in(samples).stream()
        .mapToDouble(QuietParts::gravity)
        .findFirst()
        .orElseGet(samples::medianSize);
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
    faults.add(found + likelyUnit(shown, columns.accel().orElseThrow()));
  }

  /** The unit in which the same numbers would show gravity. */
  private static String likelyUnit(double shown, MappedVector accel) {
    for (String word : List.of("m/s^2", "g", "mg", "cm/s^2")) {
      double factor = UnitWords.accelToMps2(word).orElseThrow();
      if (accel.key().equals("accel") && isGravity(shown / accel.toSi() * factor)) {
        return "accel_unit is likely " + word + ".";
      }
    }
    if (shown < 1) {
      return NO_GRAVITY;
    }
    return "check accel_unit, and that accel names the three columns of one accelerometer.";
  }

  private static void askMotion(
      GravityTrial trial,
      UnitColumns columns,
      QuietParts quiet,
      List<String> faults,
      List<String> unasked) {
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
      unasked.add(
          "too little turning to check the gyroscope's unit, axes and signs. Record anew: turn the"
              + " unit in the hand through all attitudes for half a minute.");
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
