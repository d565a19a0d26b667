package steadyturn.fusion.orientation;

import java.util.List;
import java.util.Locale;
import steadyturn.fusion.filter.kalman.KalmanSettings;
import steadyturn.fusion.rotation.MutableQuaternion;

/**
 * Prints how little the figures hang on each setting, and how much on the instant that a sample
 * stands for; not a test.
 */
final class SettingsStudy {

  private static final List<String> NAMES =
      List.of(
          "block",
          "first tilt",
          "first bias",
          "bias walk",
          "rate matrix",
          "rate noise",
          "turn noise",
          "velocity noise",
          "speed",
          "place",
          "movement correlation");

  private SettingsStudy() {}

  public static void main(String[] args) {
    List<BroadTrial> trials = BroadTrial.readAll(SharedData.path("broad"));
    for (int k = 0; k < NAMES.size(); k++) {
      System.out.printf(
          Locale.ROOT,
          "| %s | %s | %s | %s | %s |%n",
          NAMES.get(k),
          mean(trials, scaled(k, 0.5), OrientationMethod.ONLINE, 0),
          mean(trials, scaled(k, 2), OrientationMethod.ONLINE, 0),
          mean(trials, scaled(k, 0.5), OrientationMethod.OFFLINE, 0),
          mean(trials, scaled(k, 2), OrientationMethod.OFFLINE, 0));
    }
    for (double steps : new double[] {-0.5, 0, 0.5, 1}) {
      System.out.printf(
          Locale.ROOT,
          "| read %.1f steps later | %s | %s |%n",
          steps,
          mean(trials, KalmanSettings.standard(), OrientationMethod.ONLINE, steps),
          mean(trials, KalmanSettings.standard(), OrientationMethod.OFFLINE, steps));
    }
  }

  private static KalmanSettings scaled(int which, double factor) {
    KalmanSettings s = KalmanSettings.standard();
    double[] f = new double[NAMES.size()];
    java.util.Arrays.fill(f, 1);
    f[which] = factor;
    return new KalmanSettings(
        f[0] * s.blockS(),
        f[1] * s.startTiltRad(),
        f[2] * s.startBiasRadPerS(),
        f[3] * s.biasWalkRadPerSSqrtS(),
        f[4] * s.rateMatrixSigma(),
        f[5] * s.rateNoiseRadPerSqrtS(),
        f[6] * s.turnNoiseSqrtS(),
        f[7] * s.velocityNoiseMpsPerSqrtS(),
        f[8] * s.speedSigmaMps(),
        f[9] * s.placeSigmaM(),
        f[10] * s.movementCorrelationS(),
        s.rest(),
        s.floor());
  }

  private static String mean(
      List<BroadTrial> trials, KalmanSettings settings, OrientationMethod method, double steps) {
    double inclination = 0;
    double window = 0;
    for (BroadTrial trial : trials) {
      OrientationTrack track = new OrientationRun(settings).run(trial.stream(), method);
      OrientationScore score = OrientationScore.of(later(track, trial, steps), trial);
      inclination += score.inclinationDeg() / trials.size();
      window += score.windowDeg() / trials.size();
    }
    return String.format(Locale.ROOT, "%.3f / %.3f", inclination, window);
  }

  /** Each answer turned on by its own rate for some parts of a step. */
  private static OrientationTrack later(OrientationTrack track, BroadTrial trial, double steps) {
    MutableQuaternion q = new MutableQuaternion();
    double byS = steps * 0.0035;
    for (int i = 0; i < track.size(); i++) {
      track.copyTo(i, q);
      q.turnRight(
          byS * trial.stream().gyroRadPerS(0, i),
          byS * trial.stream().gyroRadPerS(1, i),
          byS * trial.stream().gyroRadPerS(2, i));
      track.set(i, q, track.inclinationSigmaRad()[i], track.headingSigmaRad()[i]);
    }
    return track;
  }
}
