package steadyturn.analysis.lab.telling;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import steadyturn.analysis.compare.LessonSwing;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.compare.SwingGroup;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.ingest.reason.Reason;

/**
 * A player at a fitting, of whom every value is drawn: with a spread of its own for each measure,
 * with bell-shaped, lopsided or heavy-tailed balls, with rows that go together. Nothing here knows
 * how a comparison is computed.
 */
final class FittedPlayer {

  static final List<MeasureAt> LOOKS = MeasureAt.defaults();

  private final Random random;
  private final double[] mean;
  private final double[] spread;
  private final int shape;
  private final double together;

  FittedPlayer(Random random) {
    this.random = random;
    this.mean = LOOKS.stream().mapToDouble(what -> usual(what.measure())).toArray();
    this.spread =
        LOOKS.stream()
            .mapToDouble(what -> spread(what.measure()) * (0.5 + 1.5 * random.nextDouble()))
            .toArray();
    this.shape = random.nextInt(3);
    this.together = 0.7 * random.nextDouble();
  }

  private static double usual(Measure measure) {
    return switch (measure) {
      case PELVIS_TURN -> -40;
      case PELVIS_SLIDE -> -30;
      case PELVIS_SLIDE_PER_TURN -> 0.8;
      case PELVIS_TURN_SHARE -> 65;
      case WRIST_RELEASE -> 90;
      default -> 2.6;
    };
  }

  /** Swing-to-swing spread of an amateur; our choice, about that of the bundled lesson. */
  private static double spread(Measure measure) {
    return switch (measure) {
      case PELVIS_TURN -> 2;
      case PELVIS_SLIDE -> 9;
      case PELVIS_SLIDE_PER_TURN -> 0.3;
      case PELVIS_TURN_SHARE -> 4;
      case WRIST_RELEASE -> 6;
      default -> 0.12;
    };
  }

  /** True spread of one row. */
  double spread(int row) {
    return spread[row];
  }

  /**
   * Balls with a club.
   *
   * @param balls their places in the lesson
   * @param factor on the spread, as a longer club wanders more
   * @param more what this club truly adds in one row
   * @param drift what each row gains from the first ball of the lesson to its last, in true spreads
   * @param ofAll balls of the lesson
   */
  SwingGroup group(
      String club,
      List<Integer> balls,
      double factor,
      int row,
      double more,
      double drift,
      int ofAll) {
    List<LessonSwing> swings = new ArrayList<>();
    for (int ball : balls) {
      double common = drawn();
      List<MeasureValue> values = new ArrayList<>();
      for (int k = 0; k < mean.length; k++) {
        double own = Math.sqrt(1 - together * together) * drawn() + together * common;
        double place = ofAll < 2 ? 0 : (ball - 1.0) / (ofAll - 1);
        double value = mean[k] + spread[k] * (factor * own + drift * place) + (k == row ? more : 0);
        MeasureAt what = LOOKS.get(k);
        values.add(
            MeasureValue.of(
                what.measure(), what.at(), value, 0.3 * spread[k], Grade.MEASURED, Reason.NONE));
      }
      swings.add(
          new LessonSwing(
              "fitting",
              new SwingResult(ball, club, SwingKind.HIT, List.of(), List.of(), values, List.of())));
    }
    return new SwingGroup(club, swings);
  }

  /**
   * One draw of mean 0 and variance 1: bell-shaped, lopsided (gamma of 4), heavy-tailed (t of 6).
   */
  private double drawn() {
    if (shape == 0) {
      return random.nextGaussian();
    }
    if (shape == 1) {
      double product = 1;
      for (int i = 0; i < 4; i++) {
        product *= 1 - random.nextDouble();
      }
      return (-Math.log(product) - 4) / 2;
    }
    double squares = 0;
    for (int i = 0; i < 6; i++) {
      double z = random.nextGaussian();
      squares += z * z;
    }
    return random.nextGaussian() / Math.sqrt(squares / 6) / Math.sqrt(1.5);
  }
}
