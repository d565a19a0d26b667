package steadyturn.ingest.quality;

import java.util.List;

/**
 * What was found in a recording.
 *
 * @param recordingId the recording's id
 * @param units one report a unit, in the recording's order, with what the comparison between the
 *     units added
 */
public record RecordingReport(String recordingId, List<UnitReport> units) {

  public RecordingReport {
    units = List.copyOf(units);
  }

  /** The worst verdict of the units. */
  public Verdict verdict() {
    return units.stream().map(UnitReport::verdict).reduce(Verdict.FIT, Verdict::worse);
  }
}
