package steadyturn.ingest.serial;

/** The host's two clocks. */
public final class HostTime {

  private HostTime() {}

  /** A clock that never steps, but may stand still while the host sleeps, s. */
  public static double steadyS() {
    return System.nanoTime() * 1e-9;
  }

  /** Waits; an interruption ends that at once and stays noted. */
  public static void pause(long ms) {
    try {
      Thread.sleep(ms);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Time of day, s since 1970; steps when someone sets the clock. */
  public static double wallS() {
    return System.currentTimeMillis() * 1e-3;
  }
}
