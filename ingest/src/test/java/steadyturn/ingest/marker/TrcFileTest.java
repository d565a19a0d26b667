package steadyturn.ingest.marker;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TrcFileTest {

  private static final String GOOD =
      "PathFileType\t4\t(X/Y/Z)\tswing.trc\n"
          + "DataRate\tCameraRate\tNumFrames\tNumMarkers\tUnits\tOrigDataRate\n"
          + "100\t100\t2\t2\tmm\t100\n"
          + "Frame#\tTime\tRASI\t\t\tLASI\t\t\n"
          + "\t\tX1\tY1\tZ1\tX2\tY2\tZ2\n"
          + "\n"
          + "1\t0.00\t1000\t-20.5\t30\t4\t5\t6\n"
          + "2\t0.01\t1001\t\t31\t4\t5\n";

  @TempDir Path folder;

  private Path file(String text) throws IOException {
    return Files.writeString(folder.resolve("swing.trc"), text);
  }

  @Test
  void placesAreInMetresByMarkerAxisAndFrame() throws IOException {
    MarkerTracks tracks = TrcFile.read(file(GOOD));
    assertThat(tracks.names()).containsExactly("RASI", "LASI");
    assertThat(tracks.timeS()).containsExactly(0, 0.01);
    assertThat(tracks.of("RASI")[0]).containsExactly(new double[] {1, 1.001}, within(1e-12));
    assertThat(tracks.of("RASI")[1]).containsExactly(-0.0205, Double.NaN);
    assertThat(tracks.of("LASI")[2]).containsExactly(0.006, Double.NaN);
    assertThat(tracks.of("SACR")).isEmpty();
  }

  @Test
  void whatIsWrittenIsReadAgain() throws IOException {
    MarkerTracks tracks = TrcFile.read(file(GOOD));
    Path again = folder.resolve("again.trc");
    TrcFile.write(again, tracks);
    MarkerTracks read = TrcFile.read(again);
    assertThat(read.names()).isEqualTo(tracks.names());
    assertThat(read.timeS()).containsExactly(tracks.timeS());
    for (int axis = 0; axis < 3; axis++) {
      assertThat(read.of("RASI")[axis]).containsExactly(tracks.of("RASI")[axis], within(1e-9));
    }
  }

  @ParameterizedTest
  @CsvSource({
    "PathFileType, Pathfiletype, is no TRC file",
    "mm, ft, 'line 3: has the unit \"ft\"'",
    "0.01, 0.00, times that do not rise",
    "1001, '1001,5', 'line 8: \"1001,5\" is no number'",
  })
  void whatIsWrongIsSaidWithItsPlace(String good, String bad, String said) throws IOException {
    Path file = file(GOOD.replace(good, bad));
    assertThatThrownBy(() -> TrcFile.read(file)).hasMessageContaining(said);
  }
}
