package steadyturn.ingest.clock;

import java.util.List;
import steadyturn.ingest.reason.ReasonCode;

/** What can be said of a unit's clock beside another's. */
@SuppressWarnings("ImmutableEnumChecker") // List.of
public enum ClockReason implements ReasonCode {
  /** The stated start is not the true one; mended. */
  START("other", "offMs", "sdMs"),
  /** The clock runs too slow (positive) or too fast; mended. */
  RATE("other", "skewPpm", "sdPpm"),
  /** Time is missing in the middle; mended, but for a stretch. */
  JUMP("other", "atS", "byS", "lostS"),
  /** It ends early against another, and what it shows last rather fits a clock that stood still. */
  STOPPED("other", "sinceS", "lostS"),
  /** Blows say one thing, what is known otherwise another. */
  DISAGREE("other", "blowsMs", "pairs", "otherwiseSdMs"),
  /** Hips and arms move together as no body does, but as they would were the clocks off by this. */
  BODY("other", "offMs", "count"),
  /** Where two clocks lie is not known well enough. */
  LOOSE("sdMs");

  private final List<String> args;

  ClockReason(String... args) {
    this.args = List.of(args);
  }

  @Override
  public List<String> args() {
    return args;
  }
}
