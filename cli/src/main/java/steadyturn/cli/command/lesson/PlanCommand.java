package steadyturn.cli.command.lesson;

import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import steadyturn.analysis.compare.HitOrder;
import steadyturn.cli.output.table.HitOrderTable;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;

/** Lays out in which order to hit clubs that are to be compared. */
@Command(name = "plan", sortOptions = false)
public final class PlanCommand implements Callable<Integer> {

  private static final int MOST_BALLS = 500;

  @Mixin private Console console;

  @Parameters(paramLabel = "CLUB", arity = "1..*")
  private List<String> clubs = List.of();

  @Option(names = "--balls", paramLabel = "N")
  private int balls = 12;

  @Override
  public Integer call() throws Exception {
    List<String> named = clubs.stream().map(String::strip).distinct().toList();
    if (named.size() < 2 || named.size() < clubs.size() || named.contains("")) {
      throw console.wrongUsage("plan takes two different clubs or more, such as 7-iron driver");
    }
    if (balls < 3 || balls > MOST_BALLS) {
      throw console.wrongUsage("--balls takes 3 to %s, not %s", MOST_BALLS, balls);
    }
    HitOrderTable.write(HitOrder.of(named, balls), console.out());
    return Failures.DONE;
  }
}
