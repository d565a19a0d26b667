package steadyturn.cli.lesson;

import java.nio.file.Path;
import picocli.CommandLine.Option;
import steadyturn.cli.page.reader.LengthUnits;
import steadyturn.cli.terminal.Console;

/** The options of a page: which club it is about, its lengths, and where it goes. */
public final class PageChoice {

  @Option(names = "--club", paramLabel = "CLUB")
  private String club = "";

  @Option(names = "--out", paramLabel = "DIR")
  private Path out = Path.of("");

  @Option(names = "--units", paramLabel = "UNITS")
  private LengthUnits units = LengthUnits.METRIC;

  /** The club asked for, or an empty string. */
  public String club() {
    return club;
  }

  public LengthUnits units() {
    return units;
  }

  /** Where the pages of this command go. */
  public Pages pages(Console console) {
    return new Pages(out, console);
  }
}
