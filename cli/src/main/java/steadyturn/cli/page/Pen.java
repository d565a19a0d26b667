package steadyturn.cli.page;

import java.util.Locale;
import java.util.Optional;
import steadyturn.analysis.compare.ErrorSplit;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.page.reader.Audience;
import steadyturn.cli.page.reader.LengthUnits;
import steadyturn.cli.words.Words;

/** What every part of a page writes with: the content, the words, the units, the reader. */
record Pen(Sheet sheet, Words words, LengthUnits units, Audience audience) {

  boolean forPlayer() {
    return audience == Audience.PLAYER;
  }

  /** The end of a key whose text is another one for the player. */
  String reader() {
    return forPlayer() ? ".player" : "";
  }

  String text(String key, Object... values) {
    return words.text(key, values);
  }

  /** The key of a position's name in a picture: the player starts where others address the ball. */
  String pictureKey(String at) {
    return "picture." + (forPlayer() && at.equals("address") ? "start" : at) + reader();
  }

  String unit(Measure measure) {
    return amounts().unit(measure);
  }

  Amounts amounts() {
    return new Amounts(units, audience, words);
  }

  /** +1 where the target lies on the left of a picture: right-handed players seen from above. */
  int leftIsTarget() {
    return sheet.player().handed().sign();
  }

  /** The mean of a measure over the swings; empty where no swing has it. */
  Optional<GroupSummary> mean(Measure measure, String at) {
    if (sheet.swings().isEmpty()) {
      return Optional.empty();
    }
    GroupSummary mean =
        GroupSummary.of(sheet.group(), new MeasureAt(measure, at), ErrorSplit.defaults());
    return mean.count() == 0 ? Optional.empty() : Optional.of(mean);
  }

  /** The mean as a picture or a sentence gives it: with its range, or "about" for the player. */
  String amount(Measure measure, String at) {
    return mean(measure, at).map(m -> amount(m, measure)).orElse("–");
  }

  String amount(GroupSummary mean, Measure measure) {
    if (forPlayer()) {
      return about(mean.mean(), measure);
    }
    if (mean.count() < 3) {
      return amounts().amount(mean.mean(), measure);
    }
    double half = mean.halfWidthOfMean();
    return ranged(mean.mean(), mean.mean() - half, mean.mean() + half, measure);
  }

  String ranged(double value, double low, double high, Measure measure) {
    return amounts().ranged(value, low, high, measure);
  }

  /** "about 5 cm away from the target". */
  String about(double value, Measure measure) {
    String about = words.text("unit.about", amounts().plain(value, measure));
    if (measure != Measure.PELVIS_SLIDE) {
      return about;
    }
    return words.text(value < 0 ? "unit.away" : "unit.towards", about);
  }

  /** A sentence with a capital at its start. */
  static String sentence(String text) {
    return text.isEmpty()
        ? text
        : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  /** The name of a measure at a key position. */
  String name(MeasureAt what) {
    String before = forPlayer() ? "plain." : "";
    String measure = words.text((forPlayer() ? "plain." : "measure.") + what.measure().id());
    return what.at().isEmpty() ? measure : measure + " " + words.text(before + "at." + what.at());
  }
}
