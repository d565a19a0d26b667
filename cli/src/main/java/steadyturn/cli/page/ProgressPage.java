package steadyturn.cli.page;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import steadyturn.analysis.coach.LessonStep;
import steadyturn.analysis.coach.PlayerProgress;
import steadyturn.analysis.coach.teaching.Drill;
import steadyturn.analysis.coach.teaching.GoodBand;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.compare.Comparison;
import steadyturn.analysis.compare.ComparisonRow;
import steadyturn.analysis.compare.ComparisonVerdict;
import steadyturn.analysis.compare.GroupComparison;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.compare.MeanDifference;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.reading.MadeBy;
import steadyturn.cli.page.paper.Html;
import steadyturn.cli.page.paper.Origin;
import steadyturn.cli.page.reader.Audience;
import steadyturn.cli.page.reader.LengthUnits;
import steadyturn.cli.words.Words;
import steadyturn.ingest.sample.Player;

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
      Player player,
      String club,
      PlayerProgress progress,
      Teaching teaching,
      LengthUnits units,
      Words words,
      MadeBy madeBy) {
    ProgressPage page = new ProgressPage(progress, words, units);
    page.document(player, club, teaching, madeBy);
    return page.html.toString();
  }

  /** What was given after each lesson, one sentence each, for page and terminal. */
  public static List<String> drills(PlayerProgress progress, Teaching teaching, LengthUnits units) {
    ProgressPage page = new ProgressPage(progress, Words.inUse(), units);
    return progress.steps().parallelStream().map(step -> page.given(step, teaching)).toList();
  }

  /** What changed from the first lesson to the last, one sentence each, for page and terminal. */
  public static List<String> told(PlayerProgress progress, Teaching teaching, LengthUnits units) {
    return new ProgressPage(progress, Words.inUse(), units).told(teaching, row -> true);
  }

  private List<String> told(Teaching teaching, Predicate<ComparisonRow> of) {
    ChangeWords change = new ChangeWords(words, amounts);
    return progress.overall().map(Comparison::rows).orElse(List.of()).stream()
        .filter(of)
        .filter(row -> row.difference().isPresent())
        .map(row -> change.of(row, GoodBand.of(teaching, row.what())))
        .toList();
  }

  private static boolean isReal(ComparisonRow row) {
    return row.verdict() == ComparisonVerdict.REAL;
  }

  private void document(Player player, String club, Teaching teaching, MadeBy madeBy) {
    String title = text("progress.title", player.id());
    String with = club.isEmpty() ? text("page.any-club") : club;
    html.begin(words.language(), title, "class", "teacher").open("header").element("h1", title);
    int lessons = progress.steps().size();
    String count = text(lessons == 1 ? "progress.lessons.one" : "progress.lessons", lessons, with);
    html.element("p", count).close("header");
    html.open("div", "class", "beside");
    answer(teaching);
    hips(player, teaching);
    html.close("div");
    lines(teaching);
    html.open("section").element("h2", text("progress.drills"));
    html.list(progress.steps().stream().map(step -> given(step, teaching))).close("section");
    html.open("div", "class", "changes");
    changes("progress.since-last", progress.sinceLast());
    changes("progress.since-first", progress.sinceFirst());
    html.close("div");
    means();
    html.open("section", "class", "care").element("h3", text("page.care"));
    html.list(Stream.of("warm-up", "pain", "space").map(caution -> text("caution." + caution)));
    html.close("section").open("footer").element("h2", text("page.cannot"));
    html.element("p", text("page.cannot.text")).element("p", text("page.private"));
    Origin.write(madeBy, words, html);
    html.close("footer").end();
  }

  /** What changed beyond doubt, and then what did not, in sentences. */
  private void answer(Teaching teaching) {
    List<String> real = told(teaching, ProgressPage::isReal);
    List<String> open = told(teaching, row -> !isReal(row));
    html.open("section", "class", "one").element("h2", text("progress.one"));
    if (real.isEmpty()) {
      html.element(
          "p", text(open.isEmpty() ? "progress.one-lesson" : "progress.none"), "class", "big");
    } else {
      html.element("p", real.get(0), "class", "big").list(real.stream().skip(1));
    }
    if (!open.isEmpty()) {
      html.element("h3", text("progress.open")).list(open.stream(), "class", "small");
    }
    html.close("section");
  }

  /** The hips of the first lesson and of the last over each other. */
  private void hips(Player player, Teaching teaching) {
    int lessons = progress.steps().size();
    if (lessons > 1) {
      Pen first = pen(progress.steps().get(0), player, teaching);
      Pen last = pen(progress.steps().get(lessons - 1), player, teaching);
      String caption =
          text(
              "progress.hips",
              label(progress.steps().get(0)),
              label(progress.steps().get(lessons - 1)));
      HingeInTime.over(first, last)
          .ifPresent(
              picture ->
                  html.open("section", "class", "pictures")
                      .element("h2", text("card.pictures"), "class", "unseen")
                      .figure(picture, "", caption)
                      .close("section"));
    }
  }

  private Pen pen(LessonStep step, Player player, Teaching teaching) {
    Sheet sheet = Sheet.of(player, PlayerProgress.group(step), teaching);
    return new Pen(sheet, words, amounts.units(), Audience.TEACHER);
  }

  private void lines(Teaching teaching) {
    ChangeWords change = new ChangeWords(words, amounts);
    html.open("section", "class", "pictures").element("h2", text("progress.lines"));
    html.open("div", "class", "figures");
    for (MeasureAt what : progress.given()) {
      String name = Pen.sentence(change.name(what));
      String means =
          progress.steps().stream()
              .map(step -> text("progress.at-lesson", label(step), mean(step, what)))
              .collect(Collectors.joining("; "));
      LessonLine line = LessonLine.of(progress, what, GoodBand.of(teaching, what));
      html.figure(line.draw(name, means, amounts, words), name, "");
    }
    html.close("div").element("p", text("progress.lines.text"), "class", "small");
    html.close("section");
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
    return step.date().isEmpty() ? lesson : lesson + ", " + words.day(step.date());
  }

  private String text(String key, Object... values) {
    return words.text(key, values);
  }
}
