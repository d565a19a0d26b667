package steadyturn.cli.command.mat;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.analysis.lesson.Notice;
import steadyturn.cli.output.json.Json;
import steadyturn.ingest.quality.QualityReason;
import steadyturn.ingest.reason.Reason;

/** What stands at the top of the page, and how long. */
class TroublesTest {

  private static final Notice GAP = new Notice("pelvis", Reason.of(QualityReason.GAP, 1, 4.07));

  @TempDir Path root;

  private static String noticed(Troubles troubles) {
    ObjectNode node = Json.object();
    troubles.json(node, List.of());
    return node.path("noticed").toString();
  }

  @Test
  void aGapBelongsToItsBallAndIsToldAnewOfALaterOne() {
    // Given: a gap, told twice as each count of it is; then a whole ball; then another gap.
    Troubles troubles = new Troubles(root);
    troubles.notice(GAP);
    troubles.notice(GAP);
    troubles.notice("stays");
    assertThat(noticed(troubles)).containsOnlyOnce("There is a gap of 4.07 s");
    troubles.wholeBall();
    assertThat(noticed(troubles)).isEqualTo("[\"stays\"]");
    troubles.notice(GAP);
    assertThat(noticed(troubles)).contains("There is a gap of 4.07 s");
  }

  @Test
  void sentencesAreInTheUnitsOfThePage() {
    assertThat(PageUnits.in("the pelvis unit turned by 32 deg on the body"))
        .isEqualTo("the pelvis unit turned by 32° on the body");
    assertThat(PageUnits.in("over 5 deg/s and 250 mm, or 55 mm"))
        .isEqualTo("over 5°/s and 25 cm, or 5.5 cm");
  }
}
