package steadyturn.cli.command.archive;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.words.Words;
import steadyturn.ingest.archive.HandOver;

/** Packs a player into one zip file for handing over. */
@Command(name = "pack", sortOptions = false)
final class PlayersPackCommand implements Callable<Integer> {

  @Mixin private Console console;

  @Parameters(index = "0", paramLabel = "PLAYER")
  private String player = "";

  @Parameters(index = "1", paramLabel = "FILE")
  private Path file = Path.of("");

  @Parameters(index = "2", arity = "0..1", paramLabel = "ARCHIVE")
  private Path archive = Path.of("");

  @Override
  public Integer call() {
    int files = HandOver.pack(archive, player, file);
    console.out().println(Words.say("players.packed", player, files, file));
    return Failures.DONE;
  }
}
