package steadyturn.cli.command.lesson;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import steadyturn.analysis.coach.teaching.TeachingReader;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.cli.lesson.Lessons;
import steadyturn.cli.lesson.Pages;
import steadyturn.cli.output.table.TableReport;
import steadyturn.cli.output.tsv.Derivatives;
import steadyturn.cli.page.reader.Audience;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.words.Words;
import steadyturn.ingest.recording.disk.WholeFile;

/** The first run: the bundled lesson, analysed before the eyes of a newcomer. */
@Command(name = "demo")
public final class DemoCommand implements Callable<Integer> {

  @Mixin private Console console;

  @Option(names = "--out", paramLabel = "DIR")
  private Optional<Path> out = Optional.empty();

  @Override
  public Integer call() throws IOException {
    Path home = Path.of(System.getProperty("steadyturn.home", "."));
    Path folder = out.orElse(home.resolve("out").resolve("demo"));
    Lessons lessons = Lessons.under(List.of(home.resolve("sample-recordings")), console);
    List<LessonResult> results = new ArrayList<>();
    Map<String, TableReport.Told> told = new LinkedHashMap<>();
    List<Path> pages = new ArrayList<>();
    Pages place = new Pages(folder, console);
    lessons.each(
        lesson -> {
          List<LessonResult> found = AnalyzeCommand.analyze(lesson, lessons);
          results.addAll(found);
          told.put(
              lesson.id(), AnalyzeCommand.told(lesson, found, lessons, TeachingReader.shipped()));
          pages.add(ReportCommand.page(lesson, found, lessons, Audience.TEACHER, place));
          pages.add(ReportCommand.page(lesson, found, lessons, Audience.PLAYER, place));
        });
    TableReport.write(results, told, false, console.out());
    Path table = folder.resolve("lesson.txt");
    WholeFile.writeText(table, to -> TableReport.write(results, told, true, to));
    console.out().println();
    console.out().println("Written: " + shown(home, table));
    console.out().println("         " + shown(home, Derivatives.write(results, folder)));
    pages.forEach(page -> console.out().println("         " + shown(home, page)));
    console.out().println(Words.say("demo.next"));
    console.out().println(Words.say("demo.then"));
    return lessons.allWell() ? Failures.DONE : Failures.FAILED;
  }

  /** Short where the reader stands in the folder of the program. */
  private static Path shown(Path home, Path path) {
    boolean isHere = home.toAbsolutePath().equals(Path.of("").toAbsolutePath());
    return isHere && path.startsWith(home) ? home.relativize(path) : path;
  }
}
