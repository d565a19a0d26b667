package steadyturn.cli.command.mat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.coach.Advice;
import steadyturn.analysis.coach.RuleFinding;
import steadyturn.analysis.coach.teaching.GoodBand;
import steadyturn.analysis.coach.teaching.Rule;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.compare.ErrorSplit;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.compare.LessonSwing;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.compare.SwingGroup;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.cli.command.lesson.FinishedLesson;
import steadyturn.cli.output.json.Json;
import steadyturn.cli.page.Sheet;
import steadyturn.cli.page.reader.Audience;
import steadyturn.cli.page.reader.Letter;
import steadyturn.cli.words.Words;
import steadyturn.fusion.wear.pelvis.LeverArm;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.Player;

/** The end of a lesson: what {@code analyze} says of it, and the pages to send. */
record Closing(FinishedLesson lesson, Teaching teaching, Players players, LessonNotes notes) {

  private static final double USUAL_HALF_MM = 86.5;

  /** So few balls have no mean that says more than each of them. */
  private static final int FEWEST = 2;

  /** Half the distance between the hip centres, for the drawing. */
  static double halfHipsMm(Player player) {
    return player.pelvisWidthMm().isPresent()
        ? LeverArm.hipHalfDistanceMm(player.pelvisWidthMm().getAsDouble())
        : USUAL_HALF_MM;
  }

  ObjectNode json() {
    Optional<Advice> advice = lesson.sheet(teaching).map(Sheet::advice);
    Optional<RuleFinding> first = advice.flatMap(Advice::priority);
    ObjectNode node = Json.object();
    node.put("swings", swings().size());
    long left = swings().stream().filter(swing -> !swing.counts()).count();
    node.put("left", left == 0 ? "" : Words.inUse().counted("mat.closing.left", left));
    lesson.sheet(teaching).flatMap(this::about).ifPresent(its -> node.set("about", its));
    advice.map(this::relation).ifPresent(its -> node.put("relation", its));
    node.put(
        "work", first.map(f -> Words.say("finding." + f.rule().name() + ".player")).orElse(""));
    node.put("aim", first.map(f -> Words.say("finding." + f.rule().name() + ".aim")).orElse(""));
    node.put(
        "good",
        advice.stream()
            .flatMap(its -> its.good().stream())
            .findFirst()
            .map(f -> Words.say("good." + f.rule().name() + ".player"))
            .orElse(""));
    List<String> recordings = lesson.results().stream().map(run -> run.recording()).toList();
    return node.put("recordings", String.join(", ", recordings));
  }

  /** The mean of what the lesson was for, over the balls that the advice rests on. */
  private Optional<ObjectNode> about(Sheet sheet) {
    MeasureAt what = new Goals(teaching).main(notes.kept("goal"));
    if (sheet.swings().isEmpty()) {
      return Optional.empty();
    }
    List<LessonSwing> swings =
        sheet.swings().stream().map(swing -> new LessonSwing("", swing)).toList();
    GroupSummary group =
        GroupSummary.of(new SwingGroup("lesson", swings), what, ErrorSplit.defaults());
    if (group.count() < FEWEST) {
      return Optional.empty();
    }
    double sd = group.halfWidthOfMean() / MeasureValue.Z95;
    MeasureValue mean =
        MeasureValue.of(what.measure(), what.at(), group.mean(), sd, Grade.MEASURED, Reason.NONE);
    Optional<GoodBand> band = GoodBand.of(sheet.teaching(), what);
    double low = band.map(GoodBand::low).orElse(Double.NaN);
    double high = band.map(GoodBand::high).orElse(Double.NaN);
    ObjectNode node = Json.object();
    node.put("name", Words.say("mat.closing.about", Goals.rowName(what), group.count()));
    node.put("goal", BigFigure.goal(mean, low, high));
    BigFigure.verdict(node, mean, low, high);
    node.set("big", BigFigure.of(mean));
    return Optional.of(node);
  }

  /** What the advice has to do with what the lesson was for; empty where it was for nothing. */
  private String relation(Advice advice) {
    Optional<Rule> goal = new Goals(teaching).named(notes.kept("goal"));
    Optional<Rule> first = advice.priority().map(RuleFinding::rule);
    if (goal.isEmpty() || first.isEmpty()) {
      return "";
    }
    String name = goal.get().name();
    String is =
        first.get().name().equals(name)
            ? "same"
            : first.get().covers().contains(name)
                ? "part"
                : has(advice.further(), name)
                    ? "further"
                    : has(advice.open(), name) ? "open" : "gone";
    return Words.say("mat.closing.relation." + is);
  }

  private static boolean has(List<RuleFinding> findings, String name) {
    return findings.stream().anyMatch(its -> its.rule().name().equals(name));
  }

  /** The page for player or teacher. */
  Optional<String> page(String name) {
    Letter letter = new Letter(players.name(notes.kept("player")), "", notes.kept("words"));
    return switch (name) {
      case "player" -> lesson.page(teaching, Audience.PLAYER, letter);
      case "teacher" -> lesson.page(teaching, Audience.TEACHER, letter);
      default -> Optional.empty();
    };
  }

  List<SwingResult> swings() {
    return lesson.results().stream().flatMap(run -> run.swings().stream()).toList();
  }
}
