package steadyturn.cli.command.live;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import steadyturn.analysis.live.StepCoach;
import steadyturn.analysis.live.StepNews;
import steadyturn.cli.words.Words;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;

/**
 * Leads through the wear steps: offers one after the other, says how it goes, and goes on. Each may
 * be left out, repeated, or done later. Not for several threads.
 */
final class StepGuide {

  private final StepCoach coach;
  private final Consumer<MarkWord> marks;
  private final Consumer<String> says;
  private final Deque<MarkWord> toDo = new ArrayDeque<>();
  private final Set<MarkWord> begun = EnumSet.noneOf(MarkWord.class);
  private boolean isOffered;
  private boolean isExplained;
  private Optional<MarkWord> last = Optional.empty();
  private String progress = "";

  /**
   * A guide with nothing to do yet.
   *
   * @param marks notes that a step begins, or that one is done
   * @param says a line for the person who is led
   */
  StepGuide(StepCoach coach, Consumer<MarkWord> marks, Consumer<String> says) {
    this.coach = coach;
    this.marks = marks;
    this.says = says;
  }

  /** Offers the steps that these units can show. */
  void offer(List<BodyPoint> worn) {
    isOffered = true;
    StepCoach.shownBy(worn).stream().filter(step -> !begun.contains(step)).forEach(toDo::add);
    if (coach.step().isEmpty()) {
      next();
    }
  }

  private void next() {
    if (toDo.isEmpty()) {
      says.accept(Words.say("record.steps.all"));
    } else {
      MarkWord step = toDo.peek();
      says.accept(Words.say("record.step.next", name(step), Words.say("record.do." + step.word())));
      if (!isExplained) {
        isExplained = true;
        says.accept(Words.say("record.step.keys"));
      }
    }
  }

  /** The step that is under way, as the status shows it; empty where none is. */
  String status() {
    return coach.step().map(step -> name(step) + ": " + progress).orElse("");
  }

  private static String name(MarkWord step) {
    return step.word().replace('-', ' ');
  }

  /** Goes on: the step under way is over, done or not, and the one that was offered begins. */
  void begin(double atS) {
    Optional<MarkWord> over = coach.step();
    if (!isOffered && over.isEmpty()) {
      says.accept(Words.say("record.step.wait"));
      return;
    }
    if (over.isPresent()) {
      marks.accept(MarkWord.DONE);
      ended(atS);
      over.filter(toDo::remove).ifPresent(toDo::addLast); // not done: another time
    }
    if (toDo.isEmpty() || over.filter(step -> step == toDo.peek()).isPresent()) {
      next();
    } else {
      begin(toDo.peek(), atS);
    }
  }

  /** Begins a step, whether it was offered or not. */
  void begin(MarkWord step, double atS) {
    ended(atS);
    while (toDo.contains(step) && toDo.peek() != step) {
      toDo.addLast(toDo.remove()); // what was passed over can still be done later
    }
    if (toDo.peek() != step) {
      toDo.addFirst(step);
    }
    begun.add(step);
    last = Optional.of(step);
    progress = Words.say("record.step.begun");
    coach.begin(step, atS);
    marks.accept(step);
    says.accept(name(step) + ": " + Words.say("record.do." + step.word()));
  }

  /** Something else was noted: the step under way is over and is judged. */
  void ended(double atS) {
    coach.end(atS).ifPresent(this::tell);
  }

  /** The step is over; the next one is offered. */
  void done(double atS) {
    marks.accept(MarkWord.DONE);
    ended(atS);
    next();
  }

  /** Leaves the step out, or puts it off. */
  void leave(boolean forLater, double atS) {
    if (coach.step().isPresent()) {
      marks.accept(MarkWord.DONE);
      coach.end(atS);
    }
    Optional<MarkWord> left = Optional.ofNullable(toDo.poll());
    left.ifPresent(step -> says.accept(Words.say("record.step.skipped", name(step))));
    left.filter(step -> forLater).ifPresent(toDo::addLast);
    next();
  }

  /** A step was begun by mistake; it is still to be done. */
  void dropped(MarkWord step, double atS) {
    if (coach.step().filter(step::equals).isPresent()) {
      coach.end(atS);
    }
  }

  void again(double atS) {
    last.or(() -> Optional.ofNullable(toDo.peek())).ifPresent(step -> begin(step, atS));
  }

  /** Balls are struck: what is left is named once, and no longer asked for. */
  void strike() {
    if (!toDo.isEmpty()) {
      List<MarkWord> left = new ArrayList<>(toDo);
      toDo.clear();
      says.accept(
          Words.say(
              "record.steps.left",
              left.stream()
                  .map(step -> TypedLine.number(step) + " " + name(step))
                  .collect(Collectors.joining(", "))));
    }
  }

  /** Looks at the step under way. */
  void look(double nowS) {
    Optional<StepNews> news = coach.look(nowS);
    news.ifPresent(this::tell);
    if (news.filter(n -> n.what() == StepNews.What.DONE).isPresent()) {
      marks.accept(MarkWord.DONE);
      next();
    }
  }

  private void tell(StepNews news) {
    switch (news.what()) {
      case HOLDING -> progress = Words.say("record.step.held", news.heldS());
      case AGAIN -> {
        progress = Words.say("record.step.begun");
        boolean isOver = coach.step().isEmpty();
        Reason why = news.result().why();
        says.accept(
            isOver && why.isNone()
                ? Words.say("record.step.broken-off", name(news.step()))
                : Words.say(
                    isOver ? "record.step.undone" : "record.step.again",
                    name(news.step()),
                    Words.inUse().text(why)));
      }
      case DONE -> {
        toDo.remove(news.step());
        says.accept(Words.say("record.step.done", name(news.step())));
      }
    }
  }
}
