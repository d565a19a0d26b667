package steadyturn.cli.command.archive;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.words.Words;
import steadyturn.ingest.archive.Consent;
import steadyturn.ingest.archive.PlayerBook;

/** Notes that a player, or a parent, agreed to be recorded. */
@Command(name = "consent", sortOptions = false)
final class PlayersConsentCommand implements Callable<Integer> {

  @Mixin private Console console;

  @Parameters(index = "0", paramLabel = "PLAYER")
  private String player = "";

  @Parameters(index = "1", paramLabel = "DATE")
  private LocalDate day = LocalDate.EPOCH;

  @Parameters(index = "2", arity = "0..1", paramLabel = "ARCHIVE")
  private Path archive = Path.of("");

  @Option(names = "--by", paramLabel = "PARENT")
  private String by = "";

  @Override
  public Integer call() {
    PlayersCommand.read(archive, console).require(player);
    if (day.isAfter(LocalDate.now(ZoneId.systemDefault()))) {
      throw console.wrongUsage(day + " has not come yet");
    }
    PlayerBook.agreed(archive.toAbsolutePath(), player, new Consent(day, by));
    console.out().println(Words.say("players.agreed", player, day));
    return Failures.DONE;
  }
}
