package steadyturn.ingest.sensor;

/** The way back to a unit. It exists only where a person allowed that the unit is changed. */
@FunctionalInterface
public interface UnitLink {

  /**
   * Sends bytes after all that were sent before; returns at once.
   *
   * @param thenPauseMs the next bytes go no sooner than so much later
   */
  void send(byte[] bytes, int thenPauseMs);
}
