package steadyturn.cli.command.live;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import steadyturn.ingest.mark.MarkWord;

/**
 * A line typed while a lesson is recorded.
 *
 * @param order what is to be done
 * @param word of the mark, where it is one
 * @param club with a mark, or empty
 * @param note with a mark, or empty
 */
record TypedLine(Order order, Optional<MarkWord> word, String club, String note) {

  /** What a line may ask for. */
  enum Order {
    /** Enter alone. */
    BEGIN(""),
    MARK(""),
    SKIP("s"),
    LATER("l"),
    AGAIN("a"),
    /** Takes the last mark back. */
    UNSAY("u"),
    HELP("?"),
    QUIT("q"),
    UNKNOWN("");

    private final String key;

    Order(String key) {
      this.key = key;
    }

    private boolean isMeantBy(String typed) {
      String word = name().toLowerCase(Locale.ROOT);
      return !(this == BEGIN || this == MARK || this == UNKNOWN)
          && (typed.equals(key) || typed.equals(word));
    }
  }

  private static final List<MarkWord> KEYED =
      List.of(MarkWord.HIT, MarkWord.PRACTICE, MarkWord.CLUB, MarkWord.NOTE, MarkWord.DONE);

  /** A number, or a word that names clubs (common practice, no source). */
  private static final Pattern USUAL_CLUB =
      Pattern.compile(
          "\\d|driver|iron|wood|hybrid|wedge|putter|^[pslga]w$", Pattern.CASE_INSENSITIVE);

  static TypedLine of(String line) {
    String typed = line.strip();
    if (typed.isEmpty()) {
      return order(Order.BEGIN);
    }
    String[] parts = typed.split("\\s+", 2);
    String rest = parts.length > 1 ? parts[1] : "";
    String first = parts[0].toLowerCase(Locale.ROOT);
    Optional<Order> order =
        Arrays.stream(Order.values()).filter(o -> rest.isEmpty() && o.isMeantBy(first)).findFirst();
    return order.map(TypedLine::order).orElseGet(() -> mark(first, rest));
  }

  private static TypedLine order(Order order) {
    return new TypedLine(order, Optional.empty(), "", "");
  }

  private static TypedLine mark(String first, String rest) {
    Optional<MarkWord> word = word(first);
    if (word.isEmpty()) {
      return new TypedLine(Order.UNKNOWN, Optional.empty(), "", "");
    }
    return switch (word.get()) {
      case CLUB -> marked(word, rest.replace("\"", ""), "");
      case HIT, PRACTICE -> ofSwing(word, rest);
      default -> marked(word, "", rest);
    };
  }

  /** The club is the first word, or what stands in quotes; the rest is the note. */
  private static TypedLine ofSwing(Optional<MarkWord> word, String rest) {
    boolean isQuoted = rest.startsWith("\"");
    String[] parts = isQuoted ? rest.substring(1).split("\"", 2) : rest.split("\\s+", 2);
    return marked(word, parts[0], parts.length > 1 ? parts[1] : "");
  }

  /** Whether what stands for a club beside a ball may rather be a note. */
  boolean isOddClub() {
    return !(club.isEmpty() || word.equals(Optional.of(MarkWord.CLUB)))
        && !USUAL_CLUB.matcher(club).find();
  }

  private static TypedLine marked(Optional<MarkWord> word, String club, String note) {
    return new TypedLine(Order.MARK, word, club.strip(), note.strip());
  }

  /** A word, its first letter where it is a usual one, or the number of a wear step. */
  private static Optional<MarkWord> word(String typed) {
    Optional<MarkWord> usual =
        KEYED.stream().filter(w -> w.word().substring(0, 1).equals(typed)).findFirst();
    List<MarkWord> steps = MarkWord.steps();
    Optional<MarkWord> step = steps.stream().filter(w -> typed.equals(number(w))).findFirst();
    return MarkWord.of(typed).or(() -> usual).or(() -> step);
  }

  /** The key of a wear step. */
  static String number(MarkWord step) {
    return Integer.toString(1 + MarkWord.steps().indexOf(step));
  }

  /** The word that is nearest to one that is not known. */
  static String nearest(String line) {
    String typed = line.strip().split("\\s+", 2)[0];
    Stream<String> orders =
        Stream.of(Order.SKIP, Order.LATER, Order.AGAIN, Order.UNSAY, Order.HELP, Order.QUIT)
            .map(o -> o.name().toLowerCase(Locale.ROOT));
    return MarkWord.nearest(typed, Stream.concat(MarkWord.words(), orders));
  }
}
