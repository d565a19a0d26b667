package steadyturn.fusion.filter;

import java.util.List;
import java.util.Locale;

/** Prints the table of docs/accuracy-orientation.md; not a test. */
final class BroadStudy {

  private BroadStudy() {}

  public static void main(String[] args) {
    List<BroadTrial> trials = BroadTrial.readAll(SharedData.path("broad"));
    List<BroadTrial> cut = trials.stream().map(t -> t.startingWithRestOf(2)).toList();
    for (OrientationMethod method : OrientationMethod.values()) {
      print(method, "whole trial", trials);
      print(method, "2 s of rest", cut);
    }
  }

  private static void print(OrientationMethod method, String what, List<BroadTrial> trials) {
    StringBuilder row = new StringBuilder("| " + method.word() + ", " + what + " |");
    double inclination = 0;
    double window = 0;
    StringBuilder sigma = new StringBuilder();
    for (BroadTrial trial : trials) {
      OrientationTrack track = OrientationRun.withDefaults().run(trial.stream(), method);
      OrientationScore score = OrientationScore.of(track, trial);
      row.append(figure(score.inclinationDeg(), score.windowDeg()));
      inclination += score.inclinationDeg() / trials.size();
      window += score.windowDeg() / trials.size();
      sigma.append(String.format(Locale.ROOT, " %.2f", meanSigmaDeg(track, trial)));
    }
    System.out.println(row + figure(inclination, window) + " sigma" + sigma);
  }

  private static double meanSigmaDeg(OrientationTrack track, BroadTrial trial) {
    double sum = 0;
    int count = 0;
    for (int i = 0; i < track.size(); i++) {
      if (trial.moving()[i]) {
        sum += track.inclinationSigmaRad()[i];
        count++;
      }
    }
    return Math.toDegrees(sum / count);
  }

  private static String figure(double inclination, double window) {
    return String.format(Locale.ROOT, " %.3f / %.3f |", inclination, window);
  }
}
