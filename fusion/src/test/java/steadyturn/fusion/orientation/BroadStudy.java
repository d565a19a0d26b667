package steadyturn.fusion.orientation;

import java.util.List;
import java.util.Locale;

/** Prints the tables of docs/accuracy-orientation.md; not a test. */
final class BroadStudy {

  private static final OrientationMethod[] BEST = {
    OrientationMethod.ONLINE, OrientationMethod.OFFLINE, OrientationMethod.LOW_PASS
  };

  private BroadStudy() {}

  public static void main(String[] args) {
    List<BroadTrial> trials = BroadTrial.readAll(SharedData.path("broad"));
    List<BroadTrial> cut = trials.stream().map(t -> t.startingWithRestOf(2)).toList();
    List<BroadTrial> moving = trials.stream().map(t -> t.startingWithRestOf(-20)).toList();
    for (OrientationMethod method : OrientationMethod.values()) {
      System.out.println(row(method.word() + ", whole trials", method, trials));
      System.out.println(row(method.word() + ", from 2 s before movement", method, cut));
      System.out.println(row(method.word() + ", from 20 s into movement", method, moving));
    }
    for (Damage damage : Damage.values()) {
      List<BroadTrial> damaged = trials.stream().map(damage::to).toList();
      for (OrientationMethod method : BEST) {
        System.out.println(row(damage.words() + ", " + method.word(), method, damaged));
      }
    }
    for (OrientationMethod method : BEST) {
      coverage(method, trials);
    }
  }

  private static String row(String what, OrientationMethod method, List<BroadTrial> trials) {
    StringBuilder row = new StringBuilder("| " + what + " |");
    double inclination = 0;
    double window = 0;
    for (BroadTrial trial : trials) {
      OrientationTrack track = OrientationRun.withDefaults().run(trial.stream(), method);
      OrientationScore score = OrientationScore.of(track, trial);
      row.append(figure(score.inclinationDeg(), score.windowDeg()));
      inclination += score.inclinationDeg() / trials.size();
      window += score.windowDeg() / trials.size();
    }
    return row + figure(inclination, window);
  }

  private static String figure(double inclination, double window) {
    return String.format(Locale.ROOT, " %.3f / %.3f |", inclination, window);
  }

  /** How many moving samples lie within 2.45 sigma, the 95 % limit of an error of two axes. */
  private static void coverage(OrientationMethod method, List<BroadTrial> trials) {
    StringBuilder row = new StringBuilder("| " + method.word() + ", inside 95 % |");
    for (BroadTrial trial : trials) {
      OrientationTrack track = OrientationRun.withDefaults().run(trial.stream(), method);
      row.append(
          String.format(Locale.ROOT, " %.1f |", 100 * OrientationScore.coverage(track, trial)));
    }
    System.out.println(row);
  }
}
