package steadyturn.cli.command.lab;

import static java.util.Locale.ROOT;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import steadyturn.analysis.coach.teaching.TeachingReader;
import steadyturn.analysis.lab.SyntheticLesson;
import steadyturn.analysis.lab.telling.KnownFault;
import steadyturn.analysis.lesson.LessonAnalyzer;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.cli.page.LessonRuns;
import steadyturn.cli.page.Sheet;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.terminal.Progress;

/**
 * Makes the pages of simulated lessons, and counts what is told first and what contradicts itself.
 */
record PageScan(Console console, int balls) {

  private static final double LEAST_RIGHT = 0.95;

  /** What was found wrong with the pages of one lesson; an empty list is as it should be. */
  record Judged(boolean right, String told, List<String> complaints) {}

  int run(int lessons, long seed, Optional<String> only) {
    List<KnownFault> kinds =
        KnownFault.all().stream()
            .filter(k -> only.isEmpty() || k.name().equals(only.get()))
            .toList();
    if (kinds.isEmpty()) {
      String names =
          KnownFault.all().stream().map(KnownFault::name).collect(Collectors.joining("; "));
      throw console.wrongUsage("there is no kind \"%s\"; there are %s", only.get(), names);
    }
    Progress progress = console.progress(lessons * kinds.size());
    boolean kept = true;
    console.out().println("| kind | lessons | right first | complaints |");
    console.out().println("|---|---:|---:|---:|");
    for (KnownFault kind : kinds) {
      int right = 0;
      int complaints = 0;
      for (long s = seed; s < seed + lessons; s++) {
        String which = kind.name() + ", seed " + s + ": ";
        Judged judged = judge(kind, balls, s);
        right += judged.right() ? 1 : 0;
        complaints += judged.complaints().size();
        if (!judged.right()) {
          console.warn(which + "told first \"" + judged.told() + '"');
        }
        judged.complaints().forEach(c -> console.warn(which + c));
        progress.step(kind.name());
      }
      kept &= complaints == 0 && right >= LEAST_RIGHT * lessons;
      progress.clear();
      console
          .out()
          .printf(ROOT, "| %s | %d | %d | %d |%n", kind.name(), lessons, right, complaints);
      console.out().flush();
    }
    return kept ? Failures.DONE : Failures.FAILED;
  }

  static Judged judge(KnownFault kind, int balls, long seed) {
    Sheet sheet = sheet(kind.lesson(balls, seed));
    String told = sheet.advice().priority().map(f -> f.rule().name()).orElse("");
    return new Judged(kind.causes().contains(told), told, new PageJudge().complaints(sheet));
  }

  private static Sheet sheet(SyntheticLesson lesson) {
    LessonResult result = LessonAnalyzer.withDefaults().analyze(List.of(lesson.recording())).get(0);
    LessonRuns runs = new LessonRuns(result.player(), "");
    runs.add(result, lesson.recording().marks(), List.of());
    return Sheet.of("01", runs, TeachingReader.shipped(), "", Optional.empty());
  }
}
