package steadyturn.analysis.coach;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.DoubleStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.lab.LessonSimulator;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.analysis.lab.body.PlayerStyle;
import steadyturn.analysis.lab.truth.SwingTruth;
import steadyturn.analysis.lab.truth.TrueMeasure;
import steadyturn.analysis.measure.Measure;

/**
 * The table of docs/measures.md that shows where the point turned about lies in a turner and in a
 * slider, from simulated truth alone. {@code -Ddocs.refresh=true} writes it anew.
 */
class PivotTableTest {

  private static final Path PAGE = Path.of("..", "docs", "measures.md");
  private static final String BEGIN = "<!-- pivot by style, from simulated truth -->";
  private static final String END = "<!-- end -->";
  private static final int LESSONS = 20;
  private static final Map<String, List<SwingTruth>> SWINGS = new TreeMap<>();
  private static final List<Measure> COLUMNS =
      List.of(
          Measure.PELVIS_TURN,
          Measure.PELVIS_SLIDE,
          Measure.PELVIS_CENTRE_ALONG,
          Measure.PELVIS_CENTRE_ACROSS,
          Measure.PELVIS_CENTRE_DISTANCE);

  @Test
  void theTableOfThePageIsWhatTheSimulatedPlayersDo() throws IOException {
    // Given: 20 lessons of four swings of each style (seeds 1 to 20), no unit, the truth only.
    // Expect: the lines of the page, to the digit.
    String page = Files.readString(PAGE);
    int from = page.indexOf(BEGIN) + BEGIN.length();
    int to = page.indexOf(END, from);
    String now = "\n" + String.join("\n", lines()) + "\n";
    if (Boolean.getBoolean("docs.refresh")) {
      Files.writeString(PAGE, page.substring(0, from) + now + page.substring(to));
      return;
    }
    assertThat(page.substring(from, to)).isEqualTo(now);
  }

  private static List<String> lines() {
    List<String> lines = new ArrayList<>();
    lines.add("| style | turn deg | slide mm | pivot along mm | pivot across mm | pivot off mm |");
    lines.add("|---|---|---|---|---|---|");
    for (PlayerStyle style :
        List.of(PlayerStyle.steadyTurner(), PlayerStyle.mixed(), PlayerStyle.slider())) {
      List<SwingTruth> swings = SWINGS.computeIfAbsent(style.name(), name -> swings(style));
      StringBuilder row = new StringBuilder("| " + style.name() + " |");
      COLUMNS.forEach(measure -> row.append(cell(swings, measure)));
      lines.add(row.toString());
    }
    return lines;
  }

  private static List<SwingTruth> swings(PlayerStyle style) {
    return LongStream.rangeClosed(1, LESSONS)
        .mapToObj(seed -> swings(style, seed))
        .flatMap(List::stream)
        .toList();
  }

  private static List<SwingTruth> swings(PlayerStyle style, long seed) {
    LessonSpec spec =
        LessonSpec.standard()
            .withPlayer(style)
            .withHits(4)
            .withPractices(0)
            .withWaggles(0)
            .withUnits(Set.of());
    return LessonSimulator.simulate(spec, seed).truth().swings();
  }

  /** The middle of the swings, and between what nine of ten lie. */
  private static String cell(List<SwingTruth> swings, Measure measure) {
    double[] values =
        swings.stream()
            .flatMap(s -> s.truth(measure, "top").stream())
            .flatMapToDouble(v -> DoubleStream.of(v.value()))
            .sorted()
            .toArray();
    return String.format(
        Locale.ROOT,
        " %.0f (%.0f to %.0f) |",
        Math.rint(at(values, 0.5)) + 0.0,
        Math.rint(at(values, 0.05)) + 0.0,
        Math.rint(at(values, 0.95)) + 0.0);
  }

  private static double at(double[] sorted, double part) {
    return sorted[(int) Math.rint(part * (sorted.length - 1))];
  }

  @Test
  void aSlidersPointLiesOffTheHipsAndATurnersDoesNot() {
    // Given: the lessons of the table. Expect: nine of ten turners within 58 mm (60 % share of turn
    // for a pelvis 240 mm wide), nineteen of twenty sliders beyond it, and behind the hips.
    assertThat(part(PlayerStyle.steadyTurner(), Measure.PELVIS_CENTRE_DISTANCE, 0, 58))
        .isGreaterThan(0.9);
    assertThat(part(PlayerStyle.slider(), Measure.PELVIS_CENTRE_DISTANCE, 58, 1000))
        .isGreaterThan(0.95);
    assertThat(part(PlayerStyle.slider(), Measure.PELVIS_CENTRE_ACROSS, -1000, -58))
        .isGreaterThan(0.95);
  }

  private static double part(PlayerStyle style, Measure measure, double low, double high) {
    double[] values =
        SWINGS.computeIfAbsent(style.name(), name -> swings(style)).stream()
            .flatMap(s -> s.truth(measure, "top").stream())
            .mapToDouble(TrueMeasure::value)
            .toArray();
    return Arrays.stream(values).filter(v -> low <= v && v <= high).count()
        / (double) values.length;
  }
}
