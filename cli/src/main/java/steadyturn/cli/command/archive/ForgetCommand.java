package steadyturn.cli.command.archive;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.Charset;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.words.Words;
import steadyturn.ingest.archive.Forgetting;
import steadyturn.ingest.archive.Forgotten;
import steadyturn.ingest.archive.PlayerEntry;

/** Erases every trace of a player from an archive. */
@Command(name = "forget", sortOptions = false)
public final class ForgetCommand implements Callable<Integer> {

  private static final boolean IS_TYPED = Boolean.getBoolean("steadyturn.typed");

  @Mixin private Console console;

  @Parameters(index = "0", paramLabel = "PLAYER")
  private String player = "";

  @Parameters(index = "1", arity = "0..1", paramLabel = "ARCHIVE")
  private Path archive = Path.of("");

  @Option(names = "--yes")
  private boolean agreed;

  @Override
  public Integer call() throws IOException {
    String label = player.replaceFirst("^sub-", "");
    Path root = archive.toAbsolutePath();
    if (!Forgetting.unfinished(root).filter(label::equals).isPresent() && !isMeant(root, label)) {
      return Failures.FAILED;
    }
    Forgotten done = Forgetting.forget(root, label);
    console.out().println(Words.say("forget.done", label, done.filesErased(), done.rowsErased()));
    done.textsChanged().forEach(f -> console.out().println(Words.say("forget.changed", f)));
    done.left().forEach(f -> console.warn(Words.say("forget.left", f)));
    console.out().println(Words.say("forget.elsewhere"));
    return done.isWhole() ? Failures.DONE : Failures.FAILED;
  }

  /** Who types is asked for the label once more; a script says --yes. */
  private boolean isMeant(Path root, String label) throws IOException {
    PlayerEntry its = PlayersCommand.read(root, console).require(label);
    String what =
        Words.say("forget.what", its.shownName(), its.lessons().size(), its.bytes() / 1e6);
    if (agreed) {
      return true;
    }
    console.warn(what + " " + Words.say(IS_TYPED ? "forget.type" : "forget.yes", label));
    if (!IS_TYPED) {
      return false;
    }
    console.err().flush();
    var typed = new BufferedReader(new InputStreamReader(System.in, Charset.defaultCharset()));
    String line = typed.readLine();
    boolean isMeant = line != null && line.strip().equals(label);
    if (!isMeant) {
      console.warn(Words.say("forget.kept"));
    }
    return isMeant;
  }
}
