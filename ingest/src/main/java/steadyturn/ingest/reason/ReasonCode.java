package steadyturn.ingest.reason;

import java.util.List;
import java.util.Locale;

/**
 * One member of a room's closed set of reasons. Implemented by enums, so that a reason cannot be
 * misspelled and a test can walk them all.
 */
public interface ReasonCode {

  /** The enum constant's own name. */
  String name();

  /**
   * What the set speaks of; first part of the code: {@code quality}. The set's own name says it: a
   * {@code QualityReason} is about quality.
   */
  default String about() {
    return getClass().getSimpleName().replaceFirst("Reason$", "").toLowerCase(Locale.ROOT);
  }

  /**
   * Names of the arguments, each with its unit where it has one: {@code longestS}; none unless
   * said.
   */
  default List<String> args() {
    return List.of();
  }

  /** The word of the output contract: {@code quality.gyro-cut}. */
  default String word() {
    return about() + "." + name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
