package steadyturn.ingest.recording;

import steadyturn.ingest.sample.Recording;

/**
 * A piece of a long recording on the recording's own time axis. It stands for fromS &lt;= t &lt;
 * toS; its samples and marks reach a margin further on both sides, so that what begins in one piece
 * and ends in the next is seen whole in one of them. Count a swing in the piece in whose own part
 * its impact lies.
 *
 * @param fromS start of its own part, s
 * @param toS end of its own part, s
 */
public record Stretch(Recording recording, double fromS, double toS) {

  public Stretch {
    if (!(toS > fromS)) {
      throw new IllegalArgumentException("a stretch from " + fromS + " s to " + toS + " s");
    }
  }
}
