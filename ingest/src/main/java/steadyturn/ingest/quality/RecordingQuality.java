package steadyturn.ingest.quality;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import steadyturn.ingest.quality.gravity.TurnScale;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/** Judges every unit of a recording, and the units against each other. */
public final class RecordingQuality {

  /** Units must share this much time to be used together, s. */
  private static final double SHORTEST_SHARED_S = 1;

  private RecordingQuality() {}

  public static RecordingReport judge(Recording recording) {
    List<UnitStream> units = recording.units();
    List<UnitQuality.Seen> seen = units.parallelStream().map(UnitQuality::seen).toList();
    List<TurnScale> scales = seen.stream().map(UnitQuality.Seen::scale).toList();
    List<UnitReport> alone =
        seen.stream().map(s -> s.report().with(TurnCheck.ofScale(s.scale(), scales))).toList();
    List<Activity> activities =
        IntStream.range(0, units.size())
            .parallel()
            .filter(k -> !alone.get(k).says(QualityReason.TIME_UNIT))
            .mapToObj(k -> Activity.of(units.get(k), recording.marks()))
            .toList();
    List<UnitReport> reports =
        IntStream.range(0, units.size())
            .mapToObj(k -> alone.get(k).with(amongOthers(k, units, activities)))
            .toList();
    return new RecordingReport(recording.id(), reports, TurnScale.common(scales));
  }

  private static List<Finding> amongOthers(
      int k, List<UnitStream> units, List<Activity> activities) {
    List<Finding> findings = new ArrayList<>(ofOverlap(units.get(k), units.get(0)));
    activities.stream()
        .filter(activity -> activity.point() == units.get(k).point())
        .forEach(activity -> findings.addAll(ofMixUp(activity, activities)));
    return findings;
  }

  private static List<Finding> ofMixUp(Activity activity, List<Activity> all) {
    return all.stream()
        .filter(other -> other != activity && activity.sharedS(other) > SHORTEST_SHARED_S)
        .flatMap(other -> UnitMixUp.ofFirst(activity, other).stream())
        .toList();
  }

  private static List<Finding> ofOverlap(UnitStream unit, UnitStream reference) {
    if (unit.point() == reference.point() || unit.size() < 2 || reference.size() < 2) {
      return List.of();
    }
    double sharedS = sharedS(unit, reference);
    double shorterS = Math.min(unit.lengthS(), reference.lengthS());
    if (sharedS >= 0.5 * shorterS) {
      return List.of();
    }
    boolean apart = sharedS < SHORTEST_SHARED_S;
    return List.of(
        Finding.of(
            apart ? Verdict.NOT_USABLE : Verdict.WIDER_INTERVALS,
            apart ? QualityReason.APART : QualityReason.LITTLE_SHARED,
            unit.timeS(0),
            unit.timeS(unit.size() - 1),
            reference.point(),
            reference.timeS(0),
            reference.timeS(reference.size() - 1)));
  }

  private static double sharedS(UnitStream a, UnitStream b) {
    double fromS = Math.max(a.timeS(0), b.timeS(0));
    return Math.max(0, Math.min(a.timeS(a.size() - 1), b.timeS(b.size() - 1)) - fromS);
  }
}
