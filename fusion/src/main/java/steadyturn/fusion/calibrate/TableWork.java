package steadyturn.fusion.calibrate;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.UnitStream;

/**
 * A recording of one unit handled on a table, with what is marked in it. A step looks at the
 * stretches marked for it; where none is, it looks for them in the whole recording.
 *
 * @param unit raw samples
 * @param marks those of {@link RestGuide}, {@link FaceGuide} and {@link TurnGuide} count
 */
public record TableWork(UnitStream unit, List<Mark> marks) {

  public TableWork {
    marks = List.copyOf(marks);
  }

  /** The last stretch marked as a table rest; of the whole recording the longest rest. */
  public TableRest rest() {
    return TableRest.of(TableRest.longestIn(last(RestGuide.TABLE_REST)));
  }

  /** A long rest, for the noise figures. */
  public UnitStream longRest() {
    return TableRest.longestIn(last(RestGuide.LONG_REST));
  }

  /** Errors of the gyroscope. */
  public KnownTurns turns() {
    List<UnitStream> turns =
        of(TurnGuide.TRIAL_TYPE).stream().map(m -> unit.between(m.onsetS(), m.endS())).toList();
    return turns.isEmpty() ? KnownTurns.of(unit) : KnownTurns.ofEach(turns);
  }

  /** Errors of the accelerometer; of a position marked twice the later stretch counts. */
  public SixPositions positions(double gravityMps2) {
    Map<String, UnitStream> faces = new TreeMap<>();
    of(FaceGuide.TRIAL_TYPE).forEach(m -> faces.put(m.note(), unit.between(m.onsetS(), m.endS())));
    return faces.isEmpty()
        ? SixPositions.of(unit, gravityMps2)
        : SixPositions.ofStills(List.copyOf(faces.values()), gravityMps2);
  }

  private UnitStream last(String trialType) {
    return of(trialType).stream()
        .reduce((first, second) -> second)
        .map(mark -> unit.between(mark.onsetS(), mark.endS()))
        .orElse(unit);
  }

  private List<Mark> of(String trialType) {
    return marks.stream().filter(mark -> mark.trialType().equals(trialType)).toList();
  }
}
