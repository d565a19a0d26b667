package steadyturn.cli.command.mat;

import java.util.regex.Pattern;
import steadyturn.cli.words.Words;

/**
 * Sentences that are also said in the terminal, in the units of the page: degrees as °, lengths in
 * centimetres.
 */
final class PageUnits {

  private static final Pattern DEG = Pattern.compile("(?<=\\d) deg\\b(?!/)");
  private static final Pattern MM = Pattern.compile("(\\d+) mm\\b(?!/)");
  private static final double MM_PER_CM = 10;

  private PageUnits() {}

  static String in(String sentence) {
    String turned = DEG.matcher(sentence).replaceAll("°");
    return MM.matcher(turned)
        .replaceAll(
            of -> {
              double cm = Integer.parseInt(of.group(1)) / MM_PER_CM;
              return Words.inUse().decimal(cm, cm == Math.rint(cm) ? 0 : 1) + " cm";
            });
  }
}
