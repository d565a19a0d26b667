package steadyturn.analysis.lesson;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import steadyturn.analysis.limits.CredibleSizes;
import steadyturn.analysis.limits.MountReason;
import steadyturn.analysis.limits.ScaleDoubt;
import steadyturn.analysis.limits.SlipWatch;
import steadyturn.analysis.limits.WornCheck;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.Swing;
import steadyturn.ingest.quality.Finding;
import steadyturn.ingest.quality.QualityReason;
import steadyturn.ingest.quality.RecordingReport;
import steadyturn.ingest.quality.UnitReport;
import steadyturn.ingest.quality.Verdict;
import steadyturn.ingest.quality.WildSamples;
import steadyturn.ingest.quality.gravity.TurnScale;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.reason.ReasonCode;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * What of each recording is not used, and why: units that cannot be used or cannot be worn as they
 * say, sizes no body has, a side that cannot be.
 */
final class Refusals {

  private static final Map<ReasonCode, List<BodyPoint>> NEEDS =
      Map.of(
          MeasureReason.NEEDS_PELVIS, List.of(BodyPoint.PELVIS),
          MeasureReason.NEEDS_FOREARM, List.of(BodyPoint.LEAD_FOREARM),
          MeasureReason.NEEDS_HAND, List.of(BodyPoint.LEAD_HAND),
          MeasureReason.NEEDS_FOREARM_BESIDE_HAND, List.of(BodyPoint.LEAD_FOREARM),
          MeasureReason.NEEDS_FOREARM_AND_HAND,
              List.of(BodyPoint.LEAD_FOREARM, BodyPoint.LEAD_HAND));

  /** A turn takes three samples to be seen. */
  private static final int LEAST_RATES = 3;

  private final Map<String, Map<BodyPoint, Reason>> units = new HashMap<>();
  private final Map<String, SlipWatch> slips = new HashMap<>();
  private final Set<String> slipsTold = new HashSet<>();
  private final Map<String, Reason> sides = new HashMap<>();
  private final Map<String, Set<Notice>> notices = new HashMap<>();

  /** How far gravity turned beside the rates in all that was read; one teacher's units. */
  private TurnScale scale = TurnScale.UNKNOWN;

  private final Map<String, Double> readToS = new HashMap<>();

  /** The recording with the sizes that can be. */
  Recording sized(Recording raw) {
    CredibleSizes sizes = CredibleSizes.of(raw.player());
    sizes.refused().forEach(why -> say(raw, "", why, true));
    Player player = sizes.player();
    return new Recording(raw.id(), player, raw.units(), raw.marks());
  }

  /**
   * The recording without the units that are not usable; what was found is said of all. A short
   * piece of a recording that goes on is no fault of its unit.
   */
  Recording judged(Recording raw, RecordingReport report) {
    Map<BodyPoint, Reason> refused = new EnumMap<>(BodyPoint.class);
    scale = TurnScale.common(List.of(scale, report.scale().of(newPart(raw))));
    for (UnitReport unit : report.units()) {
      BodyPoint point = unit.facts().point();
      for (Finding finding : unit.findings()) {
        boolean refuses =
            finding.verdict() == Verdict.NOT_USABLE
                && !QualityReason.OF_PLACES.contains(finding.what().code());
        say(raw, point.trackedPoint(), finding.what(), refuses);
        if (refuses && finding.what().code() != QualityReason.SHORT) {
          refused.putIfAbsent(point, finding.what());
        }
      }
    }
    return without(raw, refused);
  }

  /** How much of a piece no earlier one held: pieces of one recording overlap. */
  private double newPart(Recording piece) {
    List<UnitStream> units = piece.units().stream().filter(u -> u.size() > 0).toList();
    double fromS = units.stream().mapToDouble(u -> u.timeS(0)).min().orElse(0);
    double toS = units.stream().mapToDouble(u -> u.timeS(0) + u.lengthS()).max().orElse(fromS);
    double knownS = readToS.getOrDefault(piece.id(), fromS);
    readToS.merge(piece.id(), toS, Math::max);
    return Math.max(0, toS - Math.max(fromS, knownS)) / Math.max(1e-9, toS - fromS);
  }

  /**
   * The recording without the units that cannot be worn as they say; the same where all can. A unit
   * that slips is judged by the swings before that.
   */
  Recording worn(Recording recording, List<Swing> swings) {
    SlipWatch watch = slips.computeIfAbsent(recording.id(), id -> new SlipWatch());
    watch.see(recording, swings);
    List<Swing> asSetUp =
        swings.stream().filter(s -> watch.movedBy(LessonMarks.takeawayS(s)).isEmpty()).toList();
    WornCheck check = WornCheck.of(recording, asSetUp.isEmpty() ? swings : asSetUp);
    check
        .side()
        .ifPresent(
            why -> {
              sides.put(recording.id(), why);
              say(recording, "", why, true);
            });
    if (check.side().isEmpty()) {
      WornCheck.otherSide(recording, swings).ifPresent(why -> say(recording, "", why, false));
    }
    check.units().forEach((point, why) -> say(recording, point.trackedPoint(), why, true));
    return check.units().isEmpty() ? recording : without(recording, check.units());
  }

  /** Tells which units moved on the body; what they say after that is not used. */
  void slipped(Recording recording) {
    for (SlipWatch.Slip slip : slips.getOrDefault(recording.id(), new SlipWatch()).slips()) {
      if (recording.unit(slip.point()).isEmpty()) {
        continue; // refused for something else
      }
      Reason why = slip.reason();
      units
          .computeIfAbsent(recording.id(), id -> new EnumMap<>(BodyPoint.class))
          .putIfAbsent(slip.point(), why);
      if (slipsTold.add(recording.id() + slip.point() + Math.round(slip.lastBeforeS()))) {
        say(recording, slip.point().trackedPoint(), why, true);
      }
    }
  }

  /** The recording without the units that had moved on the body by then. */
  Recording unmoved(Recording recording, double atS) {
    Set<BodyPoint> moved = slips.getOrDefault(recording.id(), new SlipWatch()).movedBy(atS);
    return new Recording(
        recording.id(),
        recording.player(),
        recording.units().stream().filter(u -> !moved.contains(u.point())).toList(),
        recording.marks());
  }

  private Recording without(Recording recording, Map<BodyPoint, Reason> refused) {
    units.computeIfAbsent(recording.id(), id -> new EnumMap<>(BodyPoint.class)).putAll(refused);
    return left(recording, refused);
  }

  /** A further piece of a recording, without the units of which it is known how they are worn. */
  Recording known(Recording piece) {
    Map<BodyPoint, Reason> refused = new EnumMap<>(BodyPoint.class);
    units
        .getOrDefault(piece.id(), Map.of())
        .forEach(
            (point, why) -> {
              if (why.code() instanceof MountReason && why.code() != MountReason.SLIPPED) {
                refused.put(point, why);
              }
            });
    return left(piece, refused);
  }

  private static Recording left(Recording recording, Map<BodyPoint, Reason> refused) {
    return new Recording(
        recording.id(),
        recording.player(),
        recording.units().stream().filter(u -> !refused.containsKey(u.point())).toList(),
        recording.marks());
  }

  void say(Recording recording, String about, Reason why, boolean refuses) {
    notices
        .computeIfAbsent(recording.id(), id -> new LinkedHashSet<>())
        .add(new Notice(about, why, refuses));
  }

  /** What was said of a recording. */
  List<Notice> notices(String recording) {
    return List.copyOf(notices.getOrDefault(recording, Set.of()));
  }

  /** What was said since this was last asked. */
  List<Notice> takeNotices() {
    List<Notice> said = notices.values().stream().flatMap(Set::stream).toList();
    notices.clear();
    return said;
  }

  /** What nothing tells of the rates that all units state. */
  ScaleDoubt scaleDoubt() {
    return new ScaleDoubt(scale.doubt());
  }

  /** A value of a recording, withheld where it needs what was refused. */
  MeasureValue of(String recording, MeasureValue value) {
    String id = value.measure().id();
    Reason side = sides.get(recording);
    if (side != null && (id.startsWith("pelvis.") || id.startsWith("wrist."))) {
      return MeasureValue.withheld(value.measure(), value.at(), side);
    }
    Map<BodyPoint, Reason> refused = units.getOrDefault(recording, Map.of());
    return Stream.of(value)
        .filter(v -> !v.given())
        .flatMap(v -> NEEDS.getOrDefault(v.why().code(), List.of()).stream())
        .filter(refused::containsKey)
        .findFirst()
        .map(
            point ->
                MeasureValue.withheld(
                    value.measure(),
                    value.at(),
                    Reason.of(MeasureReason.UNIT_REFUSED, point)
                        .and(refused.getOrDefault(point, Reason.NONE))))
        .orElse(value);
  }

  /** The recording as it came, with the units alone that were kept. */
  static Recording kept(Recording raw, Recording others) {
    List<UnitStream> units =
        raw.units().stream().filter(unit -> others.unit(unit.point()).isPresent()).toList();
    return new Recording(raw.id(), raw.player(), units, raw.marks());
  }

  /**
   * Without the units that show no turn, as nothing can be read from them and they would mislead,
   * and without samples that no body can show.
   */
  static Recording seeing(Recording raw) {
    List<UnitStream> units =
        raw.units().stream()
            .filter(
                unit ->
                    IntStream.range(0, unit.size()).filter(unit::hasRate).limit(LEAST_RATES).count()
                        == LEAST_RATES)
            .map(WildSamples::without)
            .toList();
    return new Recording(raw.id(), raw.player(), units, raw.marks());
  }
}
