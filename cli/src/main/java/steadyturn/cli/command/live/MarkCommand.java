package steadyturn.cli.command.live;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.words.Words;
import steadyturn.ingest.live.LiveMark;
import steadyturn.ingest.live.MarkBox;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.recording.disk.ArchiveLock;

/** Leaves a mark in a recording that another process writes. */
@Command(name = "mark", sortOptions = false)
public final class MarkCommand implements Callable<Integer> {

  @Mixin private Console console;

  @Parameters(index = "0", paramLabel = "DIR")
  private Path root = Path.of("");

  @Parameters(index = "1", paramLabel = "TYPE")
  private String type = "";

  @Option(names = "--club", paramLabel = "CLUB")
  private String club = "";

  @Option(names = "--note", paramLabel = "WORDS")
  private String note = "";

  @Option(names = "--duration", paramLabel = "S")
  private double durationS;

  @Option(names = "--ago", paramLabel = "S")
  private double agoS;

  @Override
  public Integer call() throws IOException {
    MarkWord word =
        MarkWord.of(type)
            .orElseThrow(
                () ->
                    console.wrongUsage(
                        Words.say("mark.unknown", type, MarkWord.nearest(type, MarkWord.words()))));
    requireUpToADay("--duration", durationS);
    requireUpToADay("--ago", agoS);
    if (!Files.isDirectory(root)) {
      throw console.wrongUsage(root + " is no folder");
    }
    if (!ArchiveLock.isRecordedInto(root)) {
      console.warn(Words.say("mark.nobody", root));
      return Failures.FAILED;
    }
    LocalDateTime at = LocalDateTime.now(ZoneId.systemDefault()).minusNanos(Math.round(agoS * 1e9));
    MarkBox.leave(root, new LiveMark(at, durationS, word.word(), club, note));
    return Failures.DONE;
  }

  private void requireUpToADay(String option, double seconds) {
    if (!(seconds >= 0 && seconds <= LiveMark.LONGEST_S)) {
      throw console.wrongUsage(option + " must be 0 to 86400 s");
    }
  }
}
