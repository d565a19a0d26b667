package steadyturn.analysis.lab.study;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import steadyturn.analysis.lab.LessonSimulator;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.analysis.lab.SyntheticLesson;
import steadyturn.analysis.lab.truth.SwingTruth;
import steadyturn.analysis.lab.truth.TrueMeasure;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.find.SwingFinder;
import steadyturn.analysis.tempo.OrderMeasures;
import steadyturn.analysis.tempo.TempoMeasures;
import steadyturn.analysis.wrist.WristClocks;
import steadyturn.analysis.wrist.WristMotion;
import steadyturn.analysis.wrist.WristReading;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.wear.wrist.WristSteps;
import steadyturn.ingest.clock.AlignedRecording;
import steadyturn.ingest.clock.CommonClock;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;

/** Cock, release and keep of the lead wrist against the simulator's truth. */
public final class WristStudy {

  private static final double SAME_SWING_S = 0.3;

  private final String name;
  private final Map<String, ErrorTally> tallies = new LinkedHashMap<>();
  private final Map<String, String> units = new LinkedHashMap<>();
  private final Map<String, Double> levels = new LinkedHashMap<>();
  private double releaseLevels;
  private int releases;
  private int withheld;
  private int watched;
  private int falseAlarms;

  private WristStudy(String name) {
    this.name = name;
  }

  /**
   * Runs lessons of the hits the spec asks for, on all cores; the rows are the same whatever their
   * order.
   *
   * @param spec what is simulated; forearm and hand units are needed
   * @param swings hits in all
   * @param seed of the first lesson; the next lessons follow
   */
  public static List<StudyRow> run(String name, LessonSpec spec, int swings, long seed) {
    WristStudy study = new WristStudy(name);
    int lessons = (swings + spec.hits() - 1) / spec.hits();
    IntStream.range(0, lessons)
        .parallel()
        .mapToObj(i -> read(LessonSimulator.simulate(spec.withPractices(0), seed + i)))
        .toList()
        .forEach(found -> found.forEach(study::add));
    return study.rows();
  }

  /**
   * One simulated swing with what was read of it.
   *
   * @param watched whether hand and shaft unit watch each other
   */
  private record Found(
      Swing swing,
      SwingTruth truth,
      WristReading reading,
      List<MeasureValue> times,
      boolean watched) {}

  private static List<Found> read(SyntheticLesson lesson) {
    AlignedRecording aligned = CommonClock.align(lesson.recording());
    Recording recording = aligned.recording();
    RestBiases biases = RestBiases.of(recording);
    WristSteps worn = WristSteps.of(recording, biases, WristSteps.NONE);
    List<Swing> swings = SwingFinder.withDefaults().find(recording, worn.alignment());
    boolean watched =
        recording.unit(BodyPoint.LEAD_HAND).isPresent()
            && recording.unit(BodyPoint.CLUB_SHAFT).isPresent();
    List<Found> out = new ArrayList<>();
    for (SwingTruth truth : lesson.truth().swings()) {
      for (Swing swing : swings) {
        Optional<EventTime> impact = swing.event(SwingEvent.IMPACT);
        double truthS = truth.eventS(SwingEvent.IMPACT).orElse(Double.NaN);
        if (impact.isPresent() && Math.abs(impact.get().timeS() - truthS) < SAME_SWING_S) {
          WristClocks clocks = WristClocks.of(aligned, impact.get().timeS());
          WristReading reading = WristReading.of(recording, biases, swing, worn, clocks);
          List<MeasureValue> times = new ArrayList<>(TempoMeasures.of(swing));
          times.addAll(
              OrderMeasures.of(recording, biases, swing, worn.alignment(), clocks.handSdS()));
          out.add(new Found(swing, truth, reading, times, watched));
        }
      }
    }
    return out;
  }

  private void add(Found found) {
    countAlarms(found);
    compare(found.reading(), found.swing(), found.truth());
    List<TrueMeasure> truths = found.truth().truthMeasures();
    found.times().forEach(m -> addMeasure(m, truths));
  }

  /** No simulated hand unit slips by more than skin and grip do, so every alarm is a false one. */
  private void countAlarms(Found found) {
    boolean alarm = found.reading().flags().contains("hand-moves-on-shaft");
    watched += found.watched() ? 1 : 0;
    falseAlarms += found.watched() && alarm ? 1 : 0;
  }

  private void compare(WristReading reading, Swing swing, SwingTruth truth) {
    boolean absolute = reading.motion().map(WristMotion::absolute).orElse(false);
    List<TrueMeasure> truths = new WristTruth(truth).measures(absolute);
    reading.motion().ifPresent(m -> compareChanges(m, swing, new WristTruth(truth)));
    for (MeasureValue value : reading.measures()) {
      addMeasure(value, truths);
      if (value.measure() == Measure.WRIST_RELEASE) {
        withheld += value.given() ? 0 : 1;
        releases += value.given() ? 1 : 0;
        releaseLevels += value.given() ? new WristTruth(truth).releaseLevelMs() : 0;
      }
    }
  }

  private void addMeasure(MeasureValue value, List<TrueMeasure> truths) {
    truths.stream()
        .filter(t -> t.measure() == value.measure() && t.at().equals(value.at()))
        .filter(t -> value.given())
        .findFirst()
        .ifPresent(
            t -> {
              String at = value.at().isEmpty() ? "" : " @ " + value.at();
              tally(value.measure().id() + at, value.measure().unit(), Double.NaN)
                  .add(value.value(), value.low(), value.high(), t.value());
            });
  }

  private void compareChanges(WristMotion motion, Swing swing, WristTruth wrist) {
    Optional<EventTime> top = swing.event(SwingEvent.TOP);
    Optional<EventTime> impact = swing.event(SwingEvent.IMPACT);
    if (top.isEmpty() || impact.isEmpty()) {
      return;
    }
    int atTop = motion.indexAt(top.get().timeS());
    int atImpact = motion.indexAt(impact.get().timeS());
    double half = MeasureValue.Z95 * motion.spreads().cockDeg(atTop);
    double change = motion.cockDegAt(top.get().timeS());
    tally("cock change address-top", "deg", 2.5)
        .add(change, change - half, change + half, wrist.changeToTopDeg());
    if (motion.cutBeyondRepairBefore(impact.get().timeS())) {
      return;
    }
    double moving = motion.cockRateDegPerS(atImpact) * impact.get().sdS();
    double sd = Math.hypot(motion.spreads().changeDeg(atTop, atImpact), moving);
    double fall = motion.cockDegAt(impact.get().timeS()) - change;
    tally("cock change top-impact", "deg", 4.5)
        .add(
            fall,
            fall - MeasureValue.Z95 * sd,
            fall + MeasureValue.Z95 * sd,
            wrist.changeTopToImpactDeg());
  }

  private ErrorTally tally(String key, String unit, double level) {
    units.put(key, unit);
    levels.put(key, level);
    return tallies.computeIfAbsent(key, k -> new ErrorTally());
  }

  private List<StudyRow> rows() {
    List<StudyRow> rows = new ArrayList<>();
    levels.put(Measure.WRIST_RELEASE.id(), releaseLevels / Math.max(1, releases));
    tallies.forEach(
        (key, tally) ->
            rows.add(
                tally.row(
                    name, key, units.getOrDefault(key, ""), levels.getOrDefault(key, Double.NaN))));
    double pct = 100.0 * withheld / Math.max(1, withheld + releases);
    rows.add(StudyRow.share(name, "releases withheld", withheld + releases, pct, Double.NaN));
    if (watched > 0) {
      double alarmPct = 100.0 * falseAlarms / watched;
      rows.add(
          StudyRow.share(
              name, "hand-moves-on-shaft flagged, falsely", watched, alarmPct, Double.NaN));
    }
    return rows;
  }

  /** What the levels are stated in, from the true joints of one swing. */
  private record WristTruth(SwingTruth truth) {

    /** Wrist angles from the straight wrist, or since address where the units show no more. */
    private List<TrueMeasure> measures(boolean absolute) {
      boolean posed = truth.truthMeasures().stream().anyMatch(this::isCockOfStraightWrist);
      if (absolute || !posed) {
        return truth.truthMeasures();
      }
      return truth.truthMeasures().stream().map(this::sinceAddress).toList();
    }

    private boolean isCockOfStraightWrist(TrueMeasure m) {
      double takeawayS = truth.eventS(SwingEvent.TAKEAWAY).orElse(Double.NaN);
      return m.measure() == Measure.WRIST_COCK
          && m.at().equals(SwingEvent.TAKEAWAY.word())
          && Math.abs(m.value() - Math.toDegrees(truth.cockRad(takeawayS))) < 1e-9;
    }

    private TrueMeasure sinceAddress(TrueMeasure m) {
      double zeroRad =
          switch (m.measure()) {
            case WRIST_COCK, WRIST_COCK_MAX -> truth.addressCockRad();
            case WRIST_FLEXION -> truth.addressFlexionRad();
            default -> 0;
          };
      return new TrueMeasure(m.measure(), m.at(), m.value() - Math.toDegrees(zeroRad));
    }

    private double cockDegAt(SwingEvent event) {
      return Math.toDegrees(truth.cockRad(truth.eventS(event).orElse(Double.NaN)));
    }

    private double changeToTopDeg() {
      return cockDegAt(SwingEvent.TOP) - Math.toDegrees(truth.addressCockRad());
    }

    private double changeTopToImpactDeg() {
      return cockDegAt(SwingEvent.IMPACT) - cockDegAt(SwingEvent.TOP);
    }

    /** The level of the release: 4 ms, or 2 deg at the rate of uncocking there. */
    private double releaseLevelMs() {
      double beforeMs = truth.truth(Measure.WRIST_RELEASE, "").map(TrueMeasure::value).orElse(0.0);
      double releaseS = truth.eventS(SwingEvent.IMPACT).orElse(Double.NaN) - beforeMs / 1000;
      return Math.max(4, 2000 / -Math.toDegrees(truth.cockRateRadPerS(releaseS)));
    }
  }
}
