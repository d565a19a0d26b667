package steadyturn.analysis.lab.study;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import steadyturn.analysis.lab.family.Situation;

/**
 * What came out in one situation.
 *
 * @param swings that were made
 * @param foundPct of them
 * @param taken other movements taken for swings
 * @param flagsPct share of the found swings that carry each flag
 */
public record FamilyTable(
    Situation situation,
    int lessons,
    int swings,
    double foundPct,
    int taken,
    Map<String, Double> flagsPct,
    List<FamilyRow> rows) {

  public FamilyTable {
    flagsPct = new TreeMap<>(flagsPct);
    rows = List.copyOf(rows);
  }

  /** Share of the cells whose intervals hold as often as they should, percent. */
  public static double honestPct(List<FamilyTable> tables) {
    long all = tables.stream().mapToLong(t -> t.rows.size()).sum();
    long honest = tables.stream().flatMap(t -> t.rows.stream()).filter(FamilyRow::isHonest).count();
    return 100.0 * honest / Math.max(1, all);
  }

  /** The cell whose intervals hold least often. */
  public Optional<FamilyRow> worst() {
    return rows.stream().min(Comparator.comparingDouble(FamilyRow::coveragePct));
  }
}
