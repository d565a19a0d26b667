package steadyturn.cli.command.mat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.cli.output.json.Json;
import steadyturn.cli.output.table.BallAnswer;
import steadyturn.cli.words.Words;

/**
 * All balls of a lesson, what was first shown of each, and what the teacher said of it. Each is
 * told whole; a value that later moved by more than half its half-width is marked as changed.
 */
final class BallBoard {

  private static final double CHANGED_PART = 0.5;
  private static final String GROUP = "balls";

  /** Two swings are farther apart, s. */
  private static final double SAME_S = 1;

  /** Hears what is said of a ball. */
  interface Said {
    void said(String id, SwingResult ball, JsonNode what);
  }

  private record Undo(String id, ObjectNode before) {}

  private final BallAnswer answer;
  private final LessonNotes notes;
  private final Said says;
  private final Map<String, SwingResult> balls = new LinkedHashMap<>();
  private final Map<String, ObjectNode> paths = new HashMap<>();
  private final Map<String, Map<MeasureAt, MeasureValue>> firstShown = new HashMap<>();
  private final Map<String, String> drills = new HashMap<>();
  private final Deque<Undo> undo = new ArrayDeque<>();
  private MeasureAt main;

  /**
   * A board without balls.
   *
   * @param says hears what was said of a ball, for its recording
   */
  BallBoard(BallAnswer answer, LessonNotes notes, MeasureAt main, Said says) {
    this.answer = answer;
    this.says = says;
    this.notes = notes;
    this.main = main;
  }

  synchronized void showFirst(MeasureAt what) {
    main = what;
  }

  static String id(String run, SwingResult ball) {
    return run + "_" + ball.number();
  }

  /** Takes a ball as it is known now; answers what is to be told of it. */
  synchronized ObjectNode take(String run, SwingResult ball, String drill) {
    String id = id(run, ball);
    BallPath.of(ball).ifPresent(path -> paths.put(id, path));
    balls.put(id, withoutCurves(ball));
    if (!drill.isEmpty()) {
      drills.put(id, drill);
    }
    Map<MeasureAt, MeasureValue> first = firstShown.computeIfAbsent(id, i -> new HashMap<>());
    for (MeasureAt what : told()) {
      what.orWhyNot(ball).ifPresent(value -> first.putIfAbsent(what, value));
    }
    return json(id);
  }

  private static SwingResult withoutCurves(SwingResult ball) {
    return new SwingResult(
        ball.number(),
        ball.club(),
        ball.kind(),
        ball.flags(),
        ball.events(),
        ball.measures(),
        List.of(),
        ball.note());
  }

  private List<MeasureAt> told() {
    List<MeasureAt> told = new ArrayList<>(List.of(main));
    BallAnswer.told().stream().filter(what -> !what.equals(main)).forEach(told::add);
    return told;
  }

  /** Every ball, in order. */
  synchronized List<ObjectNode> all() {
    return balls.keySet().stream().map(this::json).toList();
  }

  synchronized boolean has(String id) {
    return balls.containsKey(id);
  }

  private ObjectNode json(String id) {
    SwingResult ball = ball(id).orElseThrow();
    JsonNode said = notes.of(GROUP, id);
    ObjectNode node = Json.object().put("id", id).put("number", numberOf(id));
    node.put("title", BallAnswer.title(ball)).put("club", ball.club());
    node.put("kindWord", Words.say("table.kind." + ball.kind().word()));
    node.put("kind", drills.containsKey(id) ? "drill" : ball.kind().word());
    node.put("isDiscarded", isOut(id));
    node.put("isModel", id.equals(notes.kept("model")));
    node.put("note", said.path("note").asText());
    Json.list(node, "flags", BallAnswer.flags(ball), TextNode::valueOf);
    Json.list(node, "rows", answer.rows(told(), ball, before(id)), row -> row(id, ball, row));
    Optional.ofNullable(paths.get(id)).ifPresent(path -> node.set("path", path));
    return node;
  }

  /** Balls are counted through the whole lesson, however many runs it has. */
  private int numberOf(String id) {
    return 1 + new ArrayList<>(balls.keySet()).indexOf(id);
  }

  /** Balls before this one that the teacher lets count. */
  private List<SwingResult> before(String id) {
    List<SwingResult> before = new ArrayList<>();
    for (Map.Entry<String, SwingResult> each : balls.entrySet()) {
      if (each.getKey().equals(id)) {
        break;
      }
      if (!isOut(each.getKey()) && !drills.containsKey(each.getKey())) {
        before.add(each.getValue());
      }
    }
    return before;
  }

  private ObjectNode row(String id, SwingResult ball, BallAnswer.Row row) {
    MeasureValue value = row.what().orWhyNot(ball).orElseThrow();
    ObjectNode node =
        Json.object()
            .put("id", row.what().measure().id() + "@" + row.what().at())
            .put("name", row.name().strip())
            .put("figure", row.figure())
            .put("usual", BigFigure.usual(value, row.bounds().usual()))
            .put("goal", BigFigure.goal(value, row.bounds().over(), row.bounds().under()))
            .put("why", PageUnits.of(value.why()))
            .put("isEstimated", value.grade() == Grade.ESTIMATED);
    Json.range(node, "value", value.value(), value.low(), value.high());
    BigFigure.verdict(node, value, row.bounds().over(), row.bounds().under());
    ObjectNode big = BigFigure.of(value);
    MeasureValue first = firstShown.getOrDefault(id, Map.of()).getOrDefault(row.what(), value);
    String was = BigFigure.of(first).path("number").asText();
    node.put("was", was.equals(big.path("number").asText()) ? "" : was);
    node.set("big", big);
    return node.put("isChanged", isChanged(first, value));
  }

  /** Whether a value is no longer what was told: given or not, or moved by half its half-width. */
  static boolean isChanged(MeasureValue first, MeasureValue now) {
    if (first.given() != now.given()) {
      return true;
    }
    double half = (first.high() - first.low()) / 2;
    return first.given() && Math.abs(now.value() - first.value()) > CHANGED_PART * half;
  }

  /** Lets a ball count no more, or again. */
  synchronized ObjectNode discard(String id) {
    return say(id, said(id).put("discarded", !isOut(id)));
  }

  synchronized ObjectNode note(String id, String words) {
    return say(id, said(id).put("note", words));
  }

  /** Makes a ball the one that others are held against, or none where it was it. */
  synchronized List<ObjectNode> model(String id) {
    String was = notes.kept("model");
    notes.put("model", id.equals(was) ? "" : id);
    return List.of(was, id).stream().distinct().filter(this::has).map(this::json).toList();
  }

  /** Takes the last word about a ball back; empty where there is none. */
  synchronized Optional<ObjectNode> undo() {
    Optional<Undo> last = Optional.ofNullable(undo.pollLast());
    last.ifPresent(u -> keep(u.id, u.before));
    return last.map(u -> json(u.id));
  }

  private ObjectNode said(String id) {
    return notes.of(GROUP, id) instanceof ObjectNode its ? its.deepCopy() : Json.object();
  }

  private ObjectNode say(String id, ObjectNode what) {
    undo.addLast(new Undo(id, said(id)));
    keep(id, what);
    return json(id);
  }

  private void keep(String id, ObjectNode what) {
    notes.put(GROUP, id, what);
    ball(id).ifPresent(its -> says.said(id, its, what));
  }

  private boolean isOut(String id) {
    return notes.of(GROUP, id).path("discarded").asBoolean();
  }

  /** Which ball of a run began at an instant of it, s; 0 for none. */
  synchronized int numberAt(String run, double takeawayS) {
    return balls.entrySet().stream()
        .filter(each -> each.getKey().equals(id(run, each.getValue())))
        .filter(each -> Math.abs(each.getValue().timeS(SwingEvent.TAKEAWAY) - takeawayS) < SAME_S)
        .mapToInt(each -> numberOf(each.getKey()))
        .findFirst()
        .orElse(0);
  }

  /** The full swings of a run that the teacher lets count. */
  synchronized List<SwingResult> of(Optional<String> run) {
    return balls.entrySet().stream()
        .filter(each -> run.filter(r -> each.getKey().equals(id(r, each.getValue()))).isPresent())
        .filter(each -> !drills.containsKey(each.getKey()))
        .filter(each -> !isOut(each.getKey()))
        .map(Map.Entry::getValue)
        .toList();
  }

  synchronized Optional<SwingResult> ball(String id) {
    return Optional.ofNullable(balls.get(id));
  }
}
