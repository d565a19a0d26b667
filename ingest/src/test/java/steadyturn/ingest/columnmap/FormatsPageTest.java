package steadyturn.ingest.columnmap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitStream;

/** The worked example of docs/formats.md, taken from the page itself. */
class FormatsPageTest {

  private static final Path PAGE = Path.of("../docs/formats.md");

  @TempDir Path folder;

  private static String block(String language) throws IOException {
    var fence = Pattern.compile("```" + language + "\\n(.*?)```", Pattern.DOTALL);
    var found = fence.matcher(Files.readString(PAGE));
    assertThat(found.find()).as(language + " block in " + PAGE).isTrue();
    return found.group(1);
  }

  @Test
  void theWorkedExampleImportsAsThePageSays() throws IOException {
    // Given: the table and the map of the page. Expect, from its words: a hand unit at 200 Hz,
    // three
    // samples 5 ms apart across the wrap, y turned in both sensors, g and deg/s. Within 1e-12.
    Path table = Files.writeString(folder.resolve("hand.csv"), block("csv"));
    Path map = Files.writeString(folder.resolve("hand.toml"), block("toml"));
    Imported imported = ColumnMapImporter.readUnchecked(table, ColumnMap.read(map));
    UnitStream unit = imported.units().get(0);
    assertThat(unit.point()).isEqualTo(BodyPoint.LEAD_HAND);
    assertThat(unit.facts().nominalRateHz()).isEqualTo(200);
    assertThat(unit.timeS(2) - unit.timeS(0)).isCloseTo(0.01, within(1e-9));
    assertThat(unit.accelMps2(0, 0)).isCloseTo(-0.12 * 9.80665, within(1e-12));
    assertThat(unit.accelMps2(1, 0)).isCloseTo(-0.05 * 9.80665, within(1e-12));
    assertThat(unit.accelMps2(1, 2)).isNaN();
    assertThat(unit.gyroRadPerS(1, 0)).isCloseTo(Math.toRadians(0.2), within(1e-12));
    assertThat(unit.gyroRadPerS(0, 0)).isCloseTo(Math.toRadians(1.5), within(1e-12));
  }

  @Test
  void thePageNamesEveryBundledMap() throws IOException {
    assertThat(Files.readString(PAGE)).contains(ColumnMap.BUNDLED);
  }
}
