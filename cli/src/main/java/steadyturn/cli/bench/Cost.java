package steadyturn.cli.bench;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.List;
import java.util.concurrent.Callable;

/**
 * What a piece of work cost.
 *
 * @param processorS processor time of this process from its start to the end of the work, s: in a
 *     fresh process what {@code time} would say, start and compiling included
 * @param machineS the part of it in no thread of the program: compiling and collecting, s
 * @param wallS from the beginning of the work to its end, s
 * @param peakHeapBytes most memory seen in use, waste not yet collected included
 */
public record Cost(
    double processorS, double machineS, double wallS, long peakHeapBytes, List<RoomShare> rooms) {

  /** One look at the threads in so many ms: often enough for shares, rare enough to cost little. */
  private static final int LOOK_EVERY_MS = 10;

  public Cost {
    rooms = List.copyOf(rooms);
  }

  /** Does the work and says what it cost. */
  public static Cost of(Callable<Integer> work) throws Exception {
    Watch watch = new Watch();
    Thread watcher = new Thread(watch, "watch");
    watcher.setDaemon(true);
    long startNanos = System.nanoTime();
    watcher.start();
    work.call();
    double wallS = 1e-9 * (System.nanoTime() - startNanos);
    double processorS = 1e-9 * processNanos();
    double threadsS = 1e-9 * threadNanos();
    watcher.interrupt();
    watcher.join();
    return new Cost(
        processorS,
        Math.max(0, processorS - threadsS),
        wallS,
        watch.peakBytes,
        watch.shares.shares());
  }

  private static long processNanos() {
    return ((OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
        .getProcessCpuTime();
  }

  private static long threadNanos() {
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    long sum = 0;
    for (long id : threads.getAllThreadIds()) {
      sum += Math.max(0, threads.getThreadCpuTime(id));
    }
    return sum;
  }

  /** Looks at threads and memory until it is interrupted. */
  private static final class Watch implements Runnable {

    private final RoomShares shares = new RoomShares();
    private long peakBytes;

    @Override
    public void run() {
      try {
        while (true) {
          Thread.sleep(LOOK_EVERY_MS);
          look();
        }
      } catch (InterruptedException e) {
        look();
      }
    }

    private void look() {
      Runtime runtime = Runtime.getRuntime();
      peakBytes = Math.max(peakBytes, runtime.totalMemory() - runtime.freeMemory());
      Thread.getAllStackTraces()
          .forEach(
              (thread, stack) -> {
                if (thread != Thread.currentThread()
                    && thread.getState() == Thread.State.RUNNABLE) {
                  shares.look(stack);
                }
              });
    }
  }
}
