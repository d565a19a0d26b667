package steadyturn.cli.command.lab;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import steadyturn.analysis.lab.family.Half;
import steadyturn.analysis.lab.family.Situation;
import steadyturn.analysis.lab.mistake.Mistake;
import steadyturn.analysis.lab.study.Studies;
import steadyturn.analysis.lab.study.StudyRow;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.terminal.Progress;
import steadyturn.ingest.lab.Speech;

/** Counts how wrong the results are on simulated lessons of known truth. */
@Command(name = "accuracy", sortOptions = false)
public final class AccuracyCommand implements Callable<Integer> {

  @Mixin private Console console;

  @Option(names = "--runs", paramLabel = "N")
  private int runs = 200;

  @Option(names = "--case", paramLabel = "NAME")
  private Optional<String> only = Optional.empty();

  @Option(names = "--list")
  private boolean list;

  @Option(names = "--seed", paramLabel = "N")
  private long seed = 1000;

  @Option(names = "--write", paramLabel = "FILE")
  private Optional<Path> page = Optional.empty();

  @Option(names = "--dropouts", paramLabel = "N")
  private int dropouts;

  @Option(names = "--two-ways", paramLabel = "N")
  private int twoWays;

  @Option(names = "--mistakes", paramLabel = "N")
  private int mistakes;

  @Option(names = "--speak", paramLabel = "PROTOCOL")
  private Speech speech = Speech.BINARY_FRAME;

  @Option(names = "--comparisons", paramLabel = "N")
  private int comparisons;

  @Option(names = "--pages", paramLabel = "N")
  private int pages;

  @Option(names = "--balls", paramLabel = "N")
  private int balls = 10;

  @Option(names = "--ports")
  private boolean atPorts;

  @Option(names = "--on", paramLabel = "PATH")
  private List<Path> on = List.of();

  @Option(names = "--families", paramLabel = "tuning|judging")
  private Optional<Half> families = Optional.empty();

  @Mixin private MarkerCheck against;

  @Option(names = "--count", paramLabel = "FILE")
  private Path count = Path.of("docs/judging-runs.md");

  @Override
  public Integer call() throws IOException {
    if (page.isPresent() && only.isPresent()) {
      throw console.wrongUsage("--write puts all tables into the page; leave out --case");
    }
    if (against.isAsked()) {
      return against.run(console);
    }
    if (families.isPresent()) {
      return judgeFamilies(families.get());
    }
    if (mistakes > 0) {
      return doMistakes();
    }
    if (comparisons > 0) {
      return new ComparisonScan(console).run(comparisons, seed);
    }
    if (pages > 0) {
      return new PageScan(console, balls).run(pages, seed, only);
    }
    if (twoWays > 0) {
      return new TwoWaysScan(console).run(twoWays, seed, atPorts, speech);
    }
    if (dropouts > 0) {
      return new DropoutScan(console, on).run(dropouts, seed);
    }
    List<Studies.Study> studies = chosen();
    if (list) {
      studies.forEach(s -> console.out().printf(Locale.ROOT, "%-18s %s%n", s.name(), s.what()));
      return Failures.DONE;
    }
    if (runs < 1) {
      throw console.wrongUsage("--runs must be 1 or more, was " + runs);
    }
    int total = studies.stream().mapToInt(s -> s.lessons(runs)).sum();
    Progress progress = console.progress(total);
    StringBuilder tables = new StringBuilder();
    boolean reached = true;
    for (Studies.Study study : studies) {
      List<StudyRow> rows =
          study.runner().run(study.lessons(runs), seed, () -> progress.step(study.name()));
      progress.clear();
      String table = StudyTable.of(study.name(), study.what(), study.lessons(runs), rows);
      console.out().println(table);
      console.out().flush();
      tables.append(table).append('\n');
      reached &= rows.stream().allMatch(StudyRow::reached);
    }
    if (page.isPresent()) {
      write(page.get(), "tables", tables.toString());
      judgeFamilies(Half.TUNING);
    }
    return reached ? Failures.DONE : Failures.FAILED;
  }

  private int judgeFamilies(Half half) throws IOException {
    if (list) {
      Stream.of(Situation.values())
          .forEach(s -> console.out().printf(Locale.ROOT, "%-18s %s%n", s.word(), s.what()));
      return Failures.DONE;
    }
    FamilyJudgement.Outcome outcome =
        new FamilyJudgement(console, half, count).run(only, runs, seed);
    if (page.isPresent()) {
      FamilyFile.write(FamilyFile.beside(page.get(), half), outcome.tables());
      write(page.get(), "families", keptFamilies(page.get()));
    }
    return outcome.exitCode();
  }

  private static String keptFamilies(Path page) throws IOException {
    StringBuilder out = new StringBuilder();
    for (Half half : List.of(Half.JUDGING, Half.TUNING)) {
      out.append(FamilyPage.of(half, FamilyFile.read(FamilyFile.beside(page, half))));
    }
    return out.toString();
  }

  private int doMistakes() throws IOException {
    Set<Mistake> named = MistakeScan.named(only.stream().flatMap(w -> Stream.of(w.split(","))));
    if (list) {
      Stream.of(Mistake.values()).forEach(m -> console.out().println(m.word()));
      return Failures.DONE;
    }
    if (only.isPresent() && named.isEmpty()) {
      throw console.wrongUsage("there is no mistake \"%s\"; --list names them", only.get());
    }
    MistakeScan.Printed printed = new MistakeScan(console).run(mistakes, seed, named);
    if (page.isPresent()) {
      write(page.get(), "tables", printed.table());
    }
    return printed.exitCode();
  }

  private List<Studies.Study> chosen() {
    if (only.isEmpty()) {
      return Studies.all();
    }
    List<Studies.Study> out =
        Studies.all().stream().filter(s -> s.name().equals(only.get())).toList();
    if (out.isEmpty()) {
      throw console.wrongUsage(
          "there is no case \"%s\"; there are %s",
          only.get(),
          Studies.all().stream().map(Studies.Study::name).collect(Collectors.joining(", ")));
    }
    return out;
  }

  private void write(Path file, String part, String tables) throws IOException {
    String text = Files.readString(file, StandardCharsets.UTF_8);
    String beginMark = "<!-- " + part + ": begin -->";
    String endMark = "<!-- " + part + ": end -->";
    int begin = text.indexOf(beginMark);
    int end = text.indexOf(endMark);
    if (begin < 0 || end < begin) {
      throw new IOException(
          file + ": the marks " + beginMark + " and " + endMark + " are missing; add them");
    }
    Files.writeString(
        file,
        text.substring(0, begin + beginMark.length()) + "\n\n" + tables + text.substring(end));
    console.out().println("Written: " + file + ", " + part);
  }
}
