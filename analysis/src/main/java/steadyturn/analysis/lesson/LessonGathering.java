package steadyturn.analysis.lesson;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.SwingFinder;
import steadyturn.ingest.clock.AlignedRecording;
import steadyturn.ingest.clock.CommonClock;
import steadyturn.ingest.quality.RecordingQuality;
import steadyturn.ingest.quality.RecordingReport;
import steadyturn.ingest.quality.UnitReport;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * Takes the recordings of a lesson one after the other, keeps what the swings need and lets the
 * rest go: units aligned, wear steps read, swings cut out with their samples.
 */
final class LessonGathering {

  /** Two finds of one swing in overlapping stretches lie closer than this, s. */
  private static final double SAME_SWING_S = 0.5;

  /**
   * How much more of the pelvis is kept before a swing: an earlier rest tells of a drifting
   * address, s.
   */
  private static final double EARLIER_S = 4;

  private final SwingFinder finder = SwingFinder.withDefaults();
  private final List<GatheredSwing> swings = new ArrayList<>();
  private final Map<String, List<UnitResult>> units = new LinkedHashMap<>();
  private final Map<String, List<String>> notices = new LinkedHashMap<>();
  private Optional<Player> player = Optional.empty();
  private PelvisSteps steps = PelvisSteps.NONE;

  void add(Recording raw) {
    player = Optional.of(raw.player());
    report(raw);
    AlignedRecording aligned = CommonClock.align(raw);
    Recording recording = aligned.recording();
    List<Mark> pending = new ArrayList<>(recording.marks());
    for (Swing swing : finder.find(recording)) {
      double takeawayS =
          swing.event(SwingEvent.TAKEAWAY).map(EventTime::timeS).orElse(swing.startS());
      pending.removeIf(mark -> readIfBefore(recording, mark, takeawayS));
      if (!alreadyGathered(raw.id(), swing)) {
        swings.add(cut(raw.id(), swing, aligned));
      }
    }
    pending.forEach(mark -> readIfBefore(recording, mark, Double.POSITIVE_INFINITY));
  }

  private boolean readIfBefore(Recording recording, Mark mark, double timeS) {
    if (mark.endS() > timeS) {
      return false;
    }
    recording
        .unit(BodyPoint.PELVIS)
        .ifPresent(pelvis -> steps = steps.and(recording, pelvis, mark));
    return true;
  }

  private boolean alreadyGathered(String recording, Swing swing) {
    double when = middleS(swing);
    return swings.stream()
        .anyMatch(
            g ->
                g.recording().equals(recording)
                    && Math.abs(middleS(g.swing()) - when) < SAME_SWING_S);
  }

  private static double middleS(Swing swing) {
    return swing
        .event(SwingEvent.IMPACT)
        .map(EventTime::timeS)
        .orElse((swing.startS() + swing.endS()) / 2);
  }

  private GatheredSwing cut(String recording, Swing swing, AlignedRecording aligned) {
    Map<BodyPoint, UnitStream> windows = new EnumMap<>(BodyPoint.class);
    for (UnitStream unit : aligned.recording().units()) {
      double backS = unit.point() == BodyPoint.PELVIS ? EARLIER_S : 0;
      UnitStream window = unit.between(swing.startS() - backS, swing.endS());
      if (window.size() > 10) {
        windows.put(unit.point(), window);
      }
    }
    double syncSdS =
        windows.containsKey(BodyPoint.LEAD_FOREARM) && windows.containsKey(BodyPoint.LEAD_HAND)
            ? aligned.sdBetweenS(BodyPoint.LEAD_FOREARM, BodyPoint.LEAD_HAND, middleS(swing))
            : 0;
    return new GatheredSwing(recording, swing, windows, steps, syncSdS);
  }

  private void report(Recording recording) {
    RecordingReport report = RecordingQuality.judge(recording);
    List<UnitResult> results = units.computeIfAbsent(recording.id(), id -> new ArrayList<>());
    List<String> words = notices.computeIfAbsent(recording.id(), id -> new ArrayList<>());
    for (UnitReport unit : report.units()) {
      UnitResult result =
          new UnitResult(
              unit.facts().point(),
              unit.facts().serialNumber(),
              unit.rateHz(),
              unit.lostPct(),
              unit.saturatedSamples());
      results.removeIf(r -> r.point() == result.point());
      results.add(result);
      unit.findings()
          .forEach(
              f -> {
                String line = result.point().trackedPoint() + ": " + f.what() + " " + f.whatToDo();
                if (!words.contains(line)) {
                  words.add(line);
                }
              });
    }
  }

  List<GatheredSwing> swings() {
    return List.copyOf(swings);
  }

  Map<String, List<UnitResult>> units() {
    return units;
  }

  Map<String, List<String>> notices() {
    return notices;
  }

  Optional<Player> player() {
    return player;
  }

  PelvisSteps steps() {
    return steps;
  }
}
