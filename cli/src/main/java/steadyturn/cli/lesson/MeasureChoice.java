package steadyturn.cli.lesson;

import java.util.Arrays;
import java.util.List;
import java.util.function.Supplier;
import java.util.stream.Stream;
import picocli.CommandLine.Option;
import steadyturn.analysis.compare.LessonSwing;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.terminal.Console;

/** The option that chooses what is compared. */
public final class MeasureChoice {

  @Option(names = "--measure", paramLabel = "ID")
  private List<String> measures = List.of();

  /** Refuses what is no measure to compare. */
  public void check(Console console) {
    for (String words : measures) {
      String id = id(words);
      if (Arrays.stream(Measure.values()).noneMatch(m -> m.id().equals(id))) {
        throw console.wrongUsage("there is no measure \"" + id + "\"");
      }
      if (id.equals(Measure.PELVIS_TURN_TO_SLIDE.id())) {
        throw console.wrongUsage(
            "pelvis.turn-to-slide has no bound where slide is near zero; compare"
                + " pelvis.slide-per-turn or pelvis.turn-share");
      }
    }
  }

  private static String id(String words) {
    return words.split("@", 2)[0];
  }

  /** What to look at in these swings; empty where no swing has a value of it. */
  public List<MeasureAt> looks(List<LessonSwing> swings) {
    Supplier<Stream<MeasureAt>> given = () -> given(swings);
    if (measures.isEmpty()) {
      return MeasureAt.defaults().stream()
          .filter(what -> given.get().anyMatch(what::equals))
          .toList();
    }
    return measures.stream()
        .flatMap(words -> given.get().filter(what -> isAsked(words, what)))
        .distinct()
        .toList();
  }

  /** A measure without a position stands for all positions at which a swing has it. */
  private static boolean isAsked(String words, MeasureAt what) {
    return what.measure().id().equals(id(words))
        && (!words.contains("@") || words.endsWith("@" + what.at()));
  }

  private static Stream<MeasureAt> given(List<LessonSwing> swings) {
    return swings.stream()
        .flatMap(s -> s.swing().measures().stream())
        .filter(v -> v.given() && v.measure() != Measure.PELVIS_TURN_TO_SLIDE)
        .map(v -> new MeasureAt(v.measure(), v.at()));
  }
}
