package steadyturn.cli.command.mat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.coach.teaching.Drill;
import steadyturn.analysis.coach.teaching.Need;
import steadyturn.analysis.coach.teaching.Rule;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.cli.output.json.Json;
import steadyturn.cli.words.Words;
import steadyturn.ingest.reason.Reason;

/** What a lesson may be for: the teacher's findings, each with the measure that shows it. */
record Goals(Teaching teaching) {

  private static final MeasureAt USUAL = new MeasureAt(Measure.PELVIS_TURN_SHARE, "top");

  Optional<Rule> named(String name) {
    return teaching.findings().stream().filter(rule -> rule.name().equals(name)).findFirst();
  }

  /** The measure that is shown first. */
  MeasureAt main(String goal) {
    return named(goal).map(rule -> rule.when().get(0).what()).orElse(USUAL);
  }

  /** The drills for a goal, then all others. */
  List<Drill> drills(String goal) {
    List<Drill> drills = new ArrayList<>();
    named(goal).ifPresent(rule -> rule.drills().forEach(name -> drills.add(teaching.drill(name))));
    teaching.drills().stream().filter(drill -> !drills.contains(drill)).forEach(drills::add);
    return drills;
  }

  ObjectNode json(Rule rule) {
    Need first = rule.when().get(0);
    return Json.object()
        .put("name", rule.name())
        .put("aim", Words.say("finding." + rule.name() + ".aim"))
        .put("shows", rowName(first.what()));
  }

  /** A drill in words, with its cautions and the measure that judges it. */
  static ObjectNode json(Drill drill) {
    ObjectNode node =
        Json.object()
            .put("name", drill.name())
            .put("title", Words.say("drill." + drill.name() + ".name"))
            .put("do", Words.say("drill." + drill.name() + ".do"))
            .put("feel", Words.say("drill." + drill.name() + ".feel"))
            .put("shows", rowName(drill.judgedBy()))
            .put("wanted", drill.reps());
    Json.list(
        node, "cautions", drill.cautions(), name -> TextNode.valueOf(Words.say("caution." + name)));
    if (drill.hasNumber()) {
      Measure measure = drill.judgedBy().measure();
      MeasureValue beside =
          MeasureValue.of(
              measure, drill.judgedBy().at(), drill.low(), 0, Grade.MEASURED, Reason.NONE);
      node.put("goal", BigFigure.goal(beside, drill.low(), drill.high()));
      if (measure == Measure.PELVIS_TURN) {
        node.put("low", drill.low()).put("high", drill.high());
      }
      node.put("isOfTurn", measure == Measure.PELVIS_TURN);
    }
    return node;
  }

  /** {@code slide at top}. */
  static String rowName(MeasureAt what) {
    return Words.say(
        "ball.row." + what.measure().id(),
        what.at().isEmpty() ? "" : Words.say("position." + what.at()));
  }
}
