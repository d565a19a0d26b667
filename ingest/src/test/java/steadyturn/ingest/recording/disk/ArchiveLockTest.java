package steadyturn.ingest.recording.disk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a writer finds that comes after one that was killed. */
class ArchiveLockTest {

  /** No process has it: the highest number that Linux gives is 4,194,304. */
  private static final String DEAD = "999999999-3.part";

  @TempDir private Path root;

  private Path put(String name) throws Exception {
    Path file = root.resolve(name);
    Files.createDirectories(WholeFile.folderOf(file));
    return Files.writeString(file, "half");
  }

  @Test
  void theNextWriterRemovesWhatAKilledOneLeftAnywhere() throws Exception {
    // Given: a byte in the lock's file, as a killed writer leaves it; a half file deep in the
    // archive, a folder of waiting tables, one of a process that lives, and a person's own file.
    // Expect: what is of the dead goes, the rest stays; after it the lock's file is empty.
    Files.writeString(root.resolve(".steadyturn-writing"), "x");
    Path deep = put("derivatives/truth/sub-mika/ses-01/.sub-mika_truth.tsv." + DEAD);
    put(".steadyturn-waiting." + DEAD + "/units/pelvis.tsv");
    Path living = put("sub-mika/.scans.tsv." + ProcessHandle.current().pid() + "-7.part");
    Path own = put("notes/of.999999999-3.part");
    ArchiveLock.whileWriting(root, () -> assertThat(deep).doesNotExist());
    assertThat(root.resolve(".steadyturn-waiting." + DEAD)).doesNotExist();
    assertThat(living).exists();
    assertThat(own).exists();
    assertThat(root.resolve(".steadyturn-writing")).isEmptyFile();
  }

  @Test
  void aWriterThatEndsLeavesNoWordBehind() throws Exception {
    // Given: work that ends well, and work that fails. Expect: an empty file after each, a byte
    // in it while the work goes on.
    Path file = root.resolve(".steadyturn-writing");
    ArchiveLock.whileWriting(root, () -> assertThat(file).hasSize(1));
    assertThat(file).isEmptyFile();
    assertThat(
            org.assertj.core.api.Assertions.catchThrowable(
                () ->
                    ArchiveLock.whileWriting(
                        root,
                        () -> {
                          throw new IllegalStateException("no");
                        })))
        .hasMessage("no");
    assertThat(file).isEmptyFile();
  }
}
