package steadyturn.cli.command.lesson;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import picocli.CommandLine.Option;
import steadyturn.analysis.coach.BestSwing;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.compare.LessonSwing;
import steadyturn.analysis.compare.SwingGroup;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.cli.lesson.Lessons;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.words.Words;
import steadyturn.ingest.reason.Reason;

/** The options that choose what a player's swings are held against. */
final class ModelChoice {

  private static final String BEST = "best";

  @Option(names = "--model", paramLabel = "PATH")
  private Optional<Path> model = Optional.empty();

  @Option(names = "--model-swing", paramLabel = "N|best")
  private Optional<String> modelSwing = Optional.empty();

  /**
   * What was chosen.
   *
   * @param swings empty where no model was asked for
   * @param notice what a reader should know of the choice, or none
   */
  record Chosen(Optional<SwingGroup> swings, Reason notice) {}

  /** Reads the model lesson; warns and answers empty where it has no such swing. */
  Optional<Chosen> choose(Teaching teaching, Console console) {
    if (model.isEmpty()) {
      return Optional.of(new Chosen(Optional.empty(), Reason.NONE));
    }
    if (modelSwing.isPresent() && !modelSwing.get().matches("best|[1-9][0-9]{0,5}")) {
      throw console.wrongUsage(
          "--model-swing takes a number or \"best\", not \"" + modelSwing.get() + "\"");
    }
    Lessons lessons = Lessons.under(List.of(model.get()), console);
    List<LessonSwing> all = Gathered.of(lessons, AnalysisSettings.defaults()).swings();
    Optional<Chosen> chosen =
        modelSwing.filter(BEST::equals).isPresent() ? best(teaching, all) : asked(all);
    if (chosen.isEmpty()) {
      console.warn(Words.say("model.none", model.get()));
    }
    return chosen;
  }

  private Optional<Chosen> asked(List<LessonSwing> all) {
    List<LessonSwing> these = all.stream().filter(each -> isAsked(each.swing())).toList();
    return these.isEmpty()
        ? Optional.empty()
        : Optional.of(new Chosen(Optional.of(new SwingGroup("model", these)), Reason.NONE));
  }

  private boolean isAsked(SwingResult swing) {
    return modelSwing.isPresent()
        ? swing.number() == Integer.parseInt(modelSwing.get())
        : swing.kind() == SwingKind.HIT && swing.counts();
  }

  private static Optional<Chosen> best(Teaching teaching, List<LessonSwing> all) {
    List<SwingResult> hits =
        all.stream()
            .map(LessonSwing::swing)
            .filter(s -> s.kind() == SwingKind.HIT && s.counts())
            .toList();
    return BestSwing.among(teaching, hits)
        .map(
            best -> {
              List<LessonSwing> one =
                  all.stream().filter(each -> each.swing().equals(best.swing())).toList();
              return new Chosen(Optional.of(new SwingGroup("model", one)), reason(best));
            });
  }

  private static Reason reason(BestSwing best) {
    String alike = best.alike().stream().map(String::valueOf).collect(Collectors.joining(", "));
    int number = best.swing().number();
    return alike.isEmpty()
        ? Reason.of(ModelReason.BEST, number)
        : Reason.of(ModelReason.ALIKE, number, alike);
  }
}
