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

/** Gives a player another label. */
@Command(name = "rename", sortOptions = false)
final class PlayersRenameCommand implements Callable<Integer> {

  @Mixin private Console console;

  @Parameters(index = "0", paramLabel = "PLAYER")
  private String player = "";

  @Parameters(index = "1", paramLabel = "LABEL")
  private String label = "";

  @Parameters(index = "2", arity = "0..1", paramLabel = "ARCHIVE")
  private Path archive = Path.of("");

  @Override
  public Integer call() {
    Relabelling.rename(archive, player, label);
    console.out().println(Words.say("players.renamed", player, label));
    return Failures.DONE;
  }
}
