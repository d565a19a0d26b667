package steadyturn.cli.command.lab;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import steadyturn.analysis.lab.family.Half;
import steadyturn.analysis.lab.family.Situation;
import steadyturn.analysis.lab.study.FamilyRow;
import steadyturn.analysis.lab.study.FamilyTable;

/**
 * The last run of a half, every cell of it, kept beside the page that is made from it: the judging
 * half is not run again for a page.
 */
final class FamilyFile {

  private static final String HEADER =
      "family\tlessons\tswings\tfound_pct\ttaken\tvalue\tunit\tn\twithheld_pct\trmse\tbias\thalf_width"
          + "\tcovered_pct\tworst_seed";

  private FamilyFile() {}

  /** Where the run of a half is kept for a page. */
  static Path beside(Path page, Half half) {
    return page.resolveSibling("families-" + half.word() + ".tsv");
  }

  static void write(Path file, List<FamilyTable> tables) throws IOException {
    Stream<String> lines = tables.stream().flatMap(t -> t.rows().stream().map(r -> line(t, r)));
    Files.write(file, Stream.concat(Stream.of(HEADER), lines).toList(), UTF_8);
  }

  /** The tables of a kept run, without flags; none where nothing is kept. */
  static List<FamilyTable> read(Path file) throws IOException {
    if (!Files.exists(file)) {
      return List.of();
    }
    List<String> lines = Files.readAllLines(file, UTF_8);
    if (lines.isEmpty() || !lines.get(0).equals(HEADER)) {
      throw new IOException(file + ", line 1: these are not results of families; run them again");
    }
    Map<String, List<String[]>> byFamily =
        lines.stream()
            .skip(1)
            .map(l -> l.split("\t"))
            .collect(Collectors.groupingBy(c -> c[0], LinkedHashMap::new, Collectors.toList()));
    List<FamilyTable> tables = new ArrayList<>();
    byFamily.values().forEach(cells -> tables.add(table(cells)));
    return tables;
  }

  private static String line(FamilyTable t, FamilyRow r) {
    return String.format(
        Locale.ROOT,
        "%s\t%d\t%d\t%.2f\t%d\t%s\t%s\t%d\t%.2f\t%.4g\t%.4g\t%.4g\t%.2f\t%d",
        t.situation().word(),
        t.lessons(),
        t.swings(),
        t.foundPct(),
        t.taken(),
        r.name(),
        r.unit(),
        r.of(),
        r.withheldPct(),
        r.rmse(),
        r.bias(),
        r.halfWidth(),
        r.coveragePct(),
        r.worstSeed());
  }

  private static FamilyTable table(List<String[]> lines) {
    String[] c = lines.get(0);
    Situation situation =
        Stream.of(Situation.values()).filter(s -> s.word().equals(c[0])).findFirst().orElseThrow();
    return new FamilyTable(
        situation,
        Integer.parseInt(c[1]),
        Integer.parseInt(c[2]),
        Double.parseDouble(c[3]),
        Integer.parseInt(c[4]),
        Map.of(),
        lines.stream().map(FamilyFile::row).toList());
  }

  private static FamilyRow row(String[] c) {
    return new FamilyRow(
        c[5],
        c[6],
        Integer.parseInt(c[7]),
        Double.parseDouble(c[8]),
        Double.parseDouble(c[9]),
        Double.parseDouble(c[10]),
        Double.parseDouble(c[11]),
        Double.parseDouble(c[12]),
        Long.parseLong(c[13]));
  }
}
