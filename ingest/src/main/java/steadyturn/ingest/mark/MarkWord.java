package steadyturn.ingest.mark;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** The words a mark may have, in the order in which a lesson uses them. */
public enum MarkWord {
  TABLE_REST,
  AIM,
  QUIET_STANCE,
  TILT,
  BOW,
  NEUTRAL_WRIST,
  COCKING,
  TURN_ON_SPOT,
  /** Ends the step that is under way. */
  DONE,
  CLUB,
  HIT,
  PRACTICE,
  DRILL_REP,
  NOTE,
  /** The swing it speaks of counts no more; it stays in the recording and in its results. */
  LEFT_OUT,
  LONG_REST,
  SIX_POSITION,
  KNOWN_TURN;

  /** The word of the events file: {@code quiet-stance}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** A word as it may be written: an underscore for a hyphen, any case. */
  public static Optional<MarkWord> of(String word) {
    String plain = word.strip().replace('-', '_').toUpperCase(Locale.ROOT);
    return Arrays.stream(values()).filter(w -> w.name().equals(plain)).findFirst();
  }

  /** Every word. */
  public static Stream<String> words() {
    return Stream.of(values()).map(MarkWord::word);
  }

  /** The word of a list that begins so, or else takes the fewest changed letters. */
  public static String nearest(String word, Stream<String> known) {
    String plain = word.strip().toLowerCase(Locale.ROOT).replace('_', '-');
    return known
        .min(Comparator.comparingInt(w -> w.startsWith(plain) ? 0 : changes(plain, w)))
        .orElseThrow();
  }

  /** The wear steps, in the order in which they are done. */
  public static List<MarkWord> steps() {
    return Stream.of(values()).filter(MarkWord::isStep).toList();
  }

  /** Whether it only speaks of a swing that is there: it ends no step and makes none. */
  public boolean isAbout() {
    return this == NOTE || this == LEFT_OUT;
  }

  /** Whether a player does it so that the units' places become known. */
  public boolean isStep() {
    return compareTo(TURN_ON_SPOT) <= 0;
  }

  /** Letters put in, taken out or exchanged (Levenshtein 1966, Sov Phys Dokl 10:707-710). */
  private static int changes(String one, String other) {
    int[] row = new int[other.length() + 1];
    Arrays.setAll(row, j -> j);
    for (int i = 1; i <= one.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int j = 1; j <= other.length(); j++) {
        int exchanged = diagonal + (one.charAt(i - 1) == other.charAt(j - 1) ? 0 : 1);
        diagonal = row[j];
        row[j] = Math.min(exchanged, 1 + Math.min(row[j], row[j - 1]));
      }
    }
    return row[other.length()];
  }
}
