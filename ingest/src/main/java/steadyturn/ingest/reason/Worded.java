package steadyturn.ingest.reason;

import java.util.Locale;

/** A member of a closed set that the output contract names by a word of its own. */
public interface Worded {

  /** The enum constant's own name. */
  String name();

  /** The word of the output contract: {@code not-sure-yet} for {@code NOT_SURE_YET}. */
  default String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
