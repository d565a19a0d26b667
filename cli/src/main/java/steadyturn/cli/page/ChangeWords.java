package steadyturn.cli.page;

import java.util.Optional;
import java.util.OptionalDouble;
import steadyturn.analysis.coach.teaching.GoodBand;
import steadyturn.analysis.compare.ComparisonRow;
import steadyturn.analysis.compare.ComparisonVerdict;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.compare.MeanDifference;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.words.Words;

/**
 * A change in a sentence: from where to where, by how much with its range, whether it is real, and
 * what it is worth on the way to what the teacher wants. A sign never stands for a direction.
 */
record ChangeWords(Words words, Amounts amounts) {

  /** {@code slide at the top: 121 → 50 mm away from the target; 70 mm less (52 to 88), ...}. */
  String of(ComparisonRow row, Optional<GoodBand> wanted) {
    MeanDifference d = row.difference().orElseThrow();
    double first = row.first().mean();
    double last = row.second().mean();
    String verdict = words.text("verdict." + row.verdict().word());
    boolean shown = row.verdict() != ComparisonVerdict.NOT_SHOWN;
    String worth = shown ? wanted.map(band -> worth(band, row)).orElse("") : "";
    return words.text(
        "progress.line",
        Pen.sentence(name(row.what())),
        fromTo(row.what(), first, last),
        by(row.what().measure(), first, last, d),
        verdict + (worth.isEmpty() ? "" : ", " + worth));
  }

  private String fromTo(MeasureAt what, double first, double last) {
    Measure measure = what.measure();
    if (!isSigned(measure)) {
      return words.text(
          "progress.from-to", amounts.number(first, measure), amounts.amount(last, measure));
    }
    String from = amounts.number(Math.abs(first), measure);
    String to = amounts.amount(Math.abs(last), measure);
    if (sameSide(first, last)) {
      return words.text("progress.from-to", from, directed(measure, last, to));
    }
    return words.text(
        "progress.from-to",
        directed(measure, first, amounts.amount(Math.abs(first), measure)),
        directed(measure, last, to));
  }

  private String directed(Measure measure, double value, String amount) {
    String group = measure == Measure.PELVIS_TURN ? "progress.turned" : "unit";
    return words.text(group + (value < 0 ? ".away" : ".towards"), amount);
  }

  private String by(Measure measure, double first, double last, MeanDifference d) {
    boolean mirrored = isSigned(measure) && sameSide(first, last) && last < 0;
    int sign = mirrored ? -1 : 1;
    double value = sign * d.value();
    double low = sign > 0 ? d.low() : -d.high();
    double high = sign > 0 ? d.high() : -d.low();
    boolean less = value < 0;
    String key = !isSigned(measure) || sameSide(first, last) ? "progress.by" : "progress.by.side";
    return words.text(
        key + (less ? ".less" : ".more"),
        amounts.amount(Math.abs(value), measure),
        amounts.number(less ? -high : low, measure),
        amounts.number(less ? -low : high, measure));
  }

  private static boolean isSigned(Measure measure) {
    return measure == Measure.PELVIS_TURN || measure == Measure.PELVIS_SLIDE;
  }

  private static boolean sameSide(double first, double last) {
    return first * last >= 0;
  }

  /**
   * How far on the way, in words; a goal is reached where the whole range of the mean lies in it.
   */
  private String worth(GoodBand band, ComparisonRow row) {
    GroupSummary last = row.second();
    double half = last.halfWidthOfMean();
    boolean surely = band.holds(last.mean() - half) && band.holds(last.mean() + half);
    OptionalDouble part = band.partOfTheWay(row.first().mean(), last.mean());
    if (part.isEmpty()) {
      return words.text(band.holds(last.mean()) ? "progress.way.kept" : "progress.way.left");
    }
    return words.text("progress.way." + way(part.getAsDouble(), band.holds(last.mean()), surely));
  }

  private static String way(double part, boolean holds, boolean surely) {
    if (part >= 1) {
      return surely ? "reached" : holds ? "edge" : "beyond";
    }
    if (part < 0.1) {
      return part < -0.1 ? "back" : "none";
    }
    return part < 0.3 ? "quarter" : part < 0.42 ? "third" : part < 0.6 ? "half" : "most";
  }

  String name(MeasureAt what) {
    String measure = words.text("measure." + what.measure().id());
    return what.at().isEmpty() ? measure : measure + " " + words.text("at." + what.at());
  }
}
