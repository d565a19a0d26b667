package steadyturn.cli.command.mat;

import java.util.Optional;
import java.util.regex.Pattern;
import steadyturn.analysis.limits.MountReason;
import steadyturn.cli.words.Words;
import steadyturn.ingest.reason.Reason;

/**
 * Sentences that are also said in the terminal, in the units of the page: degrees as °, lengths in
 * centimetres.
 */
final class PageUnits {

  private static final Pattern DEG = Pattern.compile("(?<=\\d) deg\\b");
  private static final Pattern MM = Pattern.compile("(\\d+) mm\\b(?!/)");
  private static final double MM_PER_CM = 10;

  private PageUnits() {}

  /** A reason as the page says it: of a unit that slipped the ball is known, not the second. */
  static String of(Reason why) {
    return slip(why)
        .map(its -> Words.say("mat.slipped.why", unit(its)))
        .orElseGet(() -> in(Words.inUse().text(why)));
  }

  /** The reason, or the one behind it, that says that a unit slipped. */
  static Optional<Reason> slip(Reason why) {
    if (why.isNone() || why.code() == MountReason.SLIPPED) {
      return Optional.of(why).filter(its -> !its.isNone());
    }
    return why.args().get(Reason.ALSO) instanceof Reason also ? slip(also) : Optional.empty();
  }

  /** The unit that a reason speaks of. */
  static Object unit(Reason why) {
    return why.args().getOrDefault("unit", "");
  }

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
