package steadyturn.cli.words;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.PropertyResourceBundle;
import java.util.ResourceBundle;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import steadyturn.analysis.lesson.Notice;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;

/**
 * Every sentence a person reads, from one resource bundle a language; numbers in sentences have the
 * decimal mark of the language the sentence is in. An entry that a teacher added without words of
 * its own is told by its name.
 */
public final class Words {

  private static final String BUNDLE = "steadyturn.cli.words.Words";

  private static final Locale LANGUAGE =
      Locale.forLanguageTag(System.getProperty("steadyturn.language", "en"));

  /** Compiled with the first text that is filled: a regular expression costs a tenth of a start. */
  private static final class Place {
    /** {0} or {rateHz}; with two decimals {0:2}; a word of a group of texts {channel:channel}. */
    static final Pattern OF_VALUE = Pattern.compile("\\{(\\w+)(?::([\\w.-]+))?}");
  }

  /** Read when the first of them is asked for, as the help of the program needs none. */
  private static final class Read {
    static final Words ENGLISH = of(Locale.ENGLISH);
    static final Words IN_USE = of(LANGUAGE);
  }

  private final ResourceBundle bundle;

  private Words(ResourceBundle bundle) {
    this.bundle = bundle;
  }

  /** The words of a language; English where there is none. */
  public static Words of(Locale locale) {
    return new Words(bundle(BUNDLE, locale));
  }

  /** What {@code --help} tells, in the reader's language. */
  public static ResourceBundle help() {
    if (!LANGUAGE.getLanguage().equals("en")) {
      return bundle("steadyturn.cli.words.Help", LANGUAGE);
    }
    // straight from its file: looking for other languages would cost a third of a start
    try (Reader text =
        new InputStreamReader(
            Objects.requireNonNull(Words.class.getResourceAsStream("Help.properties")),
            StandardCharsets.UTF_8)) {
      return new PropertyResourceBundle(text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static ResourceBundle bundle(String name, Locale locale) {
    return ResourceBundle.getBundle(
        name,
        locale,
        ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
  }

  /** The reader's language: system property {@code steadyturn.language}, English unless told. */
  public static Words inUse() {
    return Read.IN_USE;
  }

  /** For files and scripts, whatever the reader's language. */
  public static Words english() {
    return Read.ENGLISH;
  }

  /** A text in the reader's language. */
  public static String say(String key, Object... values) {
    return Read.IN_USE.text(key, values);
  }

  /** The language these words are in. */
  public Locale locale() {
    return bundle.getLocale();
  }

  /** A number with the decimal mark of these words; what rounds to zero has no sign. */
  public String decimal(double number, int decimals) {
    double shown = Math.abs(number) < 0.5 * Math.pow(10, -decimals) ? 0 : number;
    return String.format(locale(), "%." + decimals + "f", shown);
  }

  /** The language tag of these words: {@code en}. */
  public String language() {
    return locale().equals(Locale.ROOT) ? "en" : locale().toLanguageTag();
  }

  /** A day such as 2026-05-04 in words: {@code 4 May 2026}. */
  public String day(String date) {
    return LocalDate.parse(date)
        .format(DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.forLanguageTag(language())));
  }

  /**
   * A text with {0}, {1} and so on replaced by the values; {0:2} shows a number with two decimals.
   */
  public String text(String key, Object... values) {
    if (!has(key)) {
      return key.substring(key.lastIndexOf('.') + 1).replace('-', ' ');
    }
    Map<String, Object> byNumber = new HashMap<>();
    for (int i = 0; i < values.length; i++) {
      byNumber.put(Integer.toString(i), values[i]);
    }
    return filled(bundle.getString(key), byNumber);
  }

  /** A text about so many things; about one thing it may be another. */
  public String counted(String key, long count) {
    return text(count == 1 && has(key + ".one") ? key + ".one" : key, count);
  }

  /** A reason as a sentence or part of one; nothing for none. */
  public String text(Reason reason) {
    if (reason.isNone()) {
      return "";
    }
    String key = "why." + reason.code().word();
    boolean single =
        Stream.of("count", "samples")
            .anyMatch(of -> reason.args().get(of) instanceof Number n && n.longValue() == 1);
    String text =
        filled(bundle.getString(single && has(key + ".one") ? key + ".one" : key), reason.args());
    return reason.args().get(Reason.ALSO) instanceof Reason second
        ? text("why.also", text, text(second))
        : text;
  }

  /** A reason, and what to do about it where the bundle says so. */
  public String advice(Reason reason) {
    String toDo = "why." + reason.code().word() + ".do";
    return has(toDo) ? text(reason) + " " + text(toDo) : text(reason);
  }

  /** Notices as sentences, each once, with the first notice that it tells. */
  public Map<String, Notice> told(List<Notice> notices) {
    Map<String, Notice> told = new LinkedHashMap<>();
    notices.forEach(notice -> told.putIfAbsent(told(notice), notice));
    return told;
  }

  private String told(Notice notice) {
    String point = "point." + notice.about().replace('_', '-');
    String about = has(point) ? text(point) : notice.about();
    return about.isEmpty() ? advice(notice.reason()) : about + ": " + advice(notice.reason());
  }

  private String filled(String text, Map<String, Object> values) {
    if (text.indexOf('{') < 0) {
      return text;
    }
    return Place.OF_VALUE
        .matcher(text)
        .replaceAll(place -> Matcher.quoteReplacement(inPlace(place, values)));
  }

  private String inPlace(MatchResult place, Map<String, Object> values) {
    Object value = values.get(place.group(1));
    String form = place.group(2);
    if (value == null) {
      return place.group();
    }
    if (form == null) {
      return plain(value);
    }
    if (value instanceof Number number) {
      return Character.isDigit(form.charAt(0))
          ? decimal(number.doubleValue(), Integer.parseInt(form))
          : signed(form, number.doubleValue());
    }
    return text(form + "." + value);
  }

  /** A number told by words for either sign: {@code 3 deg open}, {@code 3 deg closed}. */
  private String signed(String group, double number) {
    return text(group + (number >= 0 ? ".plus" : ".minus"), Math.abs(number));
  }

  private String plain(Object value) {
    if (value instanceof BodyPoint point) {
      return text("point." + point.trackedPoint().replace('_', '-'));
    }
    return value instanceof Reason reason ? text(reason) : value.toString();
  }

  /** All texts whose keys begin so, by key, as they stand. */
  public Map<String, String> group(String begins) {
    Map<String, String> group = new TreeMap<>();
    for (String key : bundle.keySet()) {
      if (key.startsWith(begins)) {
        group.put(key, bundle.getString(key));
      }
    }
    return group;
  }

  /** Whether there is a text under this key. */
  public boolean has(String key) {
    return bundle.containsKey(key);
  }
}
