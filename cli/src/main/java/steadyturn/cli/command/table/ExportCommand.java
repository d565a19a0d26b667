package steadyturn.cli.command.table;

import java.io.IOException;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.rows.LessonRows;
import steadyturn.analysis.rows.OrientationRows;
import steadyturn.analysis.rows.RowSink;
import steadyturn.analysis.rows.RowTable;
import steadyturn.analysis.swing.EventTime;
import steadyturn.cli.lesson.LessonPaths;
import steadyturn.cli.lesson.Lessons;
import steadyturn.cli.output.rows.CsvTables;
import steadyturn.cli.output.rows.TableDictionary;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.recording.dataset.Session;
import steadyturn.ingest.recording.dataset.SessionRun;

/** Writes what was found as tables for other programs. */
@Command(name = "export", sortOptions = false)
public final class ExportCommand implements Callable<Integer> {

  enum Format {
    CSV
  }

  @Mixin private Console console;

  @Mixin private LessonPaths paths;

  @Option(names = "--format", paramLabel = "csv")
  private Format format = Format.CSV;

  @Option(names = "--tables", split = ",", paramLabel = "TABLE")
  private Set<RowTable> tables = EnumSet.allOf(RowTable.class);

  @Option(names = "--out", paramLabel = "DIR")
  private Path out = Path.of("steadyturn-tables");

  private final Map<String, Path> archives = new HashMap<>();
  private final Set<Reason> reasons = new HashSet<>();

  @Override
  public Integer call() throws IOException {
    Lessons lessons = paths.lessons(console);
    List<RowTable> wanted = List.copyOf(EnumSet.copyOf(tables));
    CsvTables.into(out).write(wanted, sink -> lessons.each(lesson -> write(lesson, lessons, sink)));
    TableDictionary.write(out);
    TableDictionary.writeReasons(out, reasons);
    wanted.forEach(table -> console.out().println(out.resolve(table.word() + ".csv")));
    return lessons.allWell() ? Failures.DONE : Failures.FAILED;
  }

  private void write(Session lesson, Lessons lessons, RowSink sink) throws IOException {
    AnalysisSettings all = AnalysisSettings.defaults();
    AnalysisSettings settings = tables.contains(RowTable.CURVES) ? all : all.withoutCurves();
    String archive = archive(lesson.runs().get(0).root());
    for (LessonResult result : new LessonRows(archive, settings, sink).write(lesson, lessons)) {
      if (!result.isSound()) {
        lessons.notWell();
      }
      result.swings().stream()
          .flatMap(
              swing ->
                  Stream.concat(
                      swing.measures().stream().map(value -> value.why()),
                      swing.events().stream().map(EventTime::why)))
          .filter(why -> !why.isNone())
          .forEach(reasons::add);
      if (tables.contains(RowTable.ORIENTATIONS)) {
        for (SessionRun run : lesson.runs()) {
          if (run.id().equals(result.recording())) {
            lessons.tried(() -> OrientationRows.write(archive, run, result, sink));
          }
        }
      }
    }
  }

  /** An archive's folder name; its whole path where another one has that name. */
  private String archive(Path root) {
    String name = String.valueOf(root.getFileName());
    return archives.computeIfAbsent(name, first -> root).equals(root) ? name : root.toString();
  }
}
