package steadyturn.cli.command.archive;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.words.Words;
import steadyturn.ingest.archive.Relabelling;

/** Joins two labels that are one person. */
@Command(name = "merge", sortOptions = false)
final class PlayersMergeCommand implements Callable<Integer> {

  @Mixin private Console console;

  @Parameters(index = "0", paramLabel = "PLAYER")
  private String player = "";

  @Parameters(index = "1", paramLabel = "INTO")
  private String into = "";

  @Parameters(index = "2", arity = "0..1", paramLabel = "ARCHIVE")
  private Path archive = Path.of("");

  @Override
  public Integer call() {
    Relabelling.merge(archive, player, into)
        .forEach(
            (old, fresh) ->
                console.out().println(Words.say("players.merged", player, old, into, fresh)));
    return Failures.DONE;
  }
}
