package steadyturn.ingest.words;

import java.util.Locale;
import java.util.MissingResourceException;
import java.util.ResourceBundle;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Every sentence a person reads, from one resource bundle ready for translation. An entry that a
 * teacher added without words of its own is told by its name.
 */
public final class Words {

  private static final String BUNDLE = "steadyturn.ingest.words.Words";

  /** {0} or, with two decimals, {0:2}. */
  private static final Pattern PLACE = Pattern.compile("\\{(\\d)(?::(\\d))?}");

  private static final Words IN_USE =
      of(Locale.forLanguageTag(System.getProperty("steadyturn.language", "en")));

  private final ResourceBundle bundle;

  private Words(ResourceBundle bundle) {
    this.bundle = bundle;
  }

  /** The words of a language; English where there is none. */
  public static Words of(Locale locale) {
    return new Words(
        ResourceBundle.getBundle(
            BUNDLE,
            locale,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES)));
  }

  /** The language of the system property {@code steadyturn.language}, English unless told. */
  public static Words inUse() {
    return IN_USE;
  }

  /** A text in the language in use. */
  public static String say(String key, Object... values) {
    return IN_USE.text(key, values);
  }

  /**
   * A text with {0}, {1} and so on replaced by the values; {0:2} shows a number with two decimals.
   */
  public String text(String key, Object... values) {
    String text;
    try {
      text = bundle.getString(key);
    } catch (MissingResourceException e) {
      return key.substring(key.lastIndexOf('.') + 1).replace('-', ' ');
    }
    if (values.length == 0) {
      return text;
    }
    return PLACE
        .matcher(text)
        .replaceAll(
            place -> Matcher.quoteReplacement(filled(place.group(1), place.group(2), values)));
  }

  private static String filled(String index, String decimals, Object[] values) {
    Object value = values[Integer.parseInt(index)];
    return decimals == null
        ? value.toString()
        : String.format(Locale.ROOT, "%." + decimals + "f", ((Number) value).doubleValue());
  }

  /** Whether there is a text under this key. */
  public boolean has(String key) {
    return bundle.containsKey(key);
  }
}
