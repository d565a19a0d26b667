package steadyturn.cli.page;

import java.util.Arrays;
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
import steadyturn.analysis.compare.MeanDifference;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.page.reader.Audience;
import steadyturn.cli.page.reader.LengthUnits;
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
    String with = club.isEmpty() ? text("page.any-club") : club;
    html.begin(words.language(), title).open("header").element("h1", title);
    html.element("p", text("progress.lessons", progress.steps().size(), with)).close("header");
    changes("progress.since-last", progress.sinceLast());
    changes("progress.since-first", progress.sinceFirst());
    means();
    html.open("section").element("h2", text("progress.drills"));
    html.list(progress.steps().stream().map(step -> given(step, teaching)));
    html.open("div", "class", "care").element("h3", text("page.care"));
    html.list(Stream.of("warm-up", "pain", "space").map(caution -> text("caution." + caution)));
    html.close("div", "section").open("footer").element("h2", text("page.cannot"));
    html.element("p", text("page.cannot.text")).element("p", text("page.private"));
    html.close("footer").end();
  }

  private void changes(String title, Optional<Comparison> changes) {
    if (changes.isPresent()) {
      html.open("section").element("h2", text(title));
      head("progress.caption", "progress.change", "progress.detectable", "progress.verdict");
      changes.get().rows().forEach(this::change);
      html.endTable().close("section");
    }
  }

  private void head(String caption, String... columns) {
    table(text(caption), Arrays.stream(columns).map(this::text));
  }

  private void table(String caption, Stream<String> columns) {
    html.table(caption, Stream.concat(Stream.of(text("table.measure"), text("table.at")), columns));
  }

  private void row(MeasureAt what, Stream<String> cells) {
    String at = what.at().isEmpty() ? "" : text("at." + what.at());
    html.row(text("measure." + what.measure().id()), Stream.concat(Stream.of(at), cells));
  }

  private void change(ComparisonRow row) {
    Measure measure = row.what().measure();
    Optional<MeanDifference> difference = row.difference();
    row(
        row.what(),
        Stream.of(
            difference.map(d -> amounts.ranged(d.value(), d.low(), d.high(), measure)).orElse("–"),
            difference.map(d -> amounts.number(d.detectable(), measure)).orElse("–"),
            text("verdict." + row.verdict().word())));
  }

  private void means() {
    html.open("section").element("h2", text("progress.means"));
    table(text("progress.means.caption"), progress.steps().stream().map(this::label));
    for (MeasureAt what : progress.given()) {
      row(what, progress.steps().stream().map(step -> mean(step, what)));
    }
    html.endTable().close("section");
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
    return amounts.ranged(m.mean(), m.mean() - half, m.mean() + half, what.measure());
  }

  private String given(LessonStep step, Teaching teaching) {
    return step.given(teaching)
        .map(drill -> given(step, drill))
        .orElseGet(() -> text("progress.given.none", label(step)));
  }

  private String given(LessonStep step, Drill drill) {
    MeasureAt by = drill.judgedBy();
    String measure = text("measure." + by.measure().id());
    return text(
        "progress.given",
        label(step),
        text("drill." + drill.name() + ".name"),
        by.at().isEmpty() ? measure : measure + " " + text("at." + by.at()),
        amounts.asSet(drill.low(), by.measure()),
        amounts.asSetWithUnit(drill.high(), by.measure()));
  }

  private String label(LessonStep step) {
    String lesson = text("page.lesson", step.lesson());
    return step.date().isEmpty() ? lesson : lesson + ", " + step.date();
  }

  private String text(String key, Object... values) {
    return words.text(key, values);
  }
}
