package steadyturn.ingest.live;

import java.util.ArrayDeque;
import java.util.Queue;
import steadyturn.ingest.sensor.UnitLink;

/** Keeps what is to be sent until its time has come. Used by one thread. */
final class PacedLink implements UnitLink {

  private static final byte[] NOTHING = {};

  @SuppressWarnings("ArrayRecordComponent") // handed over, never changed
  private record Piece(byte[] bytes, int thenPauseMs) {}

  private final Queue<Piece> waiting = new ArrayDeque<>();
  private double freeAtS = Double.NEGATIVE_INFINITY;

  @Override
  public void send(byte[] bytes, int thenPauseMs) {
    waiting.add(new Piece(bytes.clone(), thenPauseMs));
  }

  /** The next bytes whose time has come; empty while there are none. */
  byte[] due(double nowS) {
    if (waiting.isEmpty() || nowS < freeAtS) {
      return NOTHING;
    }
    Piece piece = waiting.remove();
    freeAtS = nowS + 1e-3 * piece.thenPauseMs();
    return piece.bytes();
  }

  /** Whether all was sent by then, the last pause over. */
  boolean isIdleSince(double thenS) {
    return waiting.isEmpty() && freeAtS <= thenS;
  }

  /** Forgets what was not sent, as when the port is gone. */
  void clear() {
    waiting.clear();
    freeAtS = Double.NEGATIVE_INFINITY;
  }
}
