package steadyturn.analysis.coach.teaching;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.measure.Measure;

class TeachingReaderTest {

  @TempDir Path folder;

  @Test
  void theShippedRulesHaveTenDrillsAndMoreForAllFiveThings() {
    Teaching teaching = TeachingReader.shipped();
    assertThat(teaching.drills()).hasSizeGreaterThanOrEqualTo(10);
    assertThat(teaching.drills().stream().map(Drill::worksOn).distinct())
        .containsExactlyInAnyOrder("turn", "slide", "circle", "release", "tempo");
  }

  @Test
  void everyShippedNumberSaysWhereItComesFrom() {
    Teaching teaching = TeachingReader.shipped();
    assertThat(teaching.limits().values()).allMatch(limit -> !limit.source().isBlank());
    assertThat(teaching.findings()).allMatch(rule -> !rule.source().isBlank());
  }

  @Test
  void everyLimitCarriesTheUnitOfTheMeasureItIsHeldTo() {
    Teaching teaching = TeachingReader.shipped();
    for (Rule rule : teaching.findings()) {
      for (Need need : rule.when()) {
        assertThat(teaching.limit(need.limit()).unit())
            .as(rule.name())
            .isEqualTo(need.what().measure().unit());
      }
    }
  }

  @Test
  void everyDrillCarriesTheCautionsThatGoWithAll() {
    assertThat(TeachingReader.shipped().drills())
        .allMatch(drill -> drill.cautions().containsAll(Drill.ALWAYS));
  }

  @Test
  void aConditionReadsAsATeacherWritesIt() {
    Need need = Need.read("spread of pelvis.turn at top above turn-uneven");
    assertThat(need)
        .isEqualTo(new Need(new MeasureAt(Measure.PELVIS_TURN, "top"), true, true, "turn-uneven"));
    assertThat(Need.read("tempo.back at swing below back-hurried").what().at()).isEmpty();
  }

  @Test
  void aTeachersFileLiesOnTopOfTheShippedOne() throws IOException {
    Path file =
        write(
            """
            [limit]
            slide-away = { value = -70, unit = "mm" }

            [[drill]]
            name = "own-drill"
            works-on = "turn"
            goal = "pelvis.turn at top between -60 and -50"
            reps = 5
            """);
    Teaching own = TeachingReader.read(file);
    assertThat(own.limit("slide-away").value()).isEqualTo(-70);
    assertThat(own.limit("slide-away").source()).isEmpty();
    assertThat(own.limit("turn-little").value())
        .isEqualTo(TeachingReader.shipped().limit("turn-little").value());
    assertThat(own.drill("own-drill").cautions()).contains("pain");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          [limit]\\nx = { value = "far", unit = "mm" }                          | limit x: value must be a number
          [[finding]]\\nname = "a"\\nwhen = ["pelvis.turn is small"]            | finding a: "pelvis.turn is small" is no condition
          [[finding]]\\nname = "a"\\nwhen = ["pelvis.spin at top above x"]      | there is no measure "pelvis.spin"
          [[finding]]\\nname = "a"\\nwhen = ["pelvis.turn at noon above x"]     | there is no position "noon"
          [[finding]]\\nname = "a"\\nwhen = ["pelvis.turn at top above x"]      | there is no limit "x"
          [[finding]]\\nname = "a"\\nwhen = []                                  | needs at least one condition
          [[drill]]\\nname = "a"\\nworks-on = "turn"\\ngoal = "more"\\nreps = 3 | drill a: write the goal like
          [[consequence]]\\nname = "a"                                         | exactly one of
          [finding]]                                                          | line 1
          [limit]\\nx = { value = nan, unit = "mm" }                            | limit x: value must be a number, like value = 8, not NaN
          [limit]\\nx = { value = -inf, unit = "mm" }                           | limit x: value must be a number
          [limit]\\nx = { value = 5, unit = "mm", source = " " }                | limit x: source is " ". Write source =
          [[ask]]\\nname = ""                                                 | name is "". Write name =
          ask = "x"                                                           | ask: is no list of entries. Begin each with [[ask]]
          limit = 5                                                           | limit: is no table
          [[finding]]\\nname = "a"\\nwhen = "pelvis.turn"                      | when is "pelvis.turn". Write when = ["..."]
          [[drill]]\\nname = "a"\\nworks-on = "turn"\\ngoal = "pelvis.turn at top between 1.2.3 and 5"\\nreps = 3 | write the goal like
          [[drill]]\\nname = "a"\\nworks-on = "turn"\\ngoal = "pelvis.turn at top between 1 and 5"\\nreps = 1e12 | reps is 1
          [[own-limit]]\\nlimit = "slide-away"\\nvalue = nan                   | value must be a number
          [[consequence]]\\nname = "a"\\ntendency-of = "a"                     | tendency-of goes round in a circle (a -> a)
          [[consequence]]\\nname = "a"\\ntendency-of = "b"\\n[[consequence]]\\nname = "b"\\ntendency-of = "a" | circle (a -> b -> a)
          [[rule]]\\nname = "a"                                                | there is no section [rule]
          """)
  void aMistakeIsToldWithItsPlaceAndWhatToDo(String text, String told) throws IOException {
    Path file = write(text.replace("\\n", "\n"));
    assertThatThrownBy(() -> TeachingReader.read(file))
        .isInstanceOf(TeachingException.class)
        .hasMessageContaining(told)
        .hasMessageStartingWith("own.toml");
  }

  private Path write(String text) throws IOException {
    return Files.writeString(folder.resolve("own.toml"), text);
  }

  @Test
  void theExampleOfTheHowToIsReadAsItStands() throws IOException {
    // Given: the box of docs/how-to/teach-your-way.md. Expect: its limit, its limit for one player
    // and club, its drill, and its finding in the place of the shipped one.
    String page = Files.readString(Path.of("..", "docs", "how-to", "teach-your-way.md"));
    String box = page.substring(page.indexOf("```toml") + 7);
    Path file = folder.resolve("how-to.toml");
    Files.writeString(file, box.substring(0, box.indexOf("```")));
    Teaching teaching = TeachingReader.read(file);
    assertThat(teaching.limit("slide-away").value()).isEqualTo(-40);
    assertThat(teaching.forPlayer("mika", "driver").limit("slide-away").value()).isEqualTo(-60);
    assertThat(teaching.forPlayer("mika", "7-iron").limit("slide-away").value()).isEqualTo(-40);
    assertThat(teaching.drill("towel-behind").high()).isEqualTo(-42);
    assertThat(teaching.findings())
        .filteredOn(rule -> rule.name().equals("little-turn"))
        .singleElement()
        .satisfies(rule -> assertThat(rule.drills()).startsWith("towel-behind"));
  }
}
