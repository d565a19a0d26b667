package steadyturn.analysis.signs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.Handedness;

/** The rows of the table in docs/frames-and-signs.md, each tried on an exact movement. */
final class FramesAndSignsTest {

  private static final Path PAGE = Path.of("..", "docs", "frames-and-signs.md");

  static Stream<Arguments> rows() throws IOException {
    List<String[]> rows =
        Files.readAllLines(PAGE).stream()
            .filter(line -> line.matches("\\| S\\d+ .*"))
            .map(line -> line.split("\\s*\\|\\s*", -1))
            .toList();
    return rows.stream()
        .flatMap(
            row ->
                Stream.of(Handedness.values())
                    .map(h -> Arguments.of(row[1], row[3].replace("`", ""), row[4], h)));
  }

  @ParameterizedTest(name = "{0}: {1} becomes {2}, {3}")
  @MethodSource("rows")
  void theMovementOfTheRowMovesItsNumberAsThePageSays(
      String row, String id, String becomes, Handedness handed) {
    // Given: an exact movement of 30 deg or 60 mm. Expect: the sign of the page.
    // Beyond 20 (deg or mm), so that a value near zero with the right sign by chance does not pass.
    double value =
        id.startsWith("wrist")
            ? WristMoves.value(row, id, handed)
            : PelvisMoves.value(row, id, handed);
    double signed = becomes.equals("positive") ? value : -value;
    assertThat(signed).isGreaterThan(20);
  }

  @Test
  void everyRowOfThePageIsTried() throws IOException {
    assertThat(rows().count()).isEqualTo(2 * 12);
  }

  @Test
  void theQuaternionOfThePageTakesXToY() {
    // Given: (cos 45 deg, 0, 0, sin 45 deg), a quarter turn about z. Expect: x becomes y.
    // Within 1e-15: three products of numbers near 1.
    double half = Math.PI / 4;
    Quaternion q = new Quaternion(Math.cos(half), 0, 0, Math.sin(half));
    assertThat(q.rotate(Vector3.X).minus(Vector3.Y).norm()).isLessThan(1e-15);
  }
}
