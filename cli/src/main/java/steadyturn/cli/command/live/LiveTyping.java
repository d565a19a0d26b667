package steadyturn.cli.command.live;

import java.util.Optional;
import java.util.function.DoubleSupplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import steadyturn.analysis.live.LatestSamples;
import steadyturn.analysis.live.StepCoach;
import steadyturn.cli.terminal.Desk;
import steadyturn.cli.words.Words;
import steadyturn.ingest.live.LiveMark;
import steadyturn.ingest.live.LiveRecorder;
import steadyturn.ingest.mark.MarkWord;

/**
 * What is typed while a lesson is recorded becomes marks, and moves the guide through the steps.
 */
final class LiveTyping {

  /** Units begin within so long of each other; then it is known which steps there are, s. */
  private static final double OFFER_AFTER_S = 1.5;

  private final LiveRecorder recorder;
  private final LatestSamples samples;
  private final DoubleSupplier now;
  private final Desk desk;
  private final Runnable ends;
  private final StepGuide guide;
  private final int units;
  private Optional<LiveMark> last = Optional.empty();
  private boolean isGuiding;
  private double offerAtS = Double.POSITIVE_INFINITY;

  /**
   * What is typed at a desk.
   *
   * @param units how many are expected
   */
  LiveTyping(LiveSession session, int units, Desk desk, Runnable ends) {
    now = session::nowS;
    this.units = units;
    recorder = session.recorder();
    samples = session.lesson().samples();
    this.desk = desk;
    this.ends = ends;
    guide =
        new StepGuide(
            new StepCoach(samples, session.lesson()::found),
            word -> last = Optional.of(recorder.markNow(word.word(), "", "")),
            desk::say);
  }

  /** Begins to take lines. */
  void start() {
    isGuiding = true;
    Thread reader = new Thread(this::read, "marks");
    reader.setDaemon(true);
    reader.start();
  }

  private void read() {
    Optional<String> line = desk.typed();
    while (line.isPresent()) {
      if (take(line.get()) == TypedLine.Order.QUIT) {
        return; // no further prompt: the next line is the shell's
      }
      line = desk.typed();
    }
    stopGuiding();
    desk.warn(Words.say("record.no-typing"));
  }

  private synchronized void stopGuiding() {
    isGuiding = false;
  }

  /** Looks at the step under way, and offers the first one when the units are known. */
  synchronized void look() {
    double nowS = now.getAsDouble();
    if (isGuiding && !samples.points().isEmpty()) {
      offerAtS = Math.min(offerAtS, nowS + OFFER_AFTER_S);
      if (nowS >= offerAtS || samples.points().size() == units) {
        isGuiding = false;
        guide.offer(samples.points());
      }
    }
    guide.look(nowS);
  }

  synchronized String status() {
    String step = guide.status();
    return step.isEmpty() ? "" : step + "  ";
  }

  private synchronized TypedLine.Order take(String line) {
    TypedLine typed = TypedLine.of(line);
    double nowS = now.getAsDouble();
    switch (typed.order()) {
      case QUIT -> ends.run();
      case BEGIN -> guide.begin(nowS);
      case SKIP -> guide.leave(false, nowS);
      case LATER -> guide.leave(true, nowS);
      case AGAIN -> guide.again(nowS);
      case UNSAY -> unsay(nowS);
      case HELP -> Words.say("record.help").lines().forEach(desk::say);
      case UNKNOWN -> desk.say(Words.say("mark.unknown", line.strip(), TypedLine.nearest(line)));
      case MARK -> mark(typed, typed.word().orElseThrow(), nowS);
    }
    return typed.order();
  }

  private void mark(TypedLine typed, MarkWord word, double nowS) {
    if (word.isStep()) {
      guide.begin(word, nowS);
    } else if (word == MarkWord.DONE) {
      guide.done(nowS);
    } else if (word == MarkWord.CLUB && typed.club().isEmpty()) {
      desk.say(Words.say("record.which-club"));
    } else if (word == MarkWord.NOTE && typed.note().isEmpty()) {
      desk.say(Words.say("record.which-note"));
    } else {
      last = Optional.of(recorder.markNow(word.word(), typed.club(), typed.note()));
      desk.say(Words.say("record.noted", told(word, typed.club(), typed.note())));
      if (typed.isOddClub()) {
        desk.say(Words.say("record.odd-club", typed.club()));
      }
      if (word != MarkWord.NOTE) {
        guide.ended(nowS);
      }
      if (word == MarkWord.HIT || word == MarkWord.PRACTICE) {
        guide.strike();
      }
    }
  }

  /** The last mark is no longer there; a step that is under way is over. */
  private void unsay(double nowS) {
    Optional<MarkWord> word = last.flatMap(mark -> MarkWord.of(mark.trialType()));
    if (word.isEmpty() || word.get() == MarkWord.DONE) {
      desk.say(Words.say("record.nothing-to-unsay"));
      return;
    }
    LiveMark mark = last.orElseThrow();
    last = Optional.empty();
    recorder.unmark(mark);
    guide.dropped(word.get(), nowS);
    desk.say(Words.say("record.unsaid", told(word.get(), mark.club(), mark.note())));
  }

  private static String told(MarkWord word, String club, String note) {
    String[] parts = {word.word().replace('-', ' '), club, note};
    return Stream.of(parts).filter(part -> !part.isEmpty()).collect(Collectors.joining(", "));
  }
}
