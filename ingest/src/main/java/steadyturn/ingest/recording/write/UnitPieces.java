package steadyturn.ingest.recording.write;

import java.util.Iterator;
import java.util.List;
import java.util.function.Supplier;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * One unit's samples to write, in pieces by time, so that a long recording need not be in memory.
 *
 * @param pieces begins with the first piece at every call
 */
public record UnitPieces(UnitFacts facts, Supplier<Iterator<UnitStream>> pieces) {

  /** All samples in one piece. */
  static UnitPieces whole(UnitStream unit) {
    return new UnitPieces(unit.facts(), () -> List.of(unit).iterator());
  }
}
