package steadyturn.cli.command.archive;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import steadyturn.cli.lesson.FormatChoice;
import steadyturn.cli.lesson.FormatChoice.Format;
import steadyturn.cli.output.json.ArchiveJson;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.words.Words;
import steadyturn.ingest.archive.Consent;
import steadyturn.ingest.archive.Forgetting;
import steadyturn.ingest.archive.PlayerBook;
import steadyturn.ingest.archive.PlayerEntry;
import steadyturn.ingest.archive.Relabelling;
import steadyturn.ingest.sample.Handedness;

/** Lists the players of an archive. */
@Command(
    name = "players",
    subcommands = {
      PlayersNameCommand.class,
      PlayersConsentCommand.class,
      PlayersRenameCommand.class,
      PlayersMergeCommand.class,
      PlayersPackCommand.class,
      PlayersTakeCommand.class
    },
    sortOptions = false)
public final class PlayersCommand implements Callable<Integer> {

  @Mixin private Console console;

  @Parameters(arity = "0..1", paramLabel = "ARCHIVE")
  private Path archive = Path.of("");

  @Option(names = "--find", paramLabel = "TEXT")
  private String text = "";

  @Mixin private FormatChoice formatChoice;

  @Override
  public Integer call() throws IOException {
    Format format = formatChoice.among(console, Format.TABLE, Format.JSON);
    PlayerBook book = read(archive, console);
    List<PlayerEntry> players = book.players().stream().filter(p -> p.matches(text)).toList();
    if (format == Format.JSON) {
      ArchiveJson.players(players, console.out());
      return Failures.DONE;
    }
    if (players.isEmpty()) {
      console.warn(Words.say(text.isEmpty() ? "players.none" : "players.none-found", text));
      return Failures.FAILED;
    }
    console.out().printf(Locale.ROOT, "%-12s %-24s %-5s %7s  %-10s  %s%n", head());
    players.forEach(p -> console.out().println(line(p)));
    return Failures.DONE;
  }

  private static Object[] head() {
    return List.of("label", "name", "side", "lessons", "latest", "consent").stream()
        .map(column -> Words.say("players." + column))
        .toArray();
  }

  /** The book of an archive; work on it that was cut off is said. */
  static PlayerBook read(Path archive, Console console) {
    Path root = archive.toAbsolutePath();
    List<String> notices = new ArrayList<>();
    PlayerBook book = PlayerBook.read(root, notices);
    notices.forEach(console::warn);
    Forgetting.unfinished(root)
        .ifPresent(label -> console.warn(Words.say("forget.unfinished", label)));
    Relabelling.unfinished(root)
        .ifPresent(w -> console.warn(Words.say("players.unfinished", w.get(0), w.get(1))));
    return book;
  }

  private static String line(PlayerEntry p) {
    return String.format(
            Locale.ROOT,
            "%-12s %-24s %-5s %7d  %-10s  %s",
            p.label(),
            p.shownName(),
            p.handed().map(Handedness::word).orElse("-"),
            p.lessons().size(),
            p.lastDay().map(Object::toString).orElse("-"),
            p.consent().map(PlayersCommand::consent).orElse("-"))
        .stripTrailing();
  }

  private static String consent(Consent consent) {
    return consent.by().isEmpty()
        ? consent.day().toString()
        : Words.say("players.consent-by", consent.day(), consent.by());
  }
}
