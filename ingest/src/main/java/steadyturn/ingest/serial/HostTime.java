package steadyturn.ingest.serial;

/** The host's two clocks. */
public final class HostTime {

  /** A machine that plays a lesson faster than it was sees its time pass as fast (for trials). */
  private static final double PACE = Double.parseDouble(System.getProperty("steadyturn.pace", "1"));

  private static final long BEGAN_MS = System.currentTimeMillis();

  private HostTime() {}

  /** A clock that never steps, but may stand still while the host sleeps, s. */
  public static double steadyS() {
    return PACE * System.nanoTime() * 1e-9;
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
    return (BEGAN_MS + PACE * (System.currentTimeMillis() - BEGAN_MS)) * 1e-3;
  }
}
