package steadyturn.cli.command.lab;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import steadyturn.analysis.coach.teaching.Drill;
import steadyturn.analysis.compare.ErrorSplit;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.compare.LessonSwing;
import steadyturn.analysis.compare.SwingGroup;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.page.Page;
import steadyturn.cli.page.Sheet;
import steadyturn.cli.page.paper.Html;
import steadyturn.cli.page.reader.Audience;
import steadyturn.cli.page.reader.LengthUnits;
import steadyturn.cli.page.reader.Letter;
import steadyturn.cli.words.Words;

/**
 * Reads finished pages as a person would, and says what in them contradicts something else there.
 * It knows the sentences and the numbers on the page, not the rules behind them.
 */
final class PageJudge {

  /** What cannot stand beside one another: something wrong, and the praise of the same thing. */
  private static final Map<String, List<String>> OPPOSITES =
      Map.of(
          "steady-centre", List.of("slide-for-turn", "slides-away", "centre-off"),
          "full-turn", List.of("little-turn", "turn-cut-short"),
          "comes-forward", List.of("stays-back", "pelvis-behind"),
          "keeps-angle", List.of("cast", "early-release"),
          "calm-tempo", List.of("quick-back"),
          "same-each-time", List.of("uneven-turn"));

  private static final Pattern LIMIT =
      Pattern.compile("\\(([−.\\d]+) to ([−.\\d]+)\\); limit ([−.\\d]+)");
  private static final Pattern PIN = Pattern.compile("turned about, ([.\\d]+) cm off");
  private static final Pattern PIVOT =
      Pattern.compile("(?i)pivot, from the middle of the hips(?:<[^>]*>| at the top)*(\\d+)\\D");
  private static final Pattern LINE =
      Pattern.compile(
          "<line x1=\"([-.\\d]+)\" y1=\"([-.\\d]+)\" x2=\"([-.\\d]+)\" y2=\"([-.\\d]+)\"");

  /** Nearer than this a picture of the goal shows what is there already, px. */
  private static final double SAME_PX = 3;

  /** The picture says it in half centimetres. */
  private static final double PIN_MM = 3;

  private final Words words = Words.english();

  /** All complaints about both pages of a lesson. */
  List<String> complaints(Sheet sheet) {
    List<String> all = new ArrayList<>();
    for (Audience audience : Audience.values()) {
      String html = Page.html(sheet, audience, LengthUnits.METRIC, words, Letter.NONE);
      ofPage(html).forEach(c -> all.add(audience + ": " + c));
    }
    reached(sheet).forEach(all::add);
    return all;
  }

  /** What a page says and denies. */
  List<String> ofPage(String html) {
    List<String> all = new ArrayList<>();
    OPPOSITES.forEach(
        (good, wrongs) ->
            wrongs.stream()
                .filter(wrong -> says(html, "good." + good + ".player") && saysWrong(html, wrong))
                .forEach(wrong -> all.add(good + " beside " + wrong)));
    boolean isFault = all(html, "finding.", ".aim") || all(html, "finding.", ".teacher");
    for (String nothing : List.of("page.nothing", "page.keep", "page.drill.none")) {
      if (isFault && html.contains(">" + escaped(nothing) + "<")) {
        all.add("a fault, and " + nothing);
      }
    }
    if (all(html, "good.", ".player") && says(html, "page.good.none")) {
      all.add("something good, and nothing good");
    }
    limits(html, all);
    pin(html, all);
    goal(html, all);
    return all;
  }

  private boolean saysWrong(String html, String wrong) {
    String seen =
        "<span>" + escaped("consequence." + wrong + ".teacher") + "</span> <em class=\"seen\"";
    return html.contains(seen)
        || Stream.of("name", "aim", "player", "teacher")
            .map(part -> "finding." + wrong + "." + part)
            .anyMatch(key -> says(html, key));
  }

  private boolean says(String html, String key) {
    return words.has(key) && html.contains(escaped(key));
  }

  private boolean all(String html, String begins, String ends) {
    return words.group(begins).keySet().stream()
        .anyMatch(key -> key.endsWith(ends) && says(html, key));
  }

  private String escaped(String key) {
    return Html.escaped(words.text(key));
  }

  /** A range as printed that holds the limit it is said to lie beyond. */
  private static void limits(String html, List<String> all) {
    Matcher found = LIMIT.matcher(html);
    while (found.find()) {
      double limit = number(found.group(3));
      if (number(found.group(1)) < limit && limit < number(found.group(2))) {
        all.add("beyond the limit, and not: " + found.group());
      }
    }
  }

  private static double number(String printed) {
    return Double.parseDouble(printed.replace('−', '-'));
  }

  /** The point turned about in the picture and in the table. */
  private static void pin(String html, List<String> all) {
    Matcher drawn = PIN.matcher(html);
    Matcher told = PIVOT.matcher(html);
    if (drawn.find() && told.find()) {
      double offMm = 10 * number(drawn.group(1)) - number(told.group(1));
      if (Math.abs(offMm) > PIN_MM) {
        all.add(
            "pin " + drawn.group(1) + " cm in the picture, " + told.group(1) + " mm in numbers");
      }
    }
  }

  /** Where to go drawn as what is there already. */
  private static void goal(String html, List<String> all) {
    List<double[]> now = lines(html, "hinge-now");
    List<double[]> goal = lines(html, "hinge-goal");
    double most = now.size() == goal.size() ? 0 : Double.POSITIVE_INFINITY;
    for (int i = 0; i < Math.min(now.size(), goal.size()); i++) {
      for (int k = 0; k < 4; k++) {
        most = Math.max(most, Math.abs(now.get(i)[k] - goal.get(i)[k]));
      }
    }
    if (!goal.isEmpty() && most < SAME_PX) {
      all.add("where to go is drawn as what is there already");
    }
  }

  /** The bars of a picture: not its arrow, its scale, nor the paper in an outlined bar. */
  private static List<double[]> lines(String html, String id) {
    int at = html.indexOf("aria-labelledby=\"" + id + "-title");
    if (at < 0) {
      return List.of();
    }
    List<double[]> lines = new ArrayList<>();
    Matcher found = LINE.matcher(html.substring(at, html.indexOf("</svg>", at)));
    while (found.find()) {
      double[] line = new double[4];
      for (int k = 0; k < 4; k++) {
        line[k] = number(found.group(k + 1));
      }
      if (lines.stream().noneMatch(l -> Arrays.equals(l, line))) {
        lines.add(line);
      }
    }
    return lines;
  }

  /** Drills whose goal, as printed for the player, their full swings have reached. */
  static List<String> reached(Sheet sheet) {
    SwingGroup swings =
        new SwingGroup("swings", sheet.swings().stream().map(s -> new LessonSwing("", s)).toList());
    List<String> all = new ArrayList<>();
    for (Drill drill : sheet.drillsToDo()) {
      Measure measure = drill.judgedBy().measure();
      double now =
          printed(GroupSummary.of(swings, drill.judgedBy(), ErrorSplit.defaults()).mean(), measure);
      if (drill.hasNumber()
          && printed(drill.low(), measure) <= now
          && now <= printed(drill.high(), measure)) {
        all.add("goal reached already: " + drill.name() + ", now " + now);
      }
    }
    return all;
  }

  /** To the steps of the player's page. */
  private static double printed(double value, Measure measure) {
    double step =
        switch (measure.unit()) {
          case "mm", "ms" -> 5;
          case "s" -> 0.01;
          case "1" -> 0.1;
          default -> 1;
        };
    return step * Math.rint(value / step);
  }
}
