package steadyturn.cli.command.archive;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
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
import steadyturn.ingest.archive.LessonEntry;
import steadyturn.ingest.archive.PlayerBook;
import steadyturn.ingest.archive.Sums;

/** Lists the lessons of an archive, and looks whether their recordings are as they were. */
@Command(name = "lessons", sortOptions = false)
public final class LessonsCommand implements Callable<Integer> {

  @Mixin private Console console;

  @Parameters(arity = "0..1", paramLabel = "ARCHIVE")
  private Path archive = Path.of("");

  @Option(names = "--player", paramLabel = "PLAYER")
  private String player = "";

  @Option(names = "--sums")
  private boolean sums;

  @Mixin private FormatChoice formatChoice;

  @Override
  public Integer call() throws IOException {
    Format format = formatChoice.among(console, Format.TABLE, Format.JSON);
    PlayerBook book = PlayersCommand.read(archive, console);
    List<LessonEntry> lessons = chosen(book);
    if (format == Format.JSON) {
      ArchiveJson.lessons(lessons, console.out());
      return Failures.DONE;
    }
    if (lessons.isEmpty()) {
      console.warn(Words.say("lessons.none"));
      return Failures.FAILED;
    }
    boolean isSound = true;
    for (LessonEntry lesson : lessons) {
      console.out().println(line(lesson));
      isSound &= !sums || looked(book.root(), lesson);
    }
    return isSound ? Failures.DONE : Failures.FAILED;
  }

  private List<LessonEntry> chosen(PlayerBook book) {
    List<LessonEntry> all = new ArrayList<>();
    if (player.isEmpty()) {
      book.players().forEach(p -> all.addAll(p.lessons()));
    } else {
      all.addAll(book.require(player.replaceFirst("^sub-", "")).lessons());
    }
    all.sort(Comparator.comparing(l -> l.day().map(Object::toString).orElse("")));
    return all;
  }

  private static String line(LessonEntry lesson) {
    return String.format(
        Locale.ROOT,
        "%-10s  %-28s %s",
        lesson.day().map(Object::toString).orElse("-"),
        lesson.id(),
        Words.say("lessons.size", lesson.runs(), lesson.bytes() / 1e6));
  }

  /** Compares with the sums that are kept, and keeps those of files that have none yet. */
  private boolean looked(Path root, LessonEntry lesson) {
    Sums.Look look = Sums.look(root, lesson);
    look.changed().forEach(f -> console.out().println("  " + Words.say("lessons.changed", f)));
    look.missing().forEach(f -> console.out().println("  " + Words.say("lessons.missing", f)));
    int fresh = look.unknown().isEmpty() ? 0 : Sums.keep(root, lesson);
    console.out().println("  " + Words.say("lessons.sums", look.same(), fresh));
    return look.isSound();
  }
}
