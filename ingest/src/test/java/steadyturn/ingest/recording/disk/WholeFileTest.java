package steadyturn.ingest.recording.disk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.ingest.recording.table.RecordingException;

class WholeFileTest {

  @TempDir Path folder;

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(f -> String.valueOf(f.getFileName())).sorted().toList();
    }
  }

  @Test
  void theBytesAreOnTheDiskBeforeTheNameIs() {
    // Given: a disk that keeps a diary. Expect: written, forced, and only then renamed: whoever
    // sees the name after a loss of power finds all of the file.
    WatchedDisk disk = WatchedDisk.over(folder);
    WholeFile.write(disk.path(folder).resolve("a.txt"), "one\n");
    int force = disk.diary.indexOf("force part");
    assertThat(force).as("%s", disk.diary).isNotNegative();
    assertThat(disk.diary.lastIndexOf("write part")).isBetween(0, force - 1);
    assertThat(disk.diary.indexOf("move part a.txt")).isGreaterThan(force);
    assertThat(disk.diary).doesNotContain("write a.txt");
    // and then the folder, in which the name stands (fsync(2): forcing a file does not force the
    // entry of its folder); nowhere but where a folder can be opened
    if (!System.getProperty("os.name").startsWith("Windows")) {
      assertThat(disk.diary.indexOf("force " + folder.getFileName()))
          .as("%s", disk.diary)
          .isGreaterThan(disk.diary.indexOf("move part a.txt"));
    }
  }

  @Test
  void aFileIsReplacedWholeAndNothingElseIsLeft() throws IOException {
    Path file = folder.resolve("sub").resolve("a.txt");
    WholeFile.write(file, "first, and longer\n");
    WholeFile.write(file, "ä second\n");
    assertThat(file).hasContent("ä second\n");
    try (Stream<Path> files = Files.list(folder.resolve("sub"))) {
      assertThat(files).containsExactly(file);
    }
  }

  @Test
  void whatFailsMidwayLeavesTheOldFileAsItWas() throws IOException {
    Path file = folder.resolve("a.txt");
    WholeFile.write(file, "old\n");
    assertThatThrownBy(
            () ->
                WholeFile.write(
                    file,
                    out -> {
                      out.write(new byte[100_000]);
                      throw new IOException("the disk is full");
                    }))
        .isInstanceOf(RecordingException.class)
        .hasMessageContaining("a.txt");
    assertThat(file).hasContent("old\n");
    assertThat(names()).contains("a.txt").filteredOn(n -> !n.startsWith(".")).hasSize(1);
  }

  @Test
  void manyBytesArriveInTheirOrder() {
    byte[] bytes = new byte[300_000];
    for (int i = 0; i < bytes.length; i++) {
      bytes[i] = (byte) (i * 31);
    }
    Path file = folder.resolve("a.bin");
    WholeFile.write(
        file,
        out -> {
          out.write(bytes, 0, 10);
          out.write(bytes, 10, bytes.length - 10);
        });
    assertThat(file).hasBinaryContent(bytes);
  }
}
