package steadyturn.cli.command;

import java.util.concurrent.Callable;
import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;

/** Prints a shell script that completes commands, options and file names. */
@Command(name = "completion")
final class CompletionCommand implements Callable<Integer> {

  @Mixin private Console console;

  @Override
  public Integer call() {
    console.out().println(AutoComplete.bash("steadyturn", Commands.complete()));
    return Failures.DONE;
  }
}
