package steadyturn.ingest.archive;

import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How a player is named in an archive: by an id in the names of files and in cells, by label or
 * shown name in words.
 *
 * @param label the player's label
 * @param shownName the shown name; empty where there is none but the label
 */
record PlayerNames(String label, String shownName) {

  private static final String BEFORE = "(?<![\\p{L}\\p{N}])";
  private static final String BEHIND = "(?![\\p{L}\\p{N}])";

  String id() {
    return "sub-" + label;
  }

  /** The id as such, not as the beginning of a longer one. */
  Pattern ofId() {
    return Pattern.compile(BEFORE + Pattern.quote(id()) + BEHIND);
  }

  /** Id, label or shown name as words. A label of digits alone says nothing outside an id. */
  Pattern ofWords() {
    StringBuilder any = new StringBuilder(Pattern.quote(id()));
    if (!shownName.isBlank()) {
      any.append('|').append(Pattern.quote(shownName.strip()));
    }
    if (label.chars().anyMatch(Character::isLetter)) {
      any.append('|').append(Pattern.quote(label));
    }
    return Pattern.compile(
        BEFORE + "(?:" + any + ")" + BEHIND, Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
  }

  /** Whether a file or folder bears the id. */
  boolean isOn(Path path) {
    return ofId().matcher(String.valueOf(path.getFileName())).find();
  }

  /** Whether a cell is an id of this player or the name of a file of theirs. */
  boolean isCell(String cell) {
    String name = cell.substring(cell.lastIndexOf('/') + 1);
    Matcher id = ofId().matcher(name);
    return id.lookingAt();
  }
}
