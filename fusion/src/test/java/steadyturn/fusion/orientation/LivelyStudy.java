package steadyturn.fusion.orientation;

import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import steadyturn.fusion.filter.kalman.KalmanSettings;
import steadyturn.fusion.orientation.LivelyTrial.Kind;

/**
 * Prints the table of made units in docs/accuracy-orientation.md: for each kind of unit and
 * movement what the filters reach, and what the best fixed setting for that very kind reaches,
 * found with the truth in hand. Not a test. Seeds of the judging half had no part in the making.
 */
final class LivelyStudy {

  /** Seeds from here on judge; those from 1000 to 9999 tuned. */
  static final long JUDGING_SEED = 770_000;

  private static final int TRIALS = 8;

  private static final List<Kind> KINDS =
      List.of(
          new Kind(1, 100, 1, 1, 1, true),
          new Kind(6, 100, 1, 1, 1, true),
          new Kind(1, 100, 0.1, 0.1, 1, true),
          new Kind(6, 100, 0.1, 0.1, 1, true),
          new Kind(1, 100, 3, 3, 1, true),
          new Kind(6, 100, 3, 3, 1, true),
          new Kind(6, 100, 0.1, 1, 1, true),
          new Kind(6, 100, 3, 1, 1, true),
          new Kind(6, 400, 1, 1, 1, true),
          new Kind(6, 100, 1, 1, 6, true),
          new Kind(6, 100, 1, 1, 1, false),
          new Kind(6, 100, 1, 1, 6, false));

  /** RMS over trials of inclination and of 5 s windows, degrees, and the mean coverage. */
  record Result(double inclinationDeg, double windowDeg, double coverage) {

    static Result of(List<BroadTrial> trials, OrientationRun run, OrientationMethod method) {
      double inclination = 0;
      double window = 0;
      double coverage = 0;
      for (BroadTrial trial : trials) {
        OrientationTrack track = run.run(trial.stream(), method);
        OrientationScore score = OrientationScore.of(track, trial);
        inclination += score.inclinationDeg() * score.inclinationDeg() / trials.size();
        window += score.windowDeg() * score.windowDeg() / trials.size();
        coverage += OrientationScore.coverage(track, trial) / trials.size();
      }
      return new Result(Math.sqrt(inclination), Math.sqrt(window), coverage);
    }

    private String words() {
      return String.format(
          Locale.ROOT, "%.2f / %.2f (%.0f %%)", inclinationDeg, windowDeg, 100 * coverage);
    }
  }

  private LivelyStudy() {}

  public static void main(String[] args) {
    for (Kind kind : KINDS) {
      List<BroadTrial> trials = trials(kind, JUDGING_SEED, TRIALS);
      StringBuilder row = new StringBuilder("| " + kind + " |");
      for (OrientationMethod method :
          List.of(OrientationMethod.ONLINE, OrientationMethod.OFFLINE)) {
        row.append(' ').append(result(trials, KalmanSettings.standard(), method).words());
        row.append(" | ").append(bestFixed(trials, method).words()).append(" |");
      }
      Result lowPass = Result.of(trials, OrientationRun.withDefaults(), OrientationMethod.LOW_PASS);
      System.out.println(row.append(' ').append(lowPass.words()).append(" |"));
    }
  }

  static List<BroadTrial> trials(Kind kind, long seed, int count) {
    return IntStream.range(0, count).mapToObj(k -> LivelyTrial.draw(kind, seed + k)).toList();
  }

  private static Result result(
      List<BroadTrial> trials, KalmanSettings settings, OrientationMethod method) {
    return Result.of(trials, new OrientationRun(settings), method);
  }

  /** The best of all settings that are three or nine times as large or small as ours, by turns. */
  private static Result bestFixed(List<BroadTrial> trials, OrientationMethod method) {
    double[] factor = {1, 1, 1, 1, 1};
    Result best = result(trials, scaled(factor), method);
    for (int k = 0; k < 2 * factor.length; k++) {
      int which = k % factor.length;
      for (double by : new double[] {3, 1.0 / 3}) {
        double[] next = factor.clone();
        next[which] *= by;
        Result got = result(trials, scaled(next), method);
        while (cost(got) < 0.995 * cost(best)) {
          best = got;
          factor = next.clone();
          next[which] *= by;
          got = result(trials, scaled(next), method);
        }
      }
    }
    return best;
  }

  private static double cost(Result result) {
    return result.inclinationDeg + result.windowDeg;
  }

  private static KalmanSettings scaled(double[] f) {
    KalmanSettings s = KalmanSettings.standard();
    return new KalmanSettings(
        s.blockS(),
        s.startTiltRad(),
        s.startBiasRadPerS(),
        s.biasWalkRadPerSSqrtS(),
        f[0] * s.rateMatrixSigma(),
        f[1] * s.rateNoiseRadPerSqrtS(),
        f[2] * s.turnNoiseSqrtS(),
        s.velocityNoiseMpsPerSqrtS(),
        f[3] * s.speedSigmaMps(),
        f[4] * s.placeSigmaM(),
        s.movementCorrelationS(),
        s.rest(),
        s.floor());
  }
}
