package steadyturn.cli.command.mat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.coach.teaching.Drill;
import steadyturn.analysis.coach.teaching.Need;
import steadyturn.analysis.coach.teaching.Rule;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.output.json.Json;
import steadyturn.cli.words.Words;

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

  /** {@code slide at top}. */
  static String rowName(MeasureAt what) {
    return Words.say(
        "ball.row." + what.measure().id(),
        what.at().isEmpty() ? "" : Words.say("position." + what.at()));
  }
}
