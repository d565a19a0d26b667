package steadyturn.cli.page;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import steadyturn.analysis.coach.teaching.TeachingReader;
import steadyturn.analysis.compare.Comparison;
import steadyturn.analysis.compare.ComparisonRow;
import steadyturn.analysis.compare.ComparisonVerdict;
import steadyturn.analysis.compare.FurtherBalls;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.compare.SwingGroup;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.reading.MadeBy;
import steadyturn.cli.page.paper.Html;
import steadyturn.cli.page.paper.Origin;
import steadyturn.cli.page.reader.Audience;
import steadyturn.cli.page.reader.LengthUnits;
import steadyturn.cli.words.ComparisonWords;
import steadyturn.cli.words.Verdicts;
import steadyturn.cli.words.Words;
import steadyturn.ingest.sample.Player;

/** Writes a comparison of clubs or lessons as a card for the player: one file, nothing else. */
public final class ComparisonCard {

  /**
   * One of the groups that are compared.
   *
   * @param name in full
   * @param marks what was marked on the club, such as shaft, grip, length
   */
  public record Side(SwingGroup group, String name, Map<String, String> marks) {

    public Side {
      marks = new LinkedHashMap<>(marks);
    }
  }

  private final Comparison comparison;
  private final List<Side> sides;
  private final Player player;
  private final Words words;
  private final LengthUnits units;
  private final Amounts amounts;
  private final Html html = new Html();

  private ComparisonCard(
      Comparison comparison, List<Side> sides, Player player, LengthUnits units, Words words) {
    this.comparison = comparison;
    this.sides = sides;
    this.player = player;
    this.units = units;
    this.words = words;
    this.amounts = new Amounts(units, Audience.TEACHER, words);
  }

  /**
   * The whole file.
   *
   * @param lessons names of the lessons the swings come from
   */
  public static String html(
      Comparison comparison,
      List<Side> sides,
      Collection<String> lessons,
      Player player,
      LengthUnits units,
      Words words,
      MadeBy madeBy) {
    ComparisonCard card = new ComparisonCard(comparison, sides, player, units, words);
    card.document(lessons, madeBy);
    return card.html.toString();
  }

  private void document(Collection<String> lessons, MadeBy madeBy) {
    String title = text("card.title", player.id());
    html.begin(words.language(), title, "class", "teacher card").open("header");
    html.element("h1", title).element("p", String.join(" · ", lessons));
    html.list(sides.stream().map(this::hit)).close("header");
    html.open("section", "class", "one").element("h2", text("card.one"));
    html.element("p", answer(), "class", "big");
    html.list(rows(ComparisonVerdict.REAL).map(this::real)).close("section");
    pictures();
    html.open("div", "class", "side-by-side");
    told("card.same", ComparisonVerdict.SAME, this::same);
    told("card.small", ComparisonVerdict.REAL_BUT_SMALL, this::real);
    open();
    told("card.few", ComparisonVerdict.TOO_FEW_SWINGS, this::same);
    hitting();
    html.close("div");
    marks();
    numbers();
    html.open("footer").element("h2", text("page.cannot"));
    html.element("p", text("page.cannot.text")).element("p", text("card.read"));
    html.element("p", text("page.private"));
    Origin.write(madeBy, words, html);
    html.close("footer").end();
  }

  private String hit(Side side) {
    int balls = side.group().swings().size();
    return text(balls == 1 ? "page.swings.one" : "page.swings", balls, side.name());
  }

  private String answer() {
    long real = rows(ComparisonVerdict.REAL).count();
    int all = comparison.rows().size();
    return real == 0 ? text("card.nothing", all) : text("card.some", real, all);
  }

  private Stream<ComparisonRow> rows(ComparisonVerdict verdict) {
    return comparison.rows().stream().filter(row -> row.verdict() == verdict);
  }

  private interface Told {
    String of(ComparisonRow row);
  }

  private void told(String title, ComparisonVerdict verdict, Told sentence) {
    if (rows(verdict).findAny().isPresent()) {
      html.open("section").element("h2", text(title));
      html.list(rows(verdict).map(sentence::of)).close("section");
    }
  }

  private String real(ComparisonRow row) {
    Measure measure = row.what().measure();
    String first = mean(row.first(), measure);
    String second = mean(row.second(), measure);
    String by =
        row.difference()
            .map(d -> amounts.ranged(d.value(), d.low(), d.high(), measure))
            .orElseThrow();
    return text(
        "card.real", name(row.what()), first, name(row.first()), second, name(row.second()), by);
  }

  private String same(ComparisonRow row) {
    return text("card.line", name(row.what()), Verdicts.of(row, words)) + between(row);
  }

  /** What is not told yet, and what is nearest to an answer. */
  private void open() {
    List<ComparisonRow> open = rows(ComparisonVerdict.NOT_SHOWN).toList();
    if (open.isEmpty()) {
      return;
    }
    html.open("section").element("h2", text("card.open"));
    html.element("p", open.stream().map(this::openName).collect(Collectors.joining(", ")) + ".");
    open.stream()
        .filter(row -> balls(row) <= FurtherBalls.MOST)
        .min(Comparator.comparingInt(ComparisonCard::balls))
        .ifPresent(
            row ->
                html.element(
                    "p",
                    text(
                        "card.nearest",
                        openName(row),
                        balls(row),
                        amounts.amount(
                            row.further().orElseThrow().difference(), row.what().measure()))));
    html.close("section");
  }

  private String openName(ComparisonRow row) {
    return name(row.what()) + between(row);
  }

  private String between(ComparisonRow row) {
    return sides.size() < 3 ? "" : text("card.between", name(row.first()), name(row.second()));
  }

  private static int balls(ComparisonRow row) {
    return row.further()
        .map(more -> more.balls().orElse(Integer.MAX_VALUE))
        .orElse(Integer.MAX_VALUE);
  }

  private String mean(GroupSummary group, Measure measure) {
    return amounts.amount(group.mean(), measure);
  }

  /** The hips of each side from above, two beside one another. */
  private void pictures() {
    List<Html> drawn = new ArrayList<>();
    for (Side side : sides) {
      Sheet sheet = Sheet.of(player, side.group(), TeachingReader.shipped());
      HingePicture.now(new Pen(sheet, words, units, Audience.TEACHER), "hinge-" + drawn.size())
          .ifPresent(picture -> drawn.add(new Html().figure(picture, side.name(), "")));
    }
    if (drawn.size() > 1) {
      html.open("section", "class", "pictures").element("h2", text("card.pictures"));
      html.open("div", "class", "sides");
      drawn.forEach(html::part);
      html.close("div", "section");
    }
  }

  private void hitting() {
    List<String> told = new ArrayList<>();
    comparison.notices().forEach(notice -> told.add(words.text(notice)));
    told.addAll(new ComparisonWords(words, amounts::amount, this::inFull).drifts(comparison));
    html.open("section").element("h2", text("card.hitting"));
    html.list(told.stream()).close("section");
  }

  /** What the clubs are, side by side; left out where nothing was marked on any. */
  private void marks() {
    Set<String> keys =
        sides.stream()
            .flatMap(side -> side.marks().keySet().stream())
            .collect(Collectors.toCollection(LinkedHashSet::new));
    if (!keys.isEmpty()) {
      html.open("section").element("h2", text("card.marks"));
      html.table(
          text("card.marks.text"), Stream.concat(Stream.of(text("card.club")), keys.stream()));
      sides.forEach(
          side ->
              html.row(side.name(), keys.stream().map(key -> side.marks().getOrDefault(key, "–"))));
      html.endTable().close("section");
    }
  }

  private void numbers() {
    html.open("section").element("h2", text("card.numbers"));
    for (List<ComparisonRow> pair : pairs()) {
      GroupSummary first = pair.get(0).first();
      GroupSummary second = pair.get(0).second();
      html.table(
          text("card.numbers.text", name(first), name(second)),
          Stream.of(
              text("table.measure"),
              name(first),
              name(second),
              text("compare.difference"),
              text("progress.verdict"),
              text("compare.further.balls")));
      pair.forEach(this::numbers);
      html.endTable();
    }
    html.close("section");
  }

  private void numbers(ComparisonRow row) {
    Measure measure = row.what().measure();
    html.row(
        name(row.what()),
        Stream.of(
            mean(row.first(), measure),
            mean(row.second(), measure),
            row.difference()
                .map(d -> amounts.ranged(d.value(), d.low(), d.high(), measure))
                .orElse("–"),
            Verdicts.of(row, words),
            row.further().map(more -> ComparisonWords.balls(more, words)).orElse("–")));
  }

  private Collection<List<ComparisonRow>> pairs() {
    return comparison.rows().stream()
        .collect(
            Collectors.groupingBy(
                row -> List.of(row.first().group(), row.second().group()),
                LinkedHashMap::new,
                Collectors.toList()))
        .values();
  }

  private String name(GroupSummary group) {
    return inFull(group.group());
  }

  private String inFull(String group) {
    Predicate<Side> its = side -> side.group().name().equals(group);
    return sides.stream().filter(its).map(Side::name).findFirst().orElse(group);
  }

  private String name(MeasureAt what) {
    String measure = text("measure." + what.measure().id());
    return Pen.sentence(what.at().isEmpty() ? measure : measure + " " + text("at." + what.at()));
  }

  private String text(String key, Object... values) {
    return words.text(key, values);
  }
}
