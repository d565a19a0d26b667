package steadyturn.cli.output.table;

import static steadyturn.cli.words.Words.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import steadyturn.analysis.coach.Advice;
import steadyturn.analysis.coach.Evidence;
import steadyturn.analysis.coach.RuleFinding;
import steadyturn.analysis.coach.teaching.Drill;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.words.PlainWords;

/**
 * The answer first: what to work on, by what it was seen, and the drill with its goal.
 *
 * @param club the club it rests on, or an empty string
 * @param drill the drill that is given; empty without a finding
 */
public record WorkOn(String club, Advice advice, Optional<Drill> drill) {

  List<String> lines() {
    List<String> lines = new ArrayList<>();
    String of = club.isEmpty() ? say("table.no-club") : club;
    if (advice.priority().isPresent()) {
      RuleFinding finding = advice.priority().get();
      named(lines, "work.on", say("work.finding", name(finding), advice.swings(), of));
      named(lines, "work.seen", seen(finding));
      drill.ifPresent(d -> named(lines, "work.drill", goal(d)));
      return lines;
    }
    String nothing = advice.swings() == 0 ? "page.no-swing" : "work.nothing";
    named(lines, "work.on", say(nothing, advice.swings(), of));
    advice.open().stream()
        .findFirst()
        .ifPresent(open -> named(lines, "work.open", WorkOn.open(open)));
    if (!advice.good().isEmpty()) {
      named(
          lines,
          "work.good",
          advice.good().stream()
              .map(g -> say("good." + g.rule().name() + ".player"))
              .collect(Collectors.joining(" ")));
    }
    return lines;
  }

  private static void named(List<String> lines, String key, String sentence) {
    lines.addAll(Layout.beside(say(key), TableReport.NAME_WIDTH, sentence));
  }

  private static String name(RuleFinding finding) {
    return say("finding." + finding.rule().name() + ".name");
  }

  private static String open(RuleFinding finding) {
    return finding.moreSwings().isPresent()
        ? say("page.open.more", name(finding), finding.moreSwings().getAsInt())
        : say("page.open.error", name(finding));
  }

  private static String seen(RuleFinding finding) {
    return finding.evidence().stream().map(WorkOn::seen).collect(Collectors.joining("; "));
  }

  private static String seen(Evidence e) {
    Measure measure = e.need().what().measure();
    String name = at(PlainWords.of(measure), e.need().what().at());
    return say(
        "work.value",
        e.need().ofSpread() ? say("page.spread-of", name) : name,
        Figure.withUnit(e.value(), measure),
        Figure.nearest(e.low(), measure),
        Figure.nearest(e.high(), measure),
        Figure.nearest(e.limit().value(), measure));
  }

  private static String at(String name, String at) {
    return at.isEmpty() ? name : name + " " + say("table.at.positions", PlainWords.keyPosition(at));
  }

  private static String goal(Drill drill) {
    Measure measure = drill.judgedBy().measure();
    String name = say("drill." + drill.name() + ".name");
    return drill.hasNumber()
        ? say(
            "drills.head",
            name,
            at(PlainWords.of(measure), drill.judgedBy().at()),
            Figure.nearest(drill.low(), measure),
            Figure.withUnit(drill.high(), measure))
        : name;
  }
}
