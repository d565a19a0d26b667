package steadyturn.analysis.swing.find;

import java.util.ArrayList;
import java.util.List;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.analysis.swing.UnplacedMarks;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.UnitStream;

/** A swing before its neighbours and marks are known. */
record FoundSwing(
    UnitStream seenBy,
    List<EventTime> events,
    boolean shock,
    double takeawayS,
    double impactS,
    double motionEndS,
    List<String> flags) {

  // so much of the time around it belongs to a swing at most
  private static final double BEFORE_TAKEAWAY_S = 3;
  private static final double AFTER_IMPACT_S = 4;

  Swing numbered(
      int number,
      double notBeforeS,
      double notAfterS,
      List<Mark> noted,
      String club,
      boolean isDrill) {
    double firstS = seenBy.timeS(0);
    double lastS = seenBy.timeS(seenBy.size() - 1);
    double startS = Math.max(Math.max(firstS, notBeforeS), takeawayS - BEFORE_TAKEAWAY_S);
    double endS = Math.min(Math.min(lastS, notAfterS), impactS + AFTER_IMPACT_S);
    SwingKind seen =
        noted.stream()
            .filter(UnplacedMarks::isOfSwing)
            .findFirst()
            .map(m -> m.trialType().equals("practice") ? SwingKind.PRACTICE : SwingKind.HIT)
            .orElse(shock ? SwingKind.HIT : SwingKind.PRACTICE);
    SwingKind kind = isDrill ? SwingKind.DRILL : seen;
    return new Swing(number, kind, club, startS, endS, events, flags(kind, noted), noted);
  }

  /** When the hands, or else the hips, turned round. */
  double topS() {
    return events.stream()
        .filter(e -> e.event() == SwingEvent.TOP)
        .mapToDouble(EventTime::timeS)
        .findFirst()
        .orElse(impactS);
  }

  private List<String> flags(SwingKind kind, List<Mark> noted) {
    List<String> all = new ArrayList<>(flags);
    if (noted.stream().anyMatch(m -> m.trialType().equals(Swing.LEFT_OUT))) {
      all.add(Swing.LEFT_OUT);
    }
    if (!shock) {
      all.add("impact-virtual");
    }
    if (kind == SwingKind.HIT && !shock) {
      all.add("no-shock");
    }
    if (kind == SwingKind.PRACTICE && shock) {
      all.add("shock-in-practice");
    }
    return all;
  }
}
