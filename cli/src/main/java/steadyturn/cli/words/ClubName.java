package steadyturn.cli.words;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * A club as it was noted, {@code 7-iron shaft=stiff length=37.5in}: its name and what a fitter
 * marked on it.
 *
 * @param name without the marks
 * @param marks in the order noted, such as shaft, grip, length
 */
public record ClubName(String name, Map<String, String> marks) {

  private static final Pattern MARK = Pattern.compile("(\\S+?)=(\\S+)");

  public ClubName {
    marks = new LinkedHashMap<>(marks);
  }

  /** Reads a note; what is no mark belongs to the name. */
  public static ClubName of(String noted) {
    Map<String, String> marks = new LinkedHashMap<>();
    MARK.matcher(noted).results().forEach(m -> marks.put(m.group(1), m.group(2)));
    String name = MARK.matcher(noted).replaceAll("").strip().replaceAll("\\s+", " ");
    return new ClubName(name, marks);
  }

  /** {@code 7-iron (shaft stiff, length 37.5in)}. */
  public String inFull(Words words) {
    String all =
        marks.entrySet().stream()
            .map(mark -> mark.getKey() + " " + mark.getValue())
            .collect(Collectors.joining(", "));
    return marks.isEmpty() ? name : words.text("club.marked", name, all).strip();
  }
}
