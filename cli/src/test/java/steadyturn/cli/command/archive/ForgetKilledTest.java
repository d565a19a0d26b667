package steadyturn.cli.command.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.cli.CommandLineProcess;

/** A player is forgotten by a program that is killed again and again while it does so. */
class ForgetKilledTest {

  /** The long form is ten kills: -Dsteadyturn.kills=10. */
  private static final int KILLS = Integer.getInteger("steadyturn.kills", 1);

  private static final int LESSONS = 80;
  private static final String INTENT = ".steadyturn-forgetting";

  @TempDir private Path folder;

  @Test
  void whatIsLeftHalfDoneIsEndedAndNobodyElseIsTouched() throws Exception {
    // Given: two players of 80 lessons; a note of the other names the first. Killed (signal 9) at
    // a random moment after the work has begun, seed 18. Expect: a run to its end leaves neither
    // label nor name in any byte of the archive, and every file of the other as it was, but the
    // note.
    Path archive = folder.resolve("archive");
    write(archive, "README", "Lessons at the range.\n");
    write(archive, "dataset_description.json", "{\"Name\":\"range\",\"BIDSVersion\":\"1.10.0\"}\n");
    write(
        archive,
        "participants.tsv",
        "participant_id\thandedness\tshown_name\nsub-noor\tright\tNoor Okoye\nsub-mika\tleft\tMika Sand\n");
    lessons(archive, "noor", "n/a");
    lessons(archive, "mika", "as Noor Okoye does");
    Map<String, String> others = files(archive, "mika");
    Random random = new Random(18);
    int hits = 0;
    for (int k = 0; k < KILLS; k++) {
      CommandLineProcess run = forget(archive);
      while (!Files.exists(archive.resolve(INTENT)) && run.process().isAlive()) {
        Thread.onSpinWait();
      }
      Thread.sleep(k == 0 ? 0 : random.nextInt(40));
      hits += run.process().isAlive() ? 1 : 0;
      run.process().destroyForcibly().waitFor();
    }
    assertThat(hits).isPositive();
    CommandLineProcess last = forget(archive);
    assertThat(last.exitCode()).as(last.err()).isZero();
    for (Map.Entry<String, String> file : files(archive, "").entrySet()) {
      assertThat(file.getKey() + file.getValue()).doesNotContainIgnoringCase("noor");
    }
    others.replaceAll((name, text) -> text.replace("Noor Okoye", "someone"));
    assertThat(files(archive, "mika")).isEqualTo(others);
  }

  private CommandLineProcess forget(Path archive) throws IOException {
    return CommandLineProcess.start(folder, "forget", "noor", archive.toString(), "--yes");
  }

  private static void lessons(Path archive, String player, String note) throws IOException {
    for (int k = 1; k <= LESSONS; k++) {
      String id = "sub-" + player + "_ses-" + k;
      String motion =
          "sub-" + player + "/ses-" + k + "/motion/" + id + "_task-swing_tracksys-pelvis_";
      write(archive, motion + "motion.tsv", "0.0\t0\t0\t9.81\t0\t0\t0\n");
      write(archive, motion + "events.tsv", "onset\tduration\tnote\n1.0\t0\t" + note + "\n");
      write(
          archive, "derivatives/steadyturn/sub-" + player + "/" + id + "_measures.tsv", id + "\n");
    }
  }

  private static void write(Path archive, String name, String text) throws IOException {
    Path file = archive.resolve(name);
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
  }

  /** Every file whose path holds a word, with its bytes. */
  private static Map<String, String> files(Path archive, String word) throws IOException {
    Map<String, String> all = new TreeMap<>();
    try (Stream<Path> files = Files.walk(archive)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        String name = archive.relativize(file).toString();
        if (name.contains(word)) {
          all.put(name, Files.readString(file, StandardCharsets.ISO_8859_1));
        }
      }
    }
    return all;
  }
}
