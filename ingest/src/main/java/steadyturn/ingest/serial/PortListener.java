package steadyturn.ingest.serial;

/** Told what happens at a port, always by the port's own thread. */
public interface PortListener {

  byte[] NOTHING = {};

  /**
   * Bytes came; the array is used again afterwards.
   *
   * @param count how many of its first bytes count
   * @param steadyS the host's steady clock, s
   * @param wallS the host's time of day, s
   */
  void bytes(byte[] block, int count, double steadyS, double wallS);

  /** The baud rate at which is read from now on; told before {@link #opened}. */
  default void tuned(int baud) {}

  /** The port was opened, for the first time or again, or is heard at another baud rate now. */
  default void opened() {}

  /** What is to be sent now; asked for again and again while the port is open. */
  default byte[] toSend(double steadyS) {
    return NOTHING;
  }

  /** Whether what comes makes sense; else the next baud rate is tried, where there are several. */
  default boolean isUnderstood(double steadyS) {
    return true;
  }

  /** The port is gone: unplugged, switched off, or never there. It is tried again. */
  default void gone(String why) {}

  /** The reading was ended from this side; nothing more comes. */
  default void ended() {}
}
