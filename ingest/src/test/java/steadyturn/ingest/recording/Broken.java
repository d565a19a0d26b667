package steadyturn.ingest.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.recording.write.RecordingWriter;

/** A good lesson of two units, on disk, to be spoilt in one place at a time. */
public final class Broken {

  static final String PELVIS = "sub-mika_ses-01_task-swing_tracksys-pelvis_";
  static final String FOREARM = "sub-mika_ses-01_task-swing_tracksys-leadForearm_";

  private final Path root;

  Broken(Path root) {
    this.root = root;
    copy(Good.LESSON, root);
  }

  /** The good lesson, written once. */
  private static final class Good {

    static final Path LESSON = write();

    private static Path write() {
      try {
        Path folder =
            Files.createTempDirectory(Files.createDirectories(Path.of("target")), "lesson");
        RecordingWriter.into(folder, "Lessons of the test range")
            .write(Lessons.threeUnits(20, 7), RunLabel.lesson("mika", "01"), Lessons.NINE_O_CLOCK);
        return folder;
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }

  /** Copies a folder with all that is in it. */
  public static void copy(Path from, Path to) {
    try (Stream<Path> files = Files.walk(from)) {
      for (Path file : files.toList()) {
        Path copy = to.resolve(from.relativize(file).toString());
        if (Files.isDirectory(file)) {
          Files.createDirectories(copy);
        } else {
          Files.copy(file, copy);
        }
      }
    } catch (IOException e) {
      throw RecordingException.io(from, e);
    }
  }

  Path motion(String name) {
    return root.resolve("sub-mika/ses-01/motion").resolve(name);
  }

  Broken delete(Path file) {
    try {
      Files.delete(file);
      return this;
    } catch (IOException e) {
      throw RecordingException.io(file, e);
    }
  }

  /** Changes the text of a file. */
  Broken edit(Path file, UnaryOperator<String> change) {
    return put(file, change.apply(text(file)).getBytes(StandardCharsets.UTF_8));
  }

  /** Changes one line of the pelvis table, counted from 1, given as cells. */
  Broken editLine(int line, UnaryOperator<String> change) {
    return edit(
        motion(PELVIS + "motion.tsv"),
        text -> {
          String[] lines = text.split("\n", -1);
          lines[line - 1] = change.apply(lines[line - 1]);
          return String.join("\n", lines);
        });
  }

  /** Sets one cell of the pelvis table; line and column counted from 1. */
  Broken cell(int line, int column, String value) {
    return editLine(
        line,
        text -> {
          String[] cells = text.split("\t", -1);
          cells[column - 1] = value;
          return String.join("\t", cells);
        });
  }

  Broken put(Path file, byte[] bytes) {
    try {
      Files.write(file, bytes);
      return this;
    } catch (IOException e) {
      throw RecordingException.io(file, e);
    }
  }

  public static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw RecordingException.io(file, e);
    }
  }

  ReadRun read() {
    return RoundTripTest.onlyRun(root);
  }

  /** The message of the refusal, which must be one line. */
  String refusal() {
    RecordingException told = catchThrowableOfType(RecordingException.class, this::read);
    assertThat(told).as("a refusal").isNotNull();
    String message = String.valueOf(told.getMessage());
    assertThat(message.lines()).hasSize(1);
    return message;
  }

  /** The one notice of a run that is read all the same. */
  String notice() {
    List<String> notices = read().notices();
    assertThat(notices).hasSize(1);
    assertThat(notices.get(0).lines()).hasSize(1);
    return notices.get(0);
  }
}
