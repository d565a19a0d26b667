package steadyturn.cli.command.lab;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import steadyturn.analysis.lab.study.DropoutStudy;
import steadyturn.analysis.reading.LessonReading;
import steadyturn.cli.lesson.Lessons;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.terminal.Progress;
import steadyturn.ingest.sample.Recording;

/** Lays dropouts on lessons and prints what they did. */
record DropoutScan(Console console, List<Path> on) {

  private static final int SIMULATED = 3;
  private static final int LONG_PART = 10;
  private static final int WORST = 20;

  /** Exit code 1 when something moved in silence or was withheld for nothing. */
  int run(int cases, long seed) {
    List<List<Recording>> lessons = new ArrayList<>();
    Lessons found = Lessons.under(on.isEmpty() ? List.of(bundled()) : on, console);
    found.each(
        lesson -> {
          List<Recording> recordings = new ArrayList<>();
          new LessonReading(lesson, found).forEach(recordings::add);
          lessons.add(recordings);
        });
    if (on.isEmpty()) {
      lessons.addAll(DropoutStudy.simulated(SIMULATED, seed));
    }
    if (lessons.isEmpty()) {
      return Failures.FAILED;
    }
    int more = cases / LONG_PART;
    Progress progress = console.progress(cases + more);
    DropoutStudy study = new DropoutStudy(lessons, seed, () -> progress.step("dropouts"));
    DropoutStudy.Findings findings = study.lay(cases).layLong(more).findings(WORST);
    progress.clear();
    console.out().print(DropoutTable.of(findings));
    boolean reached = findings.rows().stream().allMatch(row -> row.reached());
    return reached && found.allWell() ? Failures.DONE : Failures.FAILED;
  }

  private static Path bundled() {
    return Path.of(System.getProperty("steadyturn.home", ".")).resolve("sample-recordings");
  }
}
