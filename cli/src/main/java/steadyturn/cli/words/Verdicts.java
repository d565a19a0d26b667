package steadyturn.cli.words;

import steadyturn.analysis.compare.ComparisonRow;
import steadyturn.analysis.compare.PairRow;
import steadyturn.analysis.measure.Measure;

/** What a comparison found, in words. */
public final class Verdicts {

  private Verdicts() {}

  /** {@code same within 2 deg}. */
  public static String of(ComparisonRow row, Words words) {
    return words.text("compare.verdict." + row.verdict().word(), margin(row));
  }

  /** {@code more than usual}. */
  public static String of(PairRow row, Words words) {
    return words.text("pair." + row.found().word());
  }

  private static String margin(ComparisonRow row) {
    Measure measure = row.what().measure();
    double x = row.margin();
    String number = x == Math.rint(x) ? Long.toString((long) x) : Double.toString(x);
    return measure.unit().equals("1") ? number : number + " " + measure.unit();
  }
}
