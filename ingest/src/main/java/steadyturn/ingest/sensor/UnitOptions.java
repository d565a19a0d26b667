package steadyturn.ingest.sensor;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * What a person wishes of one unit, such as {@code rate=200,range=16}. An adapter asks for the
 * words it knows; what nobody asked for is a mistake of the person, told by {@link
 * #requireAllAsked}.
 */
public final class UnitOptions {

  private final Map<String, String> given = new LinkedHashMap<>();
  private final Set<String> asked = new TreeSet<>();
  private final int unit;

  private UnitOptions(int unit) {
    this.unit = unit;
  }

  /** No wishes, the only unit of its port. */
  public static UnitOptions none() {
    return new UnitOptions(0);
  }

  /**
   * Reads {@code key=value,key=value}.
   *
   * @param unit which of several units at the port, from 1 on; 0 for the only one
   * @throws IllegalArgumentException where a part is not of that form
   */
  public static UnitOptions of(String text, int unit) {
    UnitOptions options = new UnitOptions(unit);
    for (String part : text.isEmpty() ? new String[0] : text.split(",", -1)) {
      int equals = part.indexOf('=');
      if (equals < 1 || equals == part.length() - 1) {
        throw new IllegalArgumentException("\"" + part + "\" is not of the form key=value");
      }
      options.given.put(part.substring(0, equals), part.substring(equals + 1));
    }
    return options;
  }

  /** Which of several units at the port, from 1 on; 0 for the only one. */
  public int unit() {
    return unit;
  }

  /** One of some words; the first is the usual one. */
  public String oneOf(String key, String... words) {
    asked.add(key);
    String word = given.getOrDefault(key, words[0]);
    if (!List.of(words).contains(word)) {
      throw new IllegalArgumentException(
          key + " is one of " + String.join(", ", words) + ", not " + word);
    }
    return word;
  }

  /** One of some whole numbers; the first is the usual one. */
  public int oneOf(String key, int... numbers) {
    String[] words = Arrays.stream(numbers).mapToObj(Integer::toString).toArray(String[]::new);
    return Integer.parseInt(oneOf(key, words));
  }

  /** A number of a range. */
  public double number(String key, double usual, double least, double most) {
    asked.add(key);
    String word = given.get(key);
    if (word == null) {
      return usual;
    }
    try {
      double number = Double.parseDouble(word);
      if (number >= least && number <= most) {
        return number;
      }
    } catch (NumberFormatException e) {
      // told below
    }
    throw new IllegalArgumentException(
        key + " is a number from " + plain(least) + " to " + plain(most) + ", not " + word);
  }

  private static String plain(double number) {
    return new BigDecimal(Double.toString(number)).stripTrailingZeros().toPlainString();
  }

  /** Whether a word was given. */
  public boolean has(String key) {
    asked.add(key);
    return given.containsKey(key);
  }

  /** Refuses words that the adapter does not know. */
  public void requireAllAsked(String adapter) {
    String unknown =
        given.keySet().stream().filter(k -> !asked.contains(k)).collect(Collectors.joining(", "));
    if (!unknown.isEmpty()) {
      throw new IllegalArgumentException(
          adapter
              + " does not know "
              + unknown
              + "; it knows "
              + (asked.isEmpty() ? "no option" : String.join(", ", asked)));
    }
  }
}
