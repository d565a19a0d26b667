package steadyturn.cli.command.mat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import steadyturn.analysis.live.StepCoach;
import steadyturn.analysis.live.StepNews;
import steadyturn.cli.command.live.LiveSession;
import steadyturn.cli.output.json.Json;
import steadyturn.cli.words.Words;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.sample.BodyPoint;

/** The wear steps of a lesson, each as it goes: begun, held, again because, done, left out. */
final class GuidedSteps {

  /** How a step stands. */
  enum Standing {
    OPEN,
    UNDER_WAY,
    AGAIN,
    DONE,
    LEFT
  }

  private final LiveSession session;
  private final StepCoach coach;
  private final List<MarkWord> all;
  private final Map<MarkWord, Standing> standings = new EnumMap<>(MarkWord.class);
  private final Consumer<MarkWord> done;
  private String why = "";
  private double heldS;

  /**
   * The steps that units can show.
   *
   * @param before steps that were done earlier in the lesson
   * @param done hears when one more is done
   */
  GuidedSteps(
      LiveSession session, List<BodyPoint> worn, List<String> before, Consumer<MarkWord> done) {
    this.session = session;
    this.done = done;
    coach = new StepCoach(session.lesson().samples(), session.lesson()::found);
    all = StepCoach.shownBy(worn);
    all.forEach(
        step -> standings.put(step, before.contains(step.word()) ? Standing.DONE : Standing.OPEN));
  }

  /** Begins one, or does it once more. */
  void begin(MarkWord step) {
    end();
    if (standings.containsKey(step)) {
      why = "";
      heldS = 0;
      standings.put(step, Standing.UNDER_WAY);
      coach.begin(step, session.nowS());
      session.recorder().markNow(step.word(), "", "");
    }
  }

  /** The player says that the step under way is done; it is judged. */
  void end() {
    if (coach.step().isPresent()) {
      session.recorder().markNow(MarkWord.DONE.word(), "", "");
      coach.end(session.nowS()).ifPresent(this::tell);
    }
  }

  void leave(MarkWord step) {
    if (coach.step().equals(Optional.of(step))) {
      session.recorder().markNow(MarkWord.DONE.word(), "", "");
      coach.end(session.nowS());
    }
    why = "";
    standings.replace(step, Standing.LEFT);
  }

  /** Looks at the step under way. */
  void look() {
    Optional<StepNews> news = coach.look(session.nowS());
    if (news.isPresent()) {
      tell(news.get());
      if (news.get().what() == StepNews.What.DONE) {
        session.recorder().markNow(MarkWord.DONE.word(), "", "");
      }
    }
  }

  private void tell(StepNews news) {
    heldS = news.heldS();
    switch (news.what()) {
      case HOLDING -> why = "";
      case AGAIN -> {
        why = PageUnits.of(news.result().why());
        boolean isOver = coach.step().isEmpty();
        standings.put(news.step(), isOver ? Standing.AGAIN : Standing.UNDER_WAY);
      }
      case DONE -> {
        why = "";
        standings.put(news.step(), Standing.DONE);
        done.accept(news.step());
      }
    }
  }

  boolean isDone(MarkWord step) {
    return standings.get(step) == Standing.DONE;
  }

  /** The first that is neither done nor left out, for the page; the table is a stage of its own. */
  ObjectNode json(boolean ofTable) {
    ObjectNode node = Json.object();
    List<MarkWord> shown =
        all.stream().filter(step -> (step == MarkWord.TABLE_REST) == ofTable).toList();
    Json.list(node, "all", shown, this::json);
    MarkWord next =
        coach
            .step()
            .or(() -> shown.stream().filter(s -> standings.get(s) == Standing.AGAIN).findFirst())
            .or(() -> shown.stream().filter(s -> standings.get(s) == Standing.OPEN).findFirst())
            .orElse(MarkWord.DONE);
    return node.put("now", next.word()).put("heldS", heldS).put("why", why);
  }

  private ObjectNode json(MarkWord step) {
    return Json.object()
        .put("word", step.word())
        .put("do", Words.say("record.do." + step.word()))
        .put(
            "is",
            standings.getOrDefault(step, Standing.OPEN).name().toLowerCase(java.util.Locale.ROOT));
  }
}
