package steadyturn.ingest.reason;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import steadyturn.ingest.sample.BodyPoint;

/**
 * A reason as it travels from where it arises to the person who reads it: no sentence, no language.
 * Example: {@code Reason.of(QualityReason.GAP, 2, 0.31)}.
 *
 * @param args by the names that the code gives, in that order, then {@link #ALSO} where a second
 *     reason holds as well: numbers in the unit of the name, body points, names given by people,
 *     words of the output contract, reasons
 */
public record Reason(ReasonCode code, Map<String, Object> args) {

  /** The argument under which a second reason stands. */
  public static final String ALSO = "also";

  private enum None implements ReasonCode {
    NONE;

    @Override
    public String about() {
      return "";
    }

    @Override
    public String word() {
      return "";
    }
  }

  /** Nothing to be said. */
  public static final Reason NONE = of(None.NONE);

  public Reason {
    args = Collections.unmodifiableMap(new LinkedHashMap<>(args));
    List<String> named = args.keySet().stream().filter(name -> !name.equals(ALSO)).toList();
    if (!named.equals(code.args())) {
      throw new IllegalArgumentException(
          code.word() + " has the arguments " + code.args() + ", was given " + named);
    }
    args.forEach(Reason::check);
  }

  private static void check(String name, Object value) {
    boolean known =
        value instanceof Number
            || value instanceof String
            || value instanceof BodyPoint
            || value instanceof Reason;
    if (!known) {
      throw new IllegalArgumentException(name + ": " + value.getClass() + " is no argument");
    }
  }

  /** A reason with its arguments in the order of {@link ReasonCode#args}. */
  public static Reason of(ReasonCode code, Object... values) {
    if (values.length != code.args().size()) {
      throw new IllegalArgumentException(
          code.word() + " has the arguments " + code.args() + ", was given " + List.of(values));
    }
    Map<String, Object> args = new LinkedHashMap<>();
    for (int i = 0; i < values.length; i++) {
      args.put(code.args().get(i), values[i]);
    }
    return new Reason(code, args);
  }

  public boolean isNone() {
    return code == None.NONE;
  }

  /** This reason and another one behind it; the other alone where this is none. */
  public Reason and(Reason other) {
    if (isNone() || other.isNone()) {
      return isNone() ? other : this;
    }
    Map<String, Object> both = new LinkedHashMap<>(args);
    both.put(ALSO, args.get(ALSO) instanceof Reason second ? second.and(other) : other);
    return new Reason(code, both);
  }
}
