package steadyturn.cli.bench;

import java.lang.management.ManagementFactory;

/**
 * A fixed piece of work to hold other work against, as machines differ and are shared: a chain of
 * multiplications and additions of which each waits for the one before, so that no processor does
 * two at once. Its length is our choice: about as long as a loop of 12 million additions takes in
 * CPython 3.11 on the same machine.
 */
public final class Yardstick {

  private static final int ROUNDS = 100;
  private static final int STEPS_A_ROUND = 5_000_000;

  private Yardstick() {}

  /** Processor time of the whole chain in this thread, s. */
  public static double seconds() {
    long before = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    double x = 0.3;
    for (int round = 0; round < ROUNDS; round++) {
      x = chain(x, STEPS_A_ROUND);
    }
    if (!(x > 0 && x < 1)) { // the result is looked at, so that no compiler leaves the chain out
      throw new IllegalStateException("the chain has left its range: " + x);
    }
    return 1e-9 * (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - before);
  }

  /** The logistic map: chaotic, so nothing of it can be known in advance; stays within 0..1. */
  static double chain(double from, int steps) {
    double x = from;
    for (int i = 0; i < steps; i++) {
      x = 3.9 * x + -3.9 * x * x;
    }
    return x;
  }
}
