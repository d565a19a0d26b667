package steadyturn.cli.command;

import java.nio.file.Path;
import picocli.CommandLine.Option;
import steadyturn.cli.page.LengthUnits;

/** The options of a page: which club it is about, its lengths, and where it goes. */
final class PageChoice {

  @Option(names = "--club", paramLabel = "CLUB", description = "Default: the one most hit.")
  private String club = "";

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description = "Folder for the page. Default: the current one.")
  private Path out = Path.of("");

  @Option(
      names = "--units",
      paramLabel = "UNITS",
      description = "Lengths on the page: metric or imperial. Default: metric.")
  private LengthUnits units = LengthUnits.METRIC;

  /** The club asked for, or an empty string. */
  String club() {
    return club;
  }

  LengthUnits units() {
    return units;
  }

  /** Where the pages of this command go. */
  Pages pages(Console console) {
    return new Pages(out, console);
  }
}
