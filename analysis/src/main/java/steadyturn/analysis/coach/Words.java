package steadyturn.analysis.coach;

import java.util.Locale;
import java.util.MissingResourceException;
import java.util.ResourceBundle;

/**
 * Every sentence a person reads, from one resource bundle ready for translation. An entry that a
 * teacher added without words of its own is told by its name.
 */
public final class Words {

  private final ResourceBundle bundle;

  private Words(ResourceBundle bundle) {
    this.bundle = bundle;
  }

  /** The words of a language; English where there is none. */
  public static Words of(Locale locale) {
    return new Words(
        ResourceBundle.getBundle(
            "steadyturn.analysis.coach.Words",
            locale,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES)));
  }

  /** A text with {0}, {1} and so on replaced by the values. */
  public String text(String key, Object... values) {
    String text;
    try {
      text = bundle.getString(key);
    } catch (MissingResourceException e) {
      return key.substring(key.lastIndexOf('.') + 1).replace('-', ' ');
    }
    for (int i = 0; i < values.length; i++) {
      text = text.replace("{" + i + "}", values[i].toString());
    }
    return text;
  }

  /** Whether there is a text under this key. */
  public boolean has(String key) {
    return bundle.containsKey(key);
  }
}
