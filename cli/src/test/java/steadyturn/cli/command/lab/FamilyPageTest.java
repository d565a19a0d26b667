package steadyturn.cli.command.lab;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.analysis.lab.family.Half;
import steadyturn.analysis.lab.family.Situation;
import steadyturn.analysis.lab.study.FamilyRow;
import steadyturn.analysis.lab.study.FamilyTable;

/** What a page says of the families comes from a kept run and counts what the kept cells say. */
final class FamilyPageTest {

  @TempDir private Path folder;

  private static FamilyRow row(String name, double withheld, double rmse, double half, double pct) {
    return new FamilyRow(name, "mm", 96, withheld, rmse, -0.5, half, pct, 1017);
  }

  private static final List<FamilyTable> TABLES =
      List.of(
          new FamilyTable(
              Situation.STANDARD,
              48,
              96,
              100,
              0,
              Map.of(),
              List.of(
                  row("pelvis.slide @ top", 1.5, 9, 18, 95),
                  row("pelvis.slide @ impact", 0, 10, 26, 99.5))),
          new FamilyTable(
              Situation.SOFT_BLOWS,
              48,
              96,
              99,
              2,
              Map.of(),
              List.of(
                  row("pelvis.slide @ top", 7.25, 9, 18, 86.5),
                  row("pelvis.slide @ impact", 0, 10, 20, 88))));

  @Test
  void aKeptRunReadsAsItWas() throws IOException {
    // Given: two families of two cells. Expect: the same records; flags are not kept, all figures
    // have fewer digits than are written.
    Path file = FamilyFile.beside(folder.resolve("accuracy.md"), Half.JUDGING);
    FamilyFile.write(file, TABLES);
    assertThat(file.getFileName()).hasToString("families-judging.tsv");
    assertThat(FamilyFile.read(file)).isEqualTo(TABLES);
    assertThat(FamilyFile.read(folder.resolve("none.tsv"))).isEmpty();
  }

  @Test
  void whatIsNoKeptRunIsRefused() throws IOException {
    Path file = Files.writeString(folder.resolve("families-tuning.tsv"), "something\n");
    assertThatThrownBy(() -> FamilyFile.read(file))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("line 1");
  }

  @Test
  void theCellsAreCountedByHowOftenTheyHold() {
    // Given: of four cells one in 90..99 (95), one above (99.5), two below 90 of which one below
    // 87.
    // Wider than 2.5 errors: 26 of 10 only. Counted by hand.
    String page = FamilyPage.of(Half.TUNING, TABLES);
    assertThat(page)
        .contains("Of 4 cells")
        .contains("25.0 % hold in 90 to 99 %, 25.0 % more often, 50.0 % in less than 90, 25.0 % in")
        .contains("25.0 % are wider (half) than 2.5 RMSE")
        .contains("at most: 1.5 % in standard, 7.3 % in the others") // 7.25
        .contains("99.0 % or more; other movements taken for swings: 2")
        .contains("| soft-blows |  | **9.0 ± 18.0 mm, 87 %** |") // 86.5
        .contains("Hold least often: pelvis.slide @ top in soft-blows 86.5 %");
    assertThat(FamilyPage.of(Half.TUNING, List.of())).isEmpty();
  }
}
