package steadyturn.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The drawing in the docs is that of the code. */
class HouseDrawingTest {

  private static final Path DRAWING = SourceFiles.HOME.resolve("docs/house.svg");

  private static final String REDRAW =
      "mvn -q -Dquick -pl cli -am test -Dtest=HouseDrawingTest"
          + " -Dsurefire.failIfNoSpecifiedTests=false -Dhouse.redraw=true";

  @Test
  void theDrawingShowsTheHouseAsItIs() throws IOException {
    // Given: the compiled classes and the sources. Expect: docs/house.svg as drawn from them, to
    // the letter.
    String now = HouseDrawing.of(House.classes());
    if (Boolean.getBoolean("house.redraw")) {
      Files.writeString(DRAWING, now);
    }
    assertThat(DRAWING).as("draw it with: %s", REDRAW).exists();
    assertThat(Files.readString(DRAWING)).as("draw it anew with: %s", REDRAW).isEqualTo(now);
  }
}
