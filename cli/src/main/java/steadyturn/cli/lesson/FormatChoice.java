package steadyturn.cli.lesson;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import picocli.CommandLine.Option;
import steadyturn.cli.terminal.Console;

/** The option that chooses in which form a command answers. */
public final class FormatChoice {

  /** A form of results. */
  public enum Format {
    TABLE,
    JSON,
    TSV,
    HTML;

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  @Option(names = "--format", paramLabel = "FORMAT")
  private Optional<Format> format = Optional.empty();

  /** What was asked for; the first of those offered where nothing was. */
  public Format among(Console console, Format... offered) {
    List<Format> all = List.of(offered);
    Format asked = format.orElse(all.get(0));
    if (!all.contains(asked)) {
      throw console.wrongUsage(
          "--format takes %s here, not %s",
          all.stream().map(Format::toString).collect(Collectors.joining(" or ")), asked);
    }
    return asked;
  }
}
