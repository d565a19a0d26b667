package steadyturn.ingest.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.ingest.recording.disk.WatchedDisk;

/** What a recorder asks of the real disk, seen through one that keeps a diary. */
class DiskTest {

  private static final Disk DISK = new Disk() {};

  @TempDir Path folder;

  private static ByteBuffer block(String text) {
    return ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void aBlockThatMustBeKeptIsForcedAfterItWasWritten() throws IOException {
    // Expect: written, then forced, before the call returns; not forced where nobody asks.
    WatchedDisk watched = WatchedDisk.over(folder);
    Path file = Files.createFile(folder.resolve("a.tsv"));
    DISK.append(watched.path(file), 0, block("one\n"), false);
    assertThat(watched.diary).containsExactly("write a.tsv");
    DISK.append(watched.path(file), 4, block("two\n"), true);
    assertThat(watched.diary).containsExactly("write a.tsv", "force a.tsv");
    assertThat(file).hasContent("one\ntwo\n");
  }

  @Test
  void aBlockIsLaidBehindTheWholeLinesAndWhatIsCutBackIsGone() throws IOException {
    // Given: two whole lines and a broken one. Expect: the block in its place; then cut back to
    // one.
    Path file = Files.writeString(folder.resolve("a.tsv"), "one\ntwo\nth");
    DISK.append(file, 8, block("three\n"), true);
    assertThat(file).hasContent("one\ntwo\nthree\n");
    DISK.cutBack(file, 4);
    assertThat(file).hasContent("one\n");
  }
}
