package steadyturn.cli.lesson;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import picocli.CommandLine.Option;
import steadyturn.cli.page.LengthUnits;

/** The options of a page: which club it is about, its lengths, and where it goes. */
public final class PageChoice {

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
  public String club() {
    return club;
  }

  public LengthUnits units() {
    return units;
  }

  /** Writes a page into the folder asked for; returns its file. */
  public Path write(String name, String text) throws IOException {
    return write(out, name, text);
  }

  /** Writes a page into a folder, made where it is not there; returns its file. */
  public static Path write(Path folder, String name, String text) throws IOException {
    Files.createDirectories(folder.toAbsolutePath());
    Path file = folder.resolve(name);
    Files.writeString(file, text);
    return file;
  }
}
