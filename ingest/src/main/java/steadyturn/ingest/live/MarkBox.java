package steadyturn.ingest.live;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import steadyturn.ingest.recording.disk.PrivateFiles;

/**
 * A small file by which another process leaves marks for a running recorder: one line a mark, only
 * ever appended: time of day, duration, trial type, club, note, with tabs between.
 */
public final class MarkBox {

  private static final String NAME = ".steadyturn-marks.tsv";
  private static final int FIELDS = 5;

  private final Path file;
  private long readBytes;

  private MarkBox(Path file) {
    this.file = file;
  }

  /** The box of the recorder that writes into this dataset; begins empty. */
  static MarkBox emptied(Path root) throws IOException {
    Path file = root.resolve(NAME);
    Files.deleteIfExists(file);
    return new MarkBox(file);
  }

  /** Leaves a mark for the recorder that writes into this dataset. */
  public static void leave(Path root, LiveMark mark) throws IOException {
    String line =
        String.join(
            "\t",
            mark.at().toString(),
            Double.toString(mark.durationS()),
            clean(mark.trialType()),
            clean(mark.club()),
            clean(mark.note()) + "\n");
    ByteBuffer bytes = ByteBuffer.wrap(line.getBytes(StandardCharsets.UTF_8));
    try (FileChannel out =
        PrivateFiles.open(
            root.resolve(NAME), StandardOpenOption.CREATE, StandardOpenOption.APPEND)) {
      while (bytes.hasRemaining()) {
        out.write(bytes);
      }
    }
  }

  private static String clean(String text) {
    return text.replaceAll("\\s+", " ").strip();
  }

  /** The marks left since the last look; a line not yet ended waits. */
  List<LiveMark> take() throws IOException {
    List<LiveMark> marks = new ArrayList<>();
    if (!Files.exists(file) || Files.size(file) <= readBytes) {
      return marks;
    }
    byte[] all = Files.readAllBytes(file);
    int from = (int) readBytes;
    for (int at = from; at < all.length; at++) {
      if (all[at] == '\n') {
        addMark(new String(all, from, at - from, StandardCharsets.UTF_8), marks);
        from = at + 1;
      }
    }
    readBytes = from;
    return marks;
  }

  private static void addMark(String line, List<LiveMark> marks) {
    String[] f = line.split("\t", -1);
    if (f.length != FIELDS) {
      return;
    }
    try {
      marks.add(
          new LiveMark(LocalDateTime.parse(f[0]), Double.parseDouble(f[1]), f[2], f[3], f[4]));
    } catch (DateTimeException | IllegalArgumentException e) {
      // Not a line of ours; whoever wrote it sees no mark appear.
      return;
    }
  }
}
