package steadyturn.ingest.sensor;

import java.util.OptionalInt;
import steadyturn.ingest.sample.Offered;

/** The way back to a unit. It exists only where a person allowed that the unit is changed. */
@Offered
@FunctionalInterface
public interface UnitLink {

  /**
   * Sends bytes after all that were sent before; returns at once.
   *
   * @param thenPauseMs the next bytes go no sooner than so much later
   */
  void send(byte[] bytes, int thenPauseMs);

  /**
   * The unit could not be set up as wished: it refused, or did not answer. The person reads it
   * once.
   *
   * @param why what was wished and what came, as {@code "refuses 500 Hz"}
   */
  default void failed(String why) {}

  /** The baud rate at which the unit is heard; empty where there is none, as at a virtual port. */
  default OptionalInt baud() {
    return OptionalInt.empty();
  }
}
