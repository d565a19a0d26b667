package steadyturn.cli.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import steadyturn.analysis.compare.Comparison;
import steadyturn.analysis.compare.GroupComparison;
import steadyturn.analysis.compare.LessonSwing;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.compare.SwingGroup;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.cli.report.ComparisonJson;
import steadyturn.cli.report.ComparisonTable;
import steadyturn.ingest.recording.Session;

/** Says whether groups of swings differ by more than the player's own spread. */
@Command(
    name = "compare",
    description = {
      "Says whether clubs or lessons differ by more than this player's own spread: means,",
      "differences with their 95 %% range, and in words: real, not shown, the same within a margin."
    },
    footer = {
      "",
      "Turn to slide is compared as slide per turn and share of turn, which behave where the slide",
      "is near zero. Practice swings are left out."
    },
    sortOptions = false)
final class CompareCommand implements Callable<Integer> {

  enum By {
    CLUB,
    LESSON;

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  enum Format {
    TABLE,
    JSON;

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  @Mixin private Console console;

  @Parameters(
      arity = "1..*",
      paramLabel = "PATH",
      description = "An archive, a player's or a lesson's folder, or one motion table.")
  private List<Path> paths = List.of();

  @Option(
      names = "--by",
      paramLabel = "WHAT",
      description = "What makes a group: club or lesson. Default: club.")
  private By by = By.CLUB;

  @Option(
      names = "--measure",
      paramLabel = "ID",
      description = {
        "A measure to compare, such as pelvis.turn, at all positions, or pelvis.turn@top at one.",
        "May be given several times. Default: turn, slide, slide per turn and share of turn at top",
        "and impact, release and tempo ratio. Fewer measures show smaller differences."
      })
  private List<String> measures = List.of();

  @Option(
      names = "--format",
      paramLabel = "FORMAT",
      description = "table for people or json for programs. Default: table.")
  private Format format = Format.TABLE;

  private final Map<String, List<LessonSwing>> groups = new LinkedHashMap<>();

  @Override
  public Integer call() throws IOException {
    List<List<String>> wanted = measures.stream().map(this::measureAndPosition).toList();
    Lessons lessons = Lessons.under(paths, console);
    lessons.each(lesson -> gather(lesson, lessons));
    if (groups.size() < 2) {
      console.warn(
          "found "
              + (groups.isEmpty() ? "no full swings" : "one group only, " + groups.keySet())
              + ". Note the clubs in the events file, or compare by lesson.");
      return Failures.FAILED;
    }
    List<SwingGroup> swings = new ArrayList<>();
    groups.forEach((name, members) -> swings.add(new SwingGroup(name, members)));
    List<MeasureAt> looks = wanted.isEmpty() ? defaults() : looks(wanted);
    if (looks.isEmpty()) {
      console.warn("no swing has a value to compare; ./steadyturn analyze tells why");
      return Failures.FAILED;
    }
    Comparison comparison = GroupComparison.withDefaults().compare(swings, looks);
    switch (format) {
      case TABLE -> ComparisonTable.write(comparison, console.out());
      case JSON -> ComparisonJson.write(comparison, by.toString(), console.out());
    }
    return lessons.allWell() ? Failures.DONE : Failures.FAILED;
  }

  private void gather(Session lesson, Lessons lessons) {
    for (LessonResult result : AnalyzeCommand.analyze(lesson, lessons)) {
      for (SwingResult swing : result.swings()) {
        if (swing.kind() == SwingKind.HIT) {
          groups
              .computeIfAbsent(name(lesson, swing), key -> new ArrayList<>())
              .add(new LessonSwing(lesson.id(), swing));
        }
      }
    }
  }

  private String name(Session lesson, SwingResult swing) {
    if (by == By.LESSON) {
      return lesson.id();
    }
    return swing.club().isBlank() ? "club not noted" : swing.club();
  }

  private List<String> measureAndPosition(String words) {
    List<String> parts = List.of(words.split("@", 2));
    if (Arrays.stream(Measure.values()).noneMatch(m -> m.id().equals(parts.get(0)))) {
      throw console.wrongUsage("there is no measure \"" + parts.get(0) + "\"");
    }
    if (parts.get(0).equals(Measure.PELVIS_TURN_TO_SLIDE.id())) {
      throw console.wrongUsage(
          "pelvis.turn-to-slide has no bound where slide is near zero; compare"
              + " pelvis.slide-per-turn or pelvis.turn-share");
    }
    return parts;
  }

  private List<MeasureAt> defaults() {
    return MeasureAt.defaults().stream()
        .filter(what -> given().anyMatch(each -> each.equals(what)))
        .toList();
  }

  /** Every measure and position of which a swing has a value. */
  private Stream<MeasureAt> given() {
    return groups.values().stream()
        .flatMap(List::stream)
        .flatMap(s -> s.swing().measures().stream())
        .filter(v -> v.given() && v.measure() != Measure.PELVIS_TURN_TO_SLIDE)
        .map(v -> new MeasureAt(v.measure(), v.at()));
  }

  /** A measure without a position stands for all positions at which a swing has it. */
  private List<MeasureAt> looks(List<List<String>> wanted) {
    return wanted.stream()
        .flatMap(
            parts ->
                given()
                    .filter(what -> what.measure().id().equals(parts.get(0)))
                    .filter(what -> parts.size() == 1 || what.at().equals(parts.get(1))))
        .distinct()
        .toList();
  }
}
