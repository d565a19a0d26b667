package steadyturn.ingest.sensor.frame;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import steadyturn.ingest.sensor.SampleSink;

/**
 * Cuts bytes into pieces that end with one known byte. What grows longer than any piece may be, and
 * what its reader refuses, is told as skipped; after damage the next end begins anew.
 *
 * @param end the byte that ends a piece
 * @param longest bytes of the longest piece, without its end
 */
record EndedPieces(byte end, int longest, Piece piece) {

  /** Reads the bytes from..end, without the one that ends them; false where they are no piece. */
  @FunctionalInterface
  interface Piece {
    boolean read(ByteBuffer bytes, int from, int end, SampleSink sink);
  }

  /** Undoes the stuffing of the bytes from..end. */
  @FunctionalInterface
  interface Unstuffing {
    /** Returns how many bytes {@code plain} became, -1 where the stuffing is broken. */
    int decode(ByteBuffer stuffed, int from, int end, byte[] plain);
  }

  /** Pieces that are stuffed frames of up to so many bytes. */
  static EndedPieces frames(byte end, int longest, Unstuffing stuffing, FrameReader reader) {
    byte[] plain = new byte[longest];
    return new EndedPieces(
        end,
        longest,
        (bytes, from, to, sink) -> {
          int length = stuffing.decode(bytes, from, to, plain);
          return length > 0
              && reader.read(
                  ByteBuffer.wrap(plain, 0, length).order(ByteOrder.LITTLE_ENDIAN), sink);
        });
  }

  /** Reads all whole pieces, leaves the unfinished one. */
  void read(ByteBuffer bytes, SampleSink sink) {
    int from = bytes.position();
    for (int at = from; at < bytes.limit(); at++) {
      if (bytes.get(at) == end) {
        if (at - from > longest || !piece.read(bytes, from, at, sink)) {
          sink.skipped(at + 1 - from);
        }
        from = at + 1;
      }
    }
    if (bytes.limit() - from > longest) {
      sink.skipped(bytes.limit() - from);
      from = bytes.limit();
    }
    bytes.position(from);
  }
}
