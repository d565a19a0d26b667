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

/** Takes a packed player into an archive. */
@Command(name = "take", sortOptions = false)
final class PlayersTakeCommand implements Callable<Integer> {

  @Mixin private Console console;

  @Parameters(index = "0", paramLabel = "FILE")
  private Path file = Path.of("");

  @Parameters(index = "1", arity = "0..1", paramLabel = "ARCHIVE")
  private Path archive = Path.of("");

  @Override
  public Integer call() {
    HandOver.Taken taken = HandOver.take(file, archive);
    console.out().println(Words.say("players.taken", taken.label(), taken.files()));
    return Failures.DONE;
  }
}
