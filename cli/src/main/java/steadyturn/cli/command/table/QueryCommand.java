package steadyturn.cli.command.table;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import steadyturn.cli.command.live.PluginChoice;
import steadyturn.cli.output.rows.DatabaseDriver;
import steadyturn.cli.output.rows.TableQuery;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;

/** Asks tables that were exported. */
@Command(name = "query", sortOptions = false)
public final class QueryCommand implements Callable<Integer> {

  @Mixin private Console console;

  @Parameters(index = "0", paramLabel = "SQL")
  private String sql = "";

  @Parameters(index = "1", arity = "0..1", paramLabel = "DIR")
  private Path folder = Path.of("steadyturn-tables");

  @Option(names = "--time")
  private boolean time;

  @Mixin private PluginChoice plugins;

  @Override
  public Integer call() throws IOException, SQLException {
    try (Connection database = DatabaseDriver.open(plugins.folder())) {
      TableQuery query = TableQuery.of(database, folder);
      long started = System.nanoTime();
      query.print(sql, console.out());
      if (time) {
        console.err().println((System.nanoTime() - started) / 1_000_000 + " ms");
      }
    }
    return Failures.DONE;
  }
}
