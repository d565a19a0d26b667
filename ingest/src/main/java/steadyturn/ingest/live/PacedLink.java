package steadyturn.ingest.live;

import java.util.ArrayDeque;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Queue;
import java.util.Set;
import steadyturn.ingest.sensor.UnitLink;

/** Keeps what is to be sent until its time has come. Used by one thread. */
final class PacedLink implements UnitLink {

  private static final byte[] NOTHING = {};

  @SuppressWarnings("ArrayRecordComponent") // handed over, never changed
  private record Piece(byte[] bytes, int thenPauseMs) {}

  private final Queue<Piece> waiting = new ArrayDeque<>();
  private final Set<String> failures = new LinkedHashSet<>();
  private double freeAtS = Double.NEGATIVE_INFINITY;
  private int told;
  private OptionalInt baud = OptionalInt.empty();

  @Override
  public void send(byte[] bytes, int thenPauseMs) {
    waiting.add(new Piece(bytes.clone(), thenPauseMs));
  }

  @Override
  public void failed(String why) {
    failures.add(why);
  }

  /** What was said by {@link #failed} since the last call, each sentence once in all. */
  List<String> newFailures() {
    List<String> all = List.copyOf(failures);
    List<String> news = all.subList(told, all.size());
    told = all.size();
    return news;
  }

  @Override
  public OptionalInt baud() {
    return baud;
  }

  void tune(int toBaud) {
    baud = OptionalInt.of(toBaud);
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
