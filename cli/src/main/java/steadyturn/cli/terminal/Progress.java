package steadyturn.cli.terminal;

import java.util.Locale;
import java.util.function.Consumer;

/**
 * A bar on standard error for work that takes more than two seconds, when a person watches. The
 * instant comes in as an argument, so that the bar can be tested.
 */
public final class Progress {

  private static final long PATIENCE_NANOS = 2_000_000_000L;
  private static final int BAR = 30;

  private final Consumer<String> status;
  private final boolean watched;
  private final int steps;
  private final long startNanos;
  private int done;
  private boolean shown;

  Progress(Consumer<String> status, boolean watched, int steps, long startNanos) {
    this.status = status;
    this.watched = watched;
    this.steps = Math.max(1, steps);
    this.startNanos = startNanos;
  }

  /** Says what is being done now. */
  public void at(String what, long nowNanos) {
    if (!watched || nowNanos - startNanos < PATIENCE_NANOS) {
      return;
    }
    int full = BAR * done / steps;
    String bar = "#".repeat(full) + ".".repeat(BAR - full);
    String line = String.format(Locale.ROOT, "[%s] %d of %d, %s", bar, done, steps, what);
    status.accept(line.substring(0, Math.min(79, line.length())));
    shown = true;
  }

  /** One more step is done. */
  public void step() {
    done++;
  }

  /** One more step of this name is done; any thread may say so. */
  public synchronized void step(String what) {
    step();
    at(what, System.nanoTime());
  }

  /** Takes the bar away, before other lines are printed. */
  public void clear() {
    if (shown) {
      status.accept("");
      shown = false;
    }
  }
}
