package steadyturn.analysis.lab.study;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import steadyturn.analysis.lab.LessonSimulator;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.analysis.lab.SyntheticLesson;
import steadyturn.analysis.lab.truth.SwingTruth;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.ClockSpread;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.analysis.swing.find.SwingFinder;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.wear.wrist.WristAlignment;
import steadyturn.fusion.wear.wrist.WristSteps;
import steadyturn.ingest.clock.AlignedRecording;
import steadyturn.ingest.clock.CommonClock;
import steadyturn.ingest.sample.Recording;

/**
 * Swings found, shocks told from brushes, and the times of the key positions, against the truth.
 */
public final class SwingStudy {

  private static final double SAME_SWING_S = 0.3;

  private final String name;
  private final Map<SwingEvent, ErrorTally> times = new EnumMap<>(SwingEvent.class);
  private int planned;
  private int found;
  private int extra;
  private int practices;
  private int falseImpacts;
  private int hits;
  private int missedImpacts;
  private final ErrorTally hitImpact = new ErrorTally();

  private SwingStudy(String name) {
    this.name = name;
  }

  /**
   * Runs lessons of half hits and half practice swings with turf brush, waggles and putts.
   *
   * @param spec what is simulated otherwise
   * @param swings hits in all; as many practice swings
   * @param seed of the first lesson; the next lessons follow
   */
  public static List<StudyRow> run(String name, LessonSpec spec, int swings, long seed) {
    SwingStudy study = new SwingStudy(name);
    int perLesson = 5;
    for (int i = 0; i < (swings + perLesson - 1) / perLesson; i++) {
      LessonSpec lesson = spec.withHits(perLesson).withPractices(perLesson).withTurfBrush(true);
      study.add(LessonSimulator.simulate(lesson, seed + i));
    }
    return study.rows();
  }

  private void add(SyntheticLesson lesson) {
    AlignedRecording aligned = CommonClock.align(lesson.recording());
    Recording recording = aligned.recording();
    WristAlignment alignment =
        WristSteps.of(recording, RestBiases.of(recording), WristSteps.NONE).alignment();
    List<Swing> swings =
        new ArrayList<>(
            SwingFinder.withDefaults().find(recording, alignment).stream()
                .map(swing -> ClockSpread.added(swing, aligned))
                .toList());
    for (SwingTruth truth : lesson.truth().swings()) {
      planned++;
      Optional<Swing> match = swings.stream().filter(s -> same(s, truth)).findFirst();
      if (match.isPresent()) {
        found++;
        swings.remove(match.get());
        compare(match.get(), truth);
      }
    }
    extra += swings.size();
  }

  private static boolean same(Swing swing, SwingTruth truth) {
    Optional<Double> impact = truth.eventS(SwingEvent.IMPACT);
    return impact.isPresent()
        && swing
            .event(SwingEvent.IMPACT)
            .filter(e -> Math.abs(e.timeS() - impact.get()) < SAME_SWING_S)
            .isPresent();
  }

  private void compare(Swing swing, SwingTruth truth) {
    boolean shock = !swing.flags().contains("impact-virtual");
    if (truth.kind() == SwingKind.HIT) {
      hits++;
      missedImpacts += shock ? 0 : 1;
    } else {
      practices++;
      falseImpacts += shock ? 1 : 0;
    }
    for (EventTime event : swing.events()) {
      truth.eventS(event.event()).ifPresent(t -> addTime(event, t, truth.kind()));
    }
  }

  private void addTime(EventTime event, double truthS, SwingKind kind) {
    double half = 1000 * MeasureValue.Z95 * event.sdS();
    double valueMs = 1000 * event.timeS();
    boolean hit = event.event() == SwingEvent.IMPACT && kind == SwingKind.HIT;
    ErrorTally tally =
        hit ? hitImpact : times.computeIfAbsent(event.event(), e -> new ErrorTally());
    tally.add(valueMs, valueMs - half, valueMs + half, 1000 * truthS);
  }

  private List<StudyRow> rows() {
    List<StudyRow> rows = new ArrayList<>();
    rows.add(count("swings not found", planned - found, planned, 1));
    rows.add(count("other movements taken for swings", extra, planned, 0));
    rows.add(count("false impacts in practice swings", falseImpacts, practices, 2));
    rows.add(count("impacts missed in hits", missedImpacts, hits, Double.NaN));
    rows.add(hitImpact.row(name, "impact of hits", "ms", 3));
    times.forEach(
        (event, tally) ->
            rows.add(
                tally.row(
                    name,
                    event == SwingEvent.IMPACT ? "impact of practice swings" : event.word(),
                    "ms",
                    Double.NaN)));
    return rows;
  }

  private StudyRow count(String what, int count, int of, double levelPct) {
    double pct = of == 0 ? 0 : 100.0 * count / of;
    return StudyRow.share(name, what, of, pct, levelPct);
  }
}
