package steadyturn.cli.command.lab;

import static java.util.Locale.ROOT;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import steadyturn.analysis.lab.study.TwoWays;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.terminal.Progress;
import steadyturn.ingest.lab.Speech;

/**
 * Records simulated lessons as their units send them, and holds them against the simulated ones.
 */
final class TwoWaysScan {

  private static final int BALLS = 6;

  /** Units whose cable came out have gaps, so their values are held against the truth alone. */
  private static final double LEAST_GIVEN_PCT = 75;

  private static final double LEAST_COVERED_PCT = 90;

  private final Console console;

  TwoWaysScan(Console console) {
    this.console = console;
  }

  /**
   * Runs so many lessons; the exit code tells whether all levels were kept.
   *
   * @param atPorts whether units, recorder and keyboard are apart, in real time
   */
  int run(int lessons, long seed, boolean atPorts, Speech speech) throws IOException {
    TwoWays both =
        atPorts ? new TwoWays(speech, new MatLesson(1, speech)::record) : new TwoWays(speech);
    Path root = Files.createTempDirectory("two-ways");
    Progress progress = console.progress(lessons);
    int recorded = 0;
    for (int i = 0; i < lessons; i++) {
      try {
        both.add(seed + i, BALLS, root.resolve("lesson-" + (seed + i)));
        recorded++;
      } catch (IOException e) { // a machine too busy for one lesson does not take the others
        console.report(e);
      }
      progress.step("two ways");
    }
    progress.clear();
    console
        .out()
        .printf(ROOT, "%d of %d lessons, %d swings compared%n", recorded, lessons, both.swings());
    both.unlike().forEach(line -> console.out().println("unlike: " + line));
    for (TwoWays.Row row : both.rows()) {
      console
          .out()
          .printf(
              ROOT,
              "%-14s %-8s %4d values, median difference %7.3f %s, level %.2f%s%n",
              row.compared().measure().id(),
              row.compared().at(),
              row.values(),
              row.median(),
              row.compared().measure().unit(),
              row.compared().level(),
              row.reached() ? "" : ": MISSED");
    }
    console
        .out()
        .printf(
            ROOT,
            "the truth is within the interval of %.1f %% of %d values; %.0f %% of all are given%n",
            both.coveredPct(),
            both.judged(),
            both.givenPct());
    both.missed().forEach(line -> console.out().println("missed: " + line));
    console.out().println("recorded lessons: " + root);
    console.out().flush();
    boolean isNear = both.rows().stream().allMatch(TwoWays.Row::reached);
    boolean isTrue = both.coveredPct() >= LEAST_COVERED_PCT && both.givenPct() >= LEAST_GIVEN_PCT;
    boolean isWell =
        recorded == lessons && both.unlike().isEmpty() && (speech.isSetUp() ? isTrue : isNear);
    return isWell ? Failures.DONE : Failures.FAILED;
  }
}
