package steadyturn.cli.lesson;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.words.Words;
import steadyturn.ingest.recording.disk.WholeFile;

/**
 * The pages that one command writes into a folder. Two lessons of equal name get a page each; a
 * page that was there before is replaced, and that is said.
 */
public final class Pages {

  private final Path folder;
  private final Console console;
  private final Set<Path> written = new HashSet<>();

  public Pages(Path folder, Console console) {
    this.folder = folder;
    this.console = console;
  }

  /** Writes a page; returns its file. */
  public Path write(String name, String text) throws IOException {
    Path file = folder.resolve(name);
    for (int copy = 2; !written.add(file); copy++) {
      file = folder.resolve(name.replaceFirst("(\\.[a-z]+)$", "_" + copy + "$1"));
    }
    boolean isAnother = Files.exists(file) && !Files.readString(file).equals(text);
    WholeFile.write(file, text);
    if (isAnother) {
      console.warn(Words.say("pages.replaced", file));
    }
    return file;
  }
}
