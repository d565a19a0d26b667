package steadyturn.cli.command.table;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import steadyturn.analysis.rows.RowTable;
import steadyturn.cli.command.live.PluginChoice;
import steadyturn.cli.lesson.LessonPaths;
import steadyturn.cli.lesson.Lessons;
import steadyturn.cli.output.rows.CsvTables;
import steadyturn.cli.output.rows.DatabaseDriver;
import steadyturn.cli.output.rows.ParquetTables;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;

/** Writes what was found as files for other programs. */
@Command(name = "export", sortOptions = false)
public final class ExportCommand implements Callable<Integer> {

  enum Format {
    CSV,
    PARQUET,
    TRC,
    STO
  }

  @Mixin private Console console;

  @Mixin private LessonPaths paths;

  @Option(names = "--format", paramLabel = "csv|parquet|trc|sto")
  private Format format = Format.CSV;

  @Option(names = "--tables", split = ",", paramLabel = "TABLE")
  private Set<RowTable> tables = EnumSet.allOf(RowTable.class);

  @Option(names = "--out", paramLabel = "DIR")
  private Path out = Path.of("steadyturn-tables");

  @Mixin private PluginChoice plugins;

  @Override
  public Integer call() throws IOException, SQLException {
    Lessons lessons = paths.lessons(console);
    switch (format) {
      case CSV -> csv(lessons);
      case PARQUET -> parquet(lessons);
      default -> new MotionExport(lessons, out, console.out()).write(format == Format.STO);
    }
    return lessons.allWell() ? Failures.DONE : Failures.FAILED;
  }

  private List<RowTable> wanted() {
    return List.copyOf(EnumSet.copyOf(tables));
  }

  private void csv(Lessons lessons) {
    TableExport export = new TableExport(lessons, wanted());
    CsvTables.into(out).write(wanted(), export::writeTo);
    done(export);
  }

  private void parquet(Lessons lessons) throws IOException, SQLException {
    TableExport export = new TableExport(lessons, wanted());
    try (Connection database = DatabaseDriver.open(plugins.folder())) {
      new ParquetTables(out, database).write(wanted(), export::writeTo);
    }
    done(export);
  }

  private void done(TableExport export) {
    export.explain(out);
    String ending = "." + format.name().toLowerCase(Locale.ROOT);
    wanted().forEach(table -> console.out().println(out.resolve(table.word() + ending)));
  }
}
