package steadyturn.analysis.lesson;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import steadyturn.analysis.swing.Faults;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;

/**
 * One lesson from recordings to results. All swings of the lesson are estimated together, as the
 * units' errors are the same in all of them. Example: {@code
 * LessonAnalyzer.withDefaults().analyze(recordings)}.
 */
public final class LessonAnalyzer {

  private final AnalysisSettings settings;

  public LessonAnalyzer(AnalysisSettings settings) {
    this.settings = settings;
  }

  /** The analyzer with the settings of docs/accuracy.md. */
  public static LessonAnalyzer withDefaults() {
    return new LessonAnalyzer(AnalysisSettings.defaults());
  }

  /**
   * Analyses the recordings of one session of one player, in the order they were made. Recordings
   * of the same id are taken as overlapping stretches of one; each is let go before the next is
   * asked for.
   *
   * @return one result a recording id, in order
   */
  public List<LessonResult> analyze(Iterable<Recording> recordings) {
    Faults faults = Faults.usual();
    LessonGathering gathering = new LessonGathering(settings.curves(), faults);
    recordings.forEach(gathering::add);
    if (gathering.player().isEmpty()) {
      return List.of();
    }
    Player player = gathering.player().get();
    Map<String, List<SwingResult>> byRecording = new LinkedHashMap<>();
    gathering.units().keySet().forEach(id -> byRecording.put(id, List.of()));
    Map<GatheredSwing, PelvisLesson.PelvisSwing> pelvis =
        PelvisLesson.estimate(player, settings, gathering.swings(), faults);
    SwingReport report = new SwingReport(player, settings);
    Map<String, List<GatheredSwing>> ofRecording =
        gathering.swings().stream().collect(Collectors.groupingBy(GatheredSwing::recording));
    // swings do not see one another here: on all cores, put together in their order
    ofRecording.forEach(
        (id, swings) ->
            byRecording.put(
                id,
                IntStream.range(0, swings.size())
                    .parallel()
                    .mapToObj(i -> result(report, swings.get(i), pelvis, i + 1, faults))
                    .toList()));
    List<LessonResult> out = new ArrayList<>();
    byRecording.forEach(
        (id, swings) ->
            out.add(
                new LessonResult(
                    id,
                    player,
                    aim(ofRecording.getOrDefault(id, List.of()), pelvis),
                    gathering.units().getOrDefault(id, List.of()),
                    swings,
                    notices(
                        gathering, id, ofRecording.getOrDefault(id, List.of()), pelvis, faults))));
    return out;
  }

  private static SwingResult result(
      SwingReport report,
      GatheredSwing swing,
      Map<GatheredSwing, PelvisLesson.PelvisSwing> pelvis,
      int number,
      Faults faults) {
    return faults
        .keep(
            swing.recording(),
            swing.swing().startS(),
            () -> report.of(swing, Optional.ofNullable(pelvis.get(swing)), number))
        .orElseGet(() -> SwingReport.failed(swing, number));
  }

  /** Where the target line of a recording's swings comes from, by the words of the contract. */
  private static String aim(
      List<GatheredSwing> swings, Map<GatheredSwing, PelvisLesson.PelvisSwing> pelvis) {
    return aims(swings, pelvis).anyMatch(Aim::byStep) ? "aim-step" : "square-hips";
  }

  private static Stream<Aim> aims(
      List<GatheredSwing> swings, Map<GatheredSwing, PelvisLesson.PelvisSwing> pelvis) {
    return swings.stream()
        .map(pelvis::get)
        .filter(Objects::nonNull)
        .map(PelvisLesson.PelvisSwing::aim);
  }

  private List<Notice> notices(
      LessonGathering gathering,
      String id,
      List<GatheredSwing> swings,
      Map<GatheredSwing, PelvisLesson.PelvisSwing> pelvis,
      Faults faults) {
    List<Notice> out = new ArrayList<>(gathering.notices().getOrDefault(id, List.of()));
    AimNotice.of(
            aims(swings, pelvis).toList(),
            gathering.player().orElseThrow().handed(),
            gathering.steps().isGood("aim"))
        .ifPresent(reason -> out.add(new Notice("aim", reason)));
    gathering.stepResults().stream()
        .filter(r -> !r.used())
        .forEach(r -> out.add(new Notice(r.step(), r.why())));
    faults.of(id).forEach(fault -> out.add(new Notice("", fault)));
    return out;
  }
}
