package steadyturn.ingest.kept;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An answer is given again only while it is known to hold; whatever else happens, it is not. */
class KeptAnswerTest {

  private static final List<String> CLAIMS = List.of("program\t1", "settings\tusual");

  @TempDir Path root;

  private Path place;
  private List<Path> inputs = List.of();

  @BeforeEach
  void twoInputsOfLongAgo() throws IOException {
    place = root.resolve("derivatives/steadyturn/sub-a/sub-a_desc-kept_lesson.bin");
    inputs = List.of(root.resolve("a_motion.tsv"), root.resolve("b_events.tsv"));
    for (Path input : inputs) {
      Files.writeString(input, "1\t2\n");
    }
  }

  @Test
  void anAnswerComesBackByteForByte() {
    keep("\0answer\n\n\0");
    assertThat(found()).contains("\0answer\n\n\0");
    assertThat(KeptPlace.isKept(place)).isTrue();
  }

  /** Expect: found, though size and both times that a program can set are as they were. */
  @Test
  void anInputOfTheSameSizeAndTimeIsReadWhereItWasWritten() throws IOException {
    FileTime before = Files.getLastModifiedTime(inputs.get(0));
    keep("answer");
    Files.writeString(inputs.get(0), "1\t3\n");
    Files.setLastModifiedTime(inputs.get(0), before);
    assertThat(found()).isEmpty();
    Files.writeString(inputs.get(0), "1\t2\n");
    assertThat(found()).as("the content counts").contains("answer");
  }

  @Test
  void anInputMoreOrLessIsAnotherQuestion() throws IOException {
    keep("answer");
    List<Path> more = new ArrayList<>(inputs);
    more.add(Files.writeString(root.resolve("c_channels.tsv"), "x"));
    assertThat(KeptAnswer.find(place, root, more, CLAIMS::equals)).isEmpty();
    assertThat(KeptAnswer.find(place, root, inputs.subList(0, 1), CLAIMS::equals)).isEmpty();
    Files.delete(inputs.get(1));
    assertThat(found()).isEmpty();
  }

  @Test
  void anInputThatChangesWhileTheAnswerIsReckonedKeepsNothing() throws IOException {
    Basis basis = KeptAnswer.look(root, inputs).orElseThrow();
    Files.writeString(inputs.get(0), "1\t2\n3\t4\n");
    KeptAnswer.keep(place, basis, inputs, CLAIMS, new byte[1]);
    assertThat(place).doesNotExist();
  }

  @Test
  void otherClaimsAreAnotherAnswer() {
    keep("answer");
    assertThat(KeptAnswer.find(place, root, inputs, List.of("program\t2")::equals)).isEmpty();
  }

  /**
   * Given: every way to cut the file, and every byte of it turned. Expect: no answer but its own.
   */
  @Test
  void aDamagedFileGivesNothingOrTheSame() throws IOException {
    keep("answer");
    byte[] whole = Files.readAllBytes(place);
    for (int i = 0; i < whole.length; i++) {
      byte[] damaged = whole.clone();
      damaged[i] ^= 4;
      Files.write(place, damaged);
      assertThat(found().orElse("answer")).as("byte " + i).isEqualTo("answer");
      Files.write(place, java.util.Arrays.copyOf(whole, i));
      assertThat(found()).as("cut at " + i).isEmpty();
    }
  }

  @Test
  void whereNothingCanBeWrittenNothingIsSaid() throws IOException {
    Files.writeString(root.resolve("derivatives"), "a file where a folder should be");
    keep("answer");
    assertThat(found()).isEmpty();
  }

  /**
   * Source: the trap of a change within one tick of the clock of a file system, as version control
   * knows it; FAT ticks every 2 s (its specification, from memory).
   */
  @Test
  void aStateIsTrustedOnlyWhereALaterChangeWouldShow() {
    long s = TimeUnit.SECONDS.toNanos(1);
    assertThat(new FileState(4, 10 * s, 10 * s, 1).wasSettledAt(12 * s + 1)).isTrue();
    assertThat(new FileState(4, 10 * s, 10 * s, 1).wasSettledAt(12 * s)).isFalse();
    assertThat(new FileState(4, 1 * s, 11 * s, 1).wasSettledAt(12 * s + 1)).isFalse();
    assertThat(new FileState(4, 1 * s, FileState.UNKNOWN, 1).wasSettledAt(100 * s))
        .as("without a time of change only the content tells")
        .isFalse();
  }

  private void keep(String answer) {
    Basis basis = KeptAnswer.look(root, inputs).orElseThrow();
    KeptAnswer.keep(place, basis, inputs, CLAIMS, answer.getBytes(StandardCharsets.UTF_8));
  }

  private Optional<String> found() {
    return KeptAnswer.find(place, root, inputs, CLAIMS::equals).map(KeptAnswerTest::text);
  }

  private static String text(ByteBuffer bytes) {
    return new String(bytes.array(), bytes.arrayOffset(), bytes.limit(), StandardCharsets.UTF_8);
  }
}
