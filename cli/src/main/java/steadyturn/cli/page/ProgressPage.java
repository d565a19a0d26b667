package steadyturn.cli.page;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import steadyturn.analysis.coach.LessonStep;
import steadyturn.analysis.coach.PlayerProgress;
import steadyturn.analysis.coach.teaching.Drill;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.compare.Comparison;
import steadyturn.analysis.compare.ComparisonRow;
import steadyturn.analysis.compare.GroupComparison;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.words.Words;

/** Writes a player's lessons as one HTML file that needs nothing else. */
public final class ProgressPage {

  private final PlayerProgress progress;
  private final Words words;
  private final Amounts amounts;
  private final Html html = new Html();

  private ProgressPage(PlayerProgress progress, Words words, LengthUnits units) {
    this.progress = progress;
    this.words = words;
    this.amounts = new Amounts(units, Audience.TEACHER, words);
  }

  /** The whole file. */
  public static String html(
      String player,
      String club,
      PlayerProgress progress,
      Teaching teaching,
      LengthUnits units,
      Words words) {
    ProgressPage page = new ProgressPage(progress, words, units);
    page.document(player, club, teaching);
    return page.html.toString();
  }

  /** What was given after each lesson, one sentence each, for page and terminal. */
  public static List<String> drills(PlayerProgress progress, Teaching teaching, LengthUnits units) {
    ProgressPage page = new ProgressPage(progress, Words.inUse(), units);
    return progress.steps().stream().map(step -> page.given(step, teaching)).toList();
  }

  private void document(String player, String club, Teaching teaching) {
    String title = text("progress.title", player);
    html.raw("<!DOCTYPE html>\n");
    html.open("html", "lang", words.language()).open("head");
    html.empty("meta", "charset", "utf-8");
    html.empty("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
    html.empty("link", "rel", "icon", "href", "data:,");
    html.element("title", title);
    html.open("style").raw(Page.style()).close("style").close("head");
    html.open("body").open("main").open("header").element("h1", title);
    html.element(
        "p",
        text(
            "progress.lessons",
            progress.steps().size(),
            club.isEmpty() ? text("page.any-club") : club));
    html.close("header");
    changes("progress.since-last", progress.sinceLast());
    changes("progress.since-first", progress.sinceFirst());
    means();
    html.open("section").element("h2", text("progress.drills")).open("ul");
    progress.steps().forEach(step -> html.element("li", given(step, teaching)));
    html.close("ul").open("div", "class", "care").element("h3", text("page.care")).open("ul");
    List.of("warm-up", "pain", "space").forEach(c -> html.element("li", text("caution." + c)));
    html.close("ul")
        .close("div")
        .close("section")
        .open("footer")
        .element("h2", text("page.cannot"));
    html.element("p", text("page.cannot.text")).element("p", text("page.private"));
    html.close("footer").close("main").close("body").close("html").raw("\n");
  }

  private void changes(String title, Optional<Comparison> changes) {
    if (changes.isEmpty()) {
      return;
    }
    html.open("section").element("h2", text(title));
    head(
        text("progress.caption"),
        List.of(
            text("table.measure"),
            text("table.at"),
            text("progress.change"),
            text("progress.detectable"),
            text("progress.verdict")));
    changes.get().rows().forEach(this::change);
    html.close("tbody").close("table").close("div").close("section");
  }

  private void change(ComparisonRow row) {
    Measure measure = row.what().measure();
    start(row.what());
    html.element(
        "td", row.difference().map(d -> ranged(d.value(), d.low(), d.high(), measure)).orElse("–"));
    html.element(
        "td", row.difference().map(d -> amounts.number(d.detectable(), measure)).orElse("–"));
    html.element("td", text("verdict." + row.verdict().word())).close("tr");
  }

  private void means() {
    html.open("section").element("h2", text("progress.means"));
    Stream<String> lessons = progress.steps().stream().map(this::label);
    head(
        text("progress.means.caption"),
        Stream.concat(Stream.of(text("table.measure"), text("table.at")), lessons).toList());
    for (MeasureAt what : progress.given()) {
      start(what);
      progress.steps().forEach(step -> html.element("td", mean(step, what)));
      html.close("tr");
    }
    html.close("tbody").close("table").close("div").close("section");
  }

  private String mean(LessonStep step, MeasureAt what) {
    GroupSummary m = PlayerProgress.mean(step, what);
    if (m.count() == 0) {
      return "–";
    }
    if (m.count() < GroupComparison.FEWEST_SWINGS) {
      return text("unit.about", amounts.amount(m.mean(), what.measure()));
    }
    double half = m.halfWidthOfMean();
    return ranged(m.mean(), m.mean() - half, m.mean() + half, what.measure());
  }

  private String given(LessonStep step, Teaching teaching) {
    Optional<Drill> drill =
        step.advice().priority().stream()
            .flatMap(finding -> finding.rule().drills().stream())
            .findFirst()
            .map(teaching::drill);
    return drill
        .map(
            d ->
                text(
                    "progress.given",
                    label(step),
                    text("drill." + d.name() + ".name"),
                    name(d.judgedBy()),
                    amounts.asSet(d.low(), d.judgedBy().measure()),
                    (amounts.asSet(d.high(), d.judgedBy().measure())
                            + " "
                            + amounts.unit(d.judgedBy().measure()))
                        .strip()))
        .orElseGet(() -> text("progress.given.none", label(step)));
  }

  private String label(LessonStep step) {
    String lesson = text("page.lesson", step.lesson());
    return step.date().isEmpty() ? lesson : lesson + ", " + step.date();
  }

  private String name(MeasureAt what) {
    String measure = text("measure." + what.measure().id());
    return what.at().isEmpty() ? measure : measure + " " + text("at." + what.at());
  }

  private void head(String caption, List<String> columns) {
    html.open("div", "class", "wide", "tabindex", "0").open("table");
    html.element("caption", caption).open("thead").open("tr");
    columns.forEach(c -> html.element("th", c, "scope", "col"));
    html.close("tr").close("thead").open("tbody");
  }

  private void start(MeasureAt what) {
    html.open("tr").element("th", text("measure." + what.measure().id()), "scope", "row");
    html.element("td", what.at().isEmpty() ? "" : text("at." + what.at()));
  }

  private String ranged(double value, double low, double high, Measure measure) {
    return amounts.ranged(value, low, high, measure, text("unit.range"));
  }

  private String text(String key, Object... values) {
    return words.text(key, values);
  }
}
