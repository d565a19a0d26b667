package steadyturn.cli.command.mat;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.lesson.Notice;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.live.LiveEvents;
import steadyturn.cli.words.Words;
import steadyturn.ingest.reason.Reason;

/** Takes what the live room finds to the balls of a lesson, and tells the pages. */
record RoomEvents(LessonRoom room) implements LiveEvents {

  /** Flags of a ball that lacks samples. */
  private static final List<String> GAPS = List.of("arm-gap", "pelvis-gap", "finish-not-seen");

  @Override
  public void measured(SwingResult swing, double afterS) {
    String drill = room.drills().take(swing);
    if (Collections.disjoint(swing.flags(), GAPS)) {
      room.troubles().wholeBall();
    }
    long knownAtMs = System.currentTimeMillis() - Math.round(1000 * afterS);
    room.session()
        .map(its -> room.board().take(its.run(), swing, drill))
        .ifPresent(ball -> room.tell(ball.put("knownAt", knownAtMs)));
  }

  @Override
  public void revised(List<SwingResult> latest) {
    room.session()
        .ifPresent(
            its -> latest.forEach(ball -> room.tell(room.board().take(its.run(), ball, ""))));
  }

  @Override
  public void noticed(Notice notice) {
    Optional<Reason> slip = PageUnits.slip(notice.reason());
    if (slip.isEmpty()) {
      room.troubles().notice(notice);
      return;
    }
    double afterS = slip.get().args().get("afterS") instanceof Number at ? at.doubleValue() : 0;
    int ball = room.session().map(its -> room.board().numberAt(its.run(), afterS)).orElse(0);
    Object unit = PageUnits.unit(slip.get());
    room.troubles()
        .notice(
            ball == 0
                ? Words.say("mat.slipped", unit)
                : Words.say("mat.slipped.after", unit, ball));
  }
}
