package steadyturn.ingest.columnmap;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVRecord;
import steadyturn.ingest.columnmap.layout.MapPart;

/**
 * A column that the map does not name and that tells several units in one table apart: a few words,
 * coming in turns. Numbers count only under a name that says so, as a button is pressed in turns
 * too.
 *
 * @param isOfWords whether they are no numbers
 */
record TellingColumn(String name, Set<String> words, boolean isOfWords) {

  private static final int LOOKED_AT = 5_000;
  private static final int MOST_WORDS = 8;

  /** Words that change more seldom than in every so many rows are no units in turns. */
  private static final int ROWS_A_CHANGE = 50;

  private static final Pattern NAME =
      Pattern.compile("(?i).*(address|device|sensor|unit|node|serial|mac|imu|^id$|_id$| id$).*");

  /** Finds it among the first rows. */
  static Optional<TellingColumn> in(Path file, MapPart part) {
    List<TellingCount> counts = new ArrayList<>();
    MappedNumber numbers = new MappedNumber(part.table());
    try (MappedTable table = MappedTable.open(file, part.table())) {
      for (int row = 0; row < LOOKED_AT && table.hasNext(); row++) {
        CSVRecord record = table.next();
        for (int i = 0; i < record.size(); i++) {
          if (i == counts.size()) {
            counts.add(new TellingCount(table.name(i)));
          }
          counts.get(i).add(record.get(i), numbers);
        }
      }
    }
    return counts.stream()
        .filter(TellingCount::tells)
        .findFirst()
        .map(c -> new TellingColumn(c.name, c.words, c.hasText));
  }

  String told() {
    return "Column "
        + name
        + " tells units apart ("
        + String.join(", ", words)
        + "): give each [[unit]] its rows by where = { column = \""
        + name
        + "\", is = \""
        + words.iterator().next()
        + "\" }.";
  }

  private static final class TellingCount {
    private final String name;
    private final Set<String> words = new LinkedHashSet<>();
    private String last = "";
    private int rows;
    private int changes;
    private boolean hasText;

    TellingCount(String name) {
      this.name = name;
    }

    void add(String cell, MappedNumber numbers) {
      if (words.size() > MOST_WORDS) {
        return;
      }
      rows++;
      changes += rows > 1 && !cell.equals(last) ? 1 : 0;
      last = cell;
      words.add(cell);
      hasText |= !numbers.isMissing(cell) && !numbers.isNumber(cell);
    }

    boolean tells() {
      return words.size() > 1
          && words.size() <= MOST_WORDS
          && !words.contains("")
          && changes > rows / ROWS_A_CHANGE
          && (hasText || NAME.matcher(name).matches());
    }
  }
}
