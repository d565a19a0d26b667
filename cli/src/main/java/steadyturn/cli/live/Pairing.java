package steadyturn.cli.live;

import java.util.Optional;
import java.util.function.Supplier;

/**
 * Lets another screen in that shows the code of the laptop. A few wrong tries end the code, and the
 * next one comes after a pause that doubles: a machine that tries all of them would need years.
 */
final class Pairing {

  private static final int TRIES = 5;
  private static final long FIRST_PAUSE_NS = 10_000_000_000L;
  private static final int MOST_DOUBLED = 12;

  private final Supplier<String> codes;
  private final Supplier<String> tokens;
  private String code;
  private int wrong;
  private int ended;
  private long closedUntilNs;
  private long nowNs = Long.MIN_VALUE;

  Pairing(Supplier<String> codes, Supplier<String> tokens) {
    this.codes = codes;
    this.tokens = tokens;
    code = codes.get();
  }

  /** What the laptop shows. */
  synchronized String code() {
    return code;
  }

  /** A token for whoever knows the code; a code lets one screen in. */
  synchronized Optional<String> open(String tried, long atNs) {
    nowNs = Math.max(nowNs, atNs);
    if (ended > 0 && nowNs - closedUntilNs < 0) {
      return Optional.empty();
    }
    if (PageGuard.isSame(tried, code)) {
      code = codes.get();
      wrong = 0;
      return Optional.of(tokens.get());
    }
    if (++wrong == TRIES) {
      wrong = 0;
      code = codes.get();
      closedUntilNs = nowNs + (FIRST_PAUSE_NS << Math.min(ended++, MOST_DOUBLED));
    }
    return Optional.empty();
  }
}
