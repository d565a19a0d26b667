package steadyturn.ingest.recording.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Encodings of files, and tables that are added to. */
class SmallFilesTest {

  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({"UTF-16LE, 2", "UTF-16BE, 2", "UTF-8, 3", "ISO-8859-1, 0"})
  void aSmallFileIsReadInItsEncoding(String encoding, int markBytes) throws IOException {
    byte[] mark =
        switch (encoding) {
          case "UTF-16LE" -> new byte[] {(byte) 0xFF, (byte) 0xFE};
          case "UTF-16BE" -> new byte[] {(byte) 0xFE, (byte) 0xFF};
          case "UTF-8" -> new byte[] {(byte) 0xEF, (byte) 0xBB, (byte) 0xBF};
          default -> new byte[0];
        };
    assertThat(mark).hasSize(markBytes);
    byte[] text = "größer\t1\n".getBytes(Charset.forName(encoding));
    byte[] all = new byte[mark.length + text.length];
    System.arraycopy(mark, 0, all, 0, mark.length);
    System.arraycopy(text, 0, all, mark.length, text.length);
    Path file = Files.write(folder.resolve("t.tsv"), all);
    List<String> notices = new ArrayList<>();
    assertThat(TextFile.read(file, notices)).isEqualTo("größer\t1\n");
    assertThat(notices).hasSize(encoding.equals("UTF-8") ? 0 : 1);
  }

  @Test
  void aBigFileMayBeginWithAMarkAndHasNoZeros() {
    Path file = Path.of("t_motion.tsv");
    byte[] marked = "\uFEFF1".getBytes(StandardCharsets.UTF_8);
    assertThat(Encoding.textStart(file, marked, 4)).isEqualTo(3);
    assertThat(Encoding.textStart(file, marked, 2)).isZero();
    assertThat(Encoding.textStart(file, new byte[] {'1'}, 1)).isZero();
    byte[] late = new byte[70];
    Arrays.fill(late, (byte) '1');
    late[64] = 0;
    assertThat(Encoding.textStart(file, late, 70)).isZero();
    late[63] = 0;
    assertThatThrownBy(() -> Encoding.textStart(file, late, 70)).hasMessageContaining("UTF-16");
    for (byte[] wide : new byte[][] {{(byte) 0xFF, (byte) 0xFE}, {(byte) 0xFE, (byte) 0xFF}}) {
      assertThatThrownBy(() -> Encoding.textStart(file, wide, 2)).hasMessageContaining("UTF-16");
    }
  }

  @Test
  void aTableIsAddedToAndNeverChanged() throws IOException {
    Path file = folder.resolve("t.tsv");
    Files.writeString(file, "id\tnote\na\tkept\nb\tn/a\n");
    TableText table = TableText.read(file);
    table.put(row("a", "size", "3"));
    table.put(row("b", "note", "two\tlines\n", "size", ""));
    table.put(row("c", "size", "5", "note", " "));
    assertThat(table.text())
        .isEqualTo("id\tnote\tsize\na\tkept\t3\nb\ttwo lines\tn/a\nc\tn/a\t5\n");
  }

  private static Map<String, String> row(String id, String... cells) {
    Map<String, String> row = new LinkedHashMap<>();
    row.put("id", id);
    for (int i = 0; i < cells.length; i += 2) {
      row.put(cells[i], cells[i + 1]);
    }
    return row;
  }
}
