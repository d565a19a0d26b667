package steadyturn.analysis.lesson;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import steadyturn.analysis.lesson.TargetLine.Aim;
import steadyturn.analysis.limits.SwingLimits;
import steadyturn.analysis.swing.Faults;
import steadyturn.ingest.sample.Offered;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;

/**
 * One lesson from recordings to results. All swings of the lesson are estimated together, as the
 * units' errors are the same in all of them. Example: {@code
 * LessonAnalyzer.withDefaults().analyze(recordings)}.
 */
@Offered
public record LessonAnalyzer(AnalysisSettings settings) {

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
    Map<GatheredSwing, PelvisLesson.PelvisSwing> pelvis =
        gathering
            .player()
            .map(
                p ->
                    PelvisLesson.estimate(
                        p, settings, gathering.swings(), gathering.refusals().scaleDoubt(), faults))
            .orElse(Map.of());
    Map<String, List<GatheredSwing>> swings =
        gathering.swings().stream().collect(Collectors.groupingBy(GatheredSwing::recording));
    return gathering.player().stream()
        .map(player -> new Lesson(player, settings, gathering, pelvis, faults))
        .flatMap(
            lesson ->
                gathering.units().keySet().stream()
                    .map(id -> lesson.result(id, swings.getOrDefault(id, List.of()))))
        .toList();
  }

  /** What is known of the lesson when its swings are told. */
  private record Lesson(
      Player player,
      AnalysisSettings settings,
      LessonGathering gathering,
      Map<GatheredSwing, PelvisLesson.PelvisSwing> pelvis,
      Faults faults) {

    LessonResult result(String id, List<GatheredSwing> swings) {
      List<Aim> aims =
          swings.stream()
              .map(pelvis::get)
              .filter(Objects::nonNull)
              .map(PelvisLesson.PelvisSwing::aim)
              .toList();
      List<SwingResult> results =
          IntStream.range(0, swings.size())
              .parallel()
              .mapToObj(i -> swing(swings.get(i), i + 1))
              .toList();
      String aim = aims.stream().anyMatch(Aim::byStep) ? "aim-step" : "square-hips";
      List<UnitResult> units = gathering.units().getOrDefault(id, List.of());
      List<Notice> notices = notices(id, aims);
      notices.addAll(impossible(results));
      return new LessonResult(id, player, aim, units, results, notices);
    }

    private static List<Notice> impossible(List<SwingResult> swings) {
      return swings.stream()
          .flatMap(swing -> swing.measures().stream())
          .flatMap(value -> SwingLimits.whyOf(value).stream())
          .distinct()
          .map(why -> new Notice("", why, true))
          .toList();
    }

    private SwingResult swing(GatheredSwing swing, int number) {
      return new SwingReport(player, settings, gathering.refusals())
          .kept(swing, Optional.ofNullable(pelvis.get(swing)), number, faults);
    }

    private List<Notice> notices(String id, List<Aim> aims) {
      List<Notice> out = new ArrayList<>(gathering.refusals().notices(id));
      AimNotice.of(aims, player.handed(), gathering.steps().isGood("aim"))
          .ifPresent(reason -> out.add(new Notice("aim", reason)));
      gathering.stepResults().stream()
          .filter(r -> !r.used())
          .forEach(r -> out.add(new Notice(r.step(), r.why())));
      gathering
          .unplaced(id)
          .take(Double.POSITIVE_INFINITY)
          .forEach(r -> out.add(new Notice("", r)));
      faults.of(id).forEach(fault -> out.add(new Notice("", fault)));
      return out;
    }
  }
}
