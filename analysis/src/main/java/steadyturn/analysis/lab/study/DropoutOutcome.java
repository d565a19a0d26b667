package steadyturn.analysis.lab.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.swing.SwingEvent;

/**
 * What one dropout did to a lesson.
 *
 * @param where the phase its middle lies in and the dropout, for people
 * @param changes values of the swings that the dropout touches
 * @param elsewhere values of the others
 * @param swingsLost swings that are not found any more
 * @param lostForNothing those of them whose stroke the dropout leaves whole
 * @param lostInSilence those of them without a new notice in the result
 * @param swingsInvented swings that are not there without the dropout
 * @param failure why there is no result at all; empty where there is one
 */
record DropoutOutcome(
    String where,
    double lengthS,
    List<DropoutChange> changes,
    List<DropoutChange> elsewhere,
    int swingsLost,
    int lostForNothing,
    int lostInSilence,
    int swingsInvented,
    String failure) {

  private static final double SAME_SWING_S = 0.4;
  private static final double BEFORE_TAKEAWAY_S = 1.3;
  private static final double AFTER_FINISH_S = 1.0;
  private static final double STROKE_MARGIN_S = 0.2;

  static DropoutOutcome failed(String where, Dropout lost, Exception e) {
    return new DropoutOutcome(
        where, lost.lengthS(), List.of(), List.of(), 0, 0, 0, 0, e.toString());
  }

  static DropoutOutcome of(
      String where, Dropout lost, List<LessonResult> twins, List<LessonResult> results) {
    List<DropoutChange> changes = new ArrayList<>();
    List<DropoutChange> elsewhere = new ArrayList<>();
    boolean refused = !areSound(results) && areSound(twins);
    int gone = 0;
    int forNothing = 0;
    int found = 0;
    for (LessonResult twin : twins) {
      for (SwingResult swing : twin.swings()) {
        Optional<SwingResult> now = same(swing, twin, results);
        boolean touched = touches(lost, swing);
        now.ifPresent(
            s -> (touched ? changes : elsewhere).addAll(DropoutChange.of(lost, swing, s, refused)));
        found += now.isPresent() ? 1 : 0;
        gone += now.isPresent() ? 0 : 1;
        forNothing += now.isPresent() || touchesStroke(lost, swing) ? 0 : 1;
      }
    }
    int all = results.stream().mapToInt(r -> r.swings().size()).sum();
    int silent = gone > 0 && notices(results) <= notices(twins) ? gone : 0;
    return new DropoutOutcome(
        where, lost.lengthS(), changes, elsewhere, gone, forNothing, silent, all - found, "");
  }

  private static boolean areSound(List<LessonResult> results) {
    return results.stream().allMatch(LessonResult::isSound);
  }

  private static long notices(List<LessonResult> results) {
    return results.stream().flatMap(r -> r.notices().stream()).distinct().count();
  }

  private static Optional<SwingResult> same(
      SwingResult swing, LessonResult twin, List<LessonResult> results) {
    double impactS = DropoutPhase.timeS(swing, SwingEvent.IMPACT);
    return results.stream()
        .filter(r -> r.recording().equals(twin.recording()))
        .flatMap(r -> r.swings().stream())
        .filter(s -> Math.abs(DropoutPhase.timeS(s, SwingEvent.IMPACT) - impactS) < SAME_SWING_S)
        .findFirst();
  }

  private static boolean touches(Dropout lost, SwingResult swing) {
    return lost.toS() > DropoutPhase.timeS(swing, SwingEvent.TAKEAWAY) - BEFORE_TAKEAWAY_S
        && lost.fromS() < DropoutPhase.timeS(swing, SwingEvent.FINISH) + AFTER_FINISH_S;
  }

  private static boolean touchesStroke(Dropout lost, SwingResult swing) {
    return DropoutNeed.of(swing, SwingEvent.IMPACT).touchedBy(lost, swing)
        && lost.toS() > DropoutPhase.timeS(swing, SwingEvent.TAKEAWAY) - STROKE_MARGIN_S;
  }
}
