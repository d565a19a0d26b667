package steadyturn.cli.command.lesson;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import steadyturn.analysis.compare.Comparison;
import steadyturn.analysis.compare.GroupComparison;
import steadyturn.analysis.compare.LessonSwing;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.compare.SwingGroup;
import steadyturn.analysis.compare.SwingPair;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.cli.lesson.FormatChoice;
import steadyturn.cli.lesson.FormatChoice.Format;
import steadyturn.cli.lesson.LessonPaths;
import steadyturn.cli.lesson.Lessons;
import steadyturn.cli.lesson.MeasureChoice;
import steadyturn.cli.lesson.Pages;
import steadyturn.cli.output.json.ComparisonJson;
import steadyturn.cli.output.json.PairJson;
import steadyturn.cli.output.table.ComparisonTable;
import steadyturn.cli.output.table.PairTable;
import steadyturn.cli.page.ComparisonCard;
import steadyturn.cli.page.reader.LengthUnits;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.words.ClubName;
import steadyturn.cli.words.Words;
import steadyturn.ingest.sample.Player;

/** Says whether groups of swings differ by more than the player's own spread. */
@Command(name = "compare", sortOptions = false)
public final class CompareCommand implements Callable<Integer> {

  enum By {
    CLUB,
    LESSON;

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  private static final AnalysisSettings WITHOUT_CURVES =
      AnalysisSettings.defaults().withoutCurves();

  @Mixin private Console console;

  @Mixin private LessonPaths paths;

  @Option(names = "--by", paramLabel = "WHAT")
  private By by = By.CLUB;

  @Option(names = "--swings", paramLabel = "A,B")
  private Optional<String> pair = Optional.empty();

  @Mixin private GroupChoice choice;

  @Mixin private MeasureChoice measures;

  @Mixin private FormatChoice formatChoice;

  @Option(names = "--units", paramLabel = "UNITS")
  private LengthUnits units = LengthUnits.METRIC;

  @Option(names = "--out", paramLabel = "DIR")
  private Path out = Path.of("");

  @Override
  public Integer call() throws IOException {
    measures.check(console);
    if (pair.isPresent()) {
      return twoSwings(pair.get(), formatChoice.among(console, Format.TABLE, Format.JSON));
    }
    return groups(formatChoice.among(console, Format.TABLE, Format.JSON, Format.HTML));
  }

  private int groups(Format format) throws IOException {
    Lessons lessons = paths.lessons(console);
    Gathered gathered = Gathered.of(lessons, WITHOUT_CURVES);
    Map<String, List<LessonSwing>> groups = new LinkedHashMap<>();
    for (LessonSwing swing : gathered.swings()) {
      if (swing.swing().kind() == SwingKind.HIT && swing.swing().counts()) {
        groups.computeIfAbsent(name(swing), key -> new ArrayList<>()).add(swing);
      }
    }
    List<SwingGroup> all = new ArrayList<>();
    groups.forEach((name, members) -> all.add(new SwingGroup(name, members)));
    List<SwingGroup> swings =
        by == By.LESSON ? choice.ofLessons(all, gathered, console) : choice.ofClubs(all, console);
    if (swings.size() < 2) {
      console.warn(
          swings.isEmpty()
              ? Words.say("compare.none")
              : Words.say("compare.one-group", List.of(swings.get(0).name())));
      return Failures.FAILED;
    }
    if (gathered.players().size() > 1) {
      console.warn(Words.say("compare.players", gathered.players().size()));
    }
    List<MeasureAt> looks =
        measures.looks(swings.stream().flatMap(group -> group.swings().stream()).toList());
    if (looks.isEmpty()) {
      return nothingToCompare();
    }
    Comparison comparison = GroupComparison.compare(swings, looks);
    switch (format) {
      case TABLE -> ComparisonTable.write(comparison, g -> inFull(g, gathered), console.out());
      case JSON ->
          ComparisonJson.write(
              comparison, by.toString(), gathered.madeBy(WITHOUT_CURVES), console.out());
      default -> card(comparison, swings, gathered);
    }
    return lessons.allWell() ? Failures.DONE : Failures.FAILED;
  }

  private void card(Comparison comparison, List<SwingGroup> groups, Gathered gathered)
      throws IOException {
    if (gathered.players().size() > 1) {
      throw console.wrongUsage("a card is about one player; name the folder of one");
    }
    Player player = gathered.players().iterator().next();
    List<ComparisonCard.Side> sides =
        groups.stream()
            .map(g -> new ComparisonCard.Side(g, inFull(g.name(), gathered), marks(g)))
            .toList();
    Set<String> lessons = new LinkedHashSet<>();
    groups.forEach(g -> g.swings().forEach(s -> lessons.add(gathered.lessons().get(s.lesson()))));
    String html =
        ComparisonCard.html(
            comparison,
            sides,
            lessons,
            player,
            units,
            Words.inUse(),
            gathered.madeBy(WITHOUT_CURVES));
    String name = "sub-" + player.id() + "_compare-" + by + ".html";
    console.out().println(new Pages(out, console).write(name, html));
  }

  private Map<String, String> marks(SwingGroup group) {
    return by == By.CLUB ? ClubName.of(group.name()).marks() : Map.of();
  }

  private String inFull(String group, Gathered gathered) {
    return by == By.CLUB
        ? ClubName.of(group).inFull(Words.inUse())
        : gathered.lessons().getOrDefault(group, group);
  }

  private int twoSwings(String numbers, Format format) throws IOException {
    List<Path> folders = paths.all();
    if (!numbers.matches("[0-9]{1,6},[0-9]{1,6}") || folders.size() > 2) {
      throw console.wrongUsage("--swings takes two numbers, such as 3,7, and one PATH or two");
    }
    int one = Integer.parseInt(numbers.split(",", -1)[0]);
    int other = Integer.parseInt(numbers.split(",", -1)[1]);
    Lessons first = Lessons.under(folders.subList(0, 1), console);
    Gathered gathered = Gathered.of(first, WITHOUT_CURVES);
    List<LessonSwing> all = new ArrayList<>(gathered.swings());
    LessonSwing a = numbered(one, all, folders.get(0));
    LessonSwing b;
    boolean well = first.allWell();
    if (folders.size() == 2) {
      Lessons second = Lessons.under(folders.subList(1, 2), console);
      Gathered others = Gathered.of(second, WITHOUT_CURVES);
      List<LessonSwing> more = others.swings();
      gathered.units().addAll(others.units());
      b = numbered(other, more, folders.get(1));
      more.stream().filter(each -> !all.contains(each)).forEach(all::add);
      well &= second.allWell();
    } else {
      b = numbered(other, all, folders.get(0));
    }
    List<MeasureAt> looks = measures.looks(List.of(a, b));
    if (looks.isEmpty()) {
      return nothingToCompare();
    }
    SwingPair compared = SwingPair.of(a, b, all, looks);
    if (format == Format.JSON) {
      PairJson.write(compared, gathered.madeBy(WITHOUT_CURVES), console.out());
    } else {
      PairTable.write(compared, console.out());
    }
    return well ? Failures.DONE : Failures.FAILED;
  }

  private int nothingToCompare() {
    console.warn(Words.say("compare.no-value"));
    return Failures.FAILED;
  }

  private LessonSwing numbered(int number, List<LessonSwing> swings, Path folder) {
    List<LessonSwing> found =
        swings.stream().filter(each -> each.swing().number() == number).toList();
    if (found.isEmpty()) {
      throw console.wrongUsage("there is no swing %s in %s", number, folder);
    }
    if (found.size() > 1) {
      throw console.wrongUsage(
          "%s recordings in %s have a swing %s; name the motion table of one",
          found.size(), folder, number);
    }
    return found.get(0);
  }

  private String name(LessonSwing each) {
    if (by == By.LESSON) {
      return each.lesson();
    }
    return each.swing().club().isBlank() ? Words.say("page.any-club") : each.swing().club();
  }
}
