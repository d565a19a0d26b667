package steadyturn.cli.command.lab;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import steadyturn.analysis.lab.telling.ComparisonStudy;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;

/** Prints how often a comparison kept its promises. */
record ComparisonScan(Console console) {

  int run(int comparisons, long seed) {
    ComparisonStudy study = new ComparisonStudy(seed);
    List<ComparisonStudy.Promise> promises = new ArrayList<>(study.run(comparisons));
    boolean kept = promises.stream().allMatch(ComparisonStudy.Promise::isKept);
    promises.add(study.inBlocks(comparisons));
    console.out().println("| promise | counted | of | part % | promised % |");
    console.out().println("|---|---:|---:|---:|---:|");
    for (ComparisonStudy.Promise p : promises) {
      console
          .out()
          .printf(
              Locale.ROOT,
              "| %s | %d | %d | %.1f | %.0f to %.0f |%n",
              p.what(),
              p.kept(),
              p.of(),
              100 * p.part(),
              100 * p.low(),
              100 * p.high());
    }
    return kept ? Failures.DONE : Failures.FAILED;
  }
}
