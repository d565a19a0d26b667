package steadyturn.cli.command.archive;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.words.Words;
import steadyturn.ingest.archive.PlayerBook;

/** Writes what people call a player. */
@Command(name = "name", sortOptions = false)
final class PlayersNameCommand implements Callable<Integer> {

  @Mixin private Console console;

  @Parameters(index = "0", paramLabel = "PLAYER")
  private String player = "";

  @Parameters(index = "1", paramLabel = "NAME")
  private String name = "";

  @Parameters(index = "2", arity = "0..1", paramLabel = "ARCHIVE")
  private Path archive = Path.of("");

  @Override
  public Integer call() {
    PlayersCommand.read(archive, console).require(player);
    PlayerBook.showAs(archive.toAbsolutePath(), player, name);
    console.out().println(Words.say("players.named", player, name));
    return Failures.DONE;
  }
}
