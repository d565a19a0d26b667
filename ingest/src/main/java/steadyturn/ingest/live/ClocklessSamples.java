package steadyturn.ingest.live;

import java.util.ArrayDeque;
import java.util.Optional;
import java.util.Queue;
import steadyturn.ingest.clock.ArrivalClock;

/** Samples of a unit without a clock wait here until arrivals tell when they were taken. */
final class ClocklessSamples {

  /** Takes a sample whose time is known. */
  @FunctionalInterface
  interface Taker {

    /**
     * One sample, in order.
     *
     * @param timeS the host's steady clock when it was taken, s
     * @param values acceleration x y z, rate x y z
     */
    void take(double timeS, double[] values);
  }

  private final ArrivalClock clock = new ArrivalClock();

  /** In their order; empty for a sample that was lost. */
  private final Queue<Optional<double[]>> waiting = new ArrayDeque<>();

  private final Taker taker;
  private boolean hasBegun;
  private int ofBlock;

  ClocklessSamples(Taker taker) {
    this.taker = taker;
  }

  void add(double... values) {
    waiting.add(Optional.of(values));
    hasBegun = true;
    ofBlock++;
  }

  /** So many samples are missing before the next; of a unit with a clock that is its own matter. */
  void lost(int count) {
    if (!hasBegun) {
      return;
    }
    for (int i = 0; i < count; i++) {
      waiting.add(Optional.empty());
    }
    ofBlock += count;
  }

  /** All samples of a block were added. */
  void blockEnds(double hostS) {
    if (ofBlock > 0) {
      take(clock.came(ofBlock, hostS));
      ofBlock = 0;
    }
  }

  /** The way was cut, or the recording ends. */
  void cut() {
    take(clock.cut());
  }

  private void take(double[] timesS) {
    for (double timeS : timesS) {
      waiting.remove().ifPresent(values -> taker.take(timeS, values));
    }
  }

  /** How far the least ways scatter, s: what the times are worth; 0 while there are none. */
  double spreadS() {
    return Double.isNaN(clock.rateHz()) ? 0 : clock.spreadS();
  }

  /** Samples a second, once they are known within a thousandth. */
  Optional<Double> rateHz() {
    return clock.rateSpread() < 1e-3 ? Optional.of(clock.rateHz()) : Optional.empty();
  }
}
