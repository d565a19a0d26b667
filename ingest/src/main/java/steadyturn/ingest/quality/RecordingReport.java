package steadyturn.ingest.quality;

import java.util.List;
import java.util.Map;
import java.util.Set;
import steadyturn.ingest.quality.gravity.TurnScale;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.reason.ReasonCode;
import steadyturn.ingest.sample.BodyPoint;

/**
 * What was found in a recording.
 *
 * @param recordingId the recording's id
 * @param units one report a unit, in the recording's order, with what the comparison between the
 *     units added
 * @param scale how far gravity turned beside the rates in all units, which a rate stated wrong
 *     moves
 */
public record RecordingReport(String recordingId, List<UnitReport> units, TurnScale scale) {

  public RecordingReport {
    units = List.copyOf(units);
  }

  /** The same with what was found of the units' clocks. */
  public RecordingReport withClocks(Map<BodyPoint, List<Reason>> clocks) {
    return new RecordingReport(
        recordingId,
        units.stream().map(u -> u.with(findings(clocks, u.facts().point()))).toList(),
        scale);
  }

  private static List<Finding> findings(Map<BodyPoint, List<Reason>> clocks, BodyPoint point) {
    return clocks.getOrDefault(point, List.of()).stream()
        .map(reason -> new Finding(Verdict.WIDER_INTERVALS, reason))
        .toList();
  }

  /** The same without some findings. */
  public RecordingReport without(Set<ReasonCode> findings) {
    return new RecordingReport(
        recordingId, units.stream().map(unit -> unit.without(findings)).toList(), scale);
  }

  /** The worst verdict of the units. */
  public Verdict verdict() {
    return units.stream().map(UnitReport::verdict).reduce(Verdict.FIT, Verdict::worse);
  }
}
