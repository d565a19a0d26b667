package steadyturn.analysis.accuracy;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.SwingFinder;
import steadyturn.analysis.synthetic.LessonSimulator;
import steadyturn.analysis.synthetic.LessonSpec;
import steadyturn.analysis.synthetic.SwingTruth;
import steadyturn.analysis.synthetic.SyntheticLesson;
import steadyturn.analysis.tempo.OrderMeasures;
import steadyturn.analysis.wrist.WristMotion;
import steadyturn.analysis.wrist.WristReading;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.wear.WristAlignment;
import steadyturn.fusion.wear.WristSteps;
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

  private WristStudy(String name) {
    this.name = name;
  }

  /**
   * Runs lessons of ten hits each.
   *
   * @param spec what is simulated otherwise; forearm and hand units are needed
   * @param swings hits in all
   * @param seed of the first lesson; the next lessons follow
   */
  public static List<StudyRow> run(String name, LessonSpec spec, int swings, long seed) {
    WristStudy study = new WristStudy(name);
    int perLesson = 5;
    for (int i = 0; i < (swings + perLesson - 1) / perLesson; i++) {
      study.add(LessonSimulator.simulate(spec.withHits(perLesson).withPractices(0), seed + i));
    }
    return study.rows();
  }

  private void add(SyntheticLesson lesson) {
    AlignedRecording aligned = CommonClock.align(lesson.recording());
    Recording recording = aligned.recording();
    RestBiases biases = RestBiases.of(recording);
    WristAlignment alignment =
        WristSteps.of(recording, biases, WristAlignment.nominal()).alignment();
    List<Swing> swings = SwingFinder.withDefaults().find(recording, alignment);
    for (SwingTruth truth : lesson.truth().swings()) {
      for (Swing swing : swings) {
        Optional<EventTime> impact = swing.event(SwingEvent.IMPACT);
        double truthS = truth.eventS(SwingEvent.IMPACT).orElse(Double.NaN);
        if (impact.isPresent() && Math.abs(impact.get().timeS() - truthS) < SAME_SWING_S) {
          double syncSdS =
              aligned.sdBetweenS(BodyPoint.LEAD_FOREARM, BodyPoint.LEAD_HAND, impact.get().timeS());
          WristReading reading = WristReading.of(recording, biases, swing, alignment, syncSdS);
          compare(reading, swing, truth, alignment.posed());
          OrderMeasures.of(recording, biases, swing, alignment).stream()
              .filter(m -> m.measure() == Measure.ARM_PEAK)
              .forEach(m -> addMeasure(m, new WristTruth(truth).armPeakMs()));
        }
      }
    }
  }

  private void compare(WristReading reading, Swing swing, SwingTruth truth, boolean absolute) {
    WristTruth wrist = new WristTruth(truth);
    reading.motion().ifPresent(m -> compareChanges(m, swing, wrist));
    for (MeasureValue value : reading.measures()) {
      if (value.measure() == Measure.WRIST_COCK && value.given()) {
        addMeasure(value, wrist.cockDeg(value.at()) - (absolute ? 0 : wrist.addressDeg()));
      } else if (value.measure() == Measure.WRIST_RELEASE) {
        addRelease(value, wrist);
      } else if (value.measure() == Measure.WRIST_KEPT && value.given()) {
        addMeasure(value, wrist.keptPct(value.at()));
      } else if (value.measure() == Measure.WRIST_RATE && value.given()) {
        addMeasure(value, wrist.peakRateDegPerS());
      } else if (value.measure() == Measure.WRIST_RATE_TIME && value.given()) {
        addMeasure(value, wrist.peakRateMs());
      } else if (value.measure() == Measure.WRIST_FLEXION && value.given()) {
        addMeasure(value, wrist.flexionChangeDeg(value.at()));
      }
    }
  }

  private void addRelease(MeasureValue value, WristTruth wrist) {
    if (!value.given()) {
      withheld++;
      return;
    }
    addMeasure(value, wrist.releaseMs());
    releaseLevels += Math.max(4, 2000 / wrist.releaseRateDegPerS());
    releases++;
  }

  private void addMeasure(MeasureValue value, double truth) {
    if (value.given() && !Double.isNaN(truth)) {
      String key = value.measure().id() + (value.at().isEmpty() ? "" : " @ " + value.at());
      tally(key, value.measure().unit(), Double.NaN)
          .add(value.value(), value.low(), value.high(), truth);
    }
  }

  private void compareChanges(WristMotion motion, Swing swing, WristTruth wrist) {
    Optional<EventTime> top = swing.event(SwingEvent.TOP);
    Optional<EventTime> impact = swing.event(SwingEvent.IMPACT);
    if (top.isEmpty() || impact.isEmpty()) {
      return;
    }
    int atTop = motion.indexAt(top.get().timeS());
    int atImpact = motion.indexAt(impact.get().timeS());
    double half = MeasureValue.Z95 * motion.cockSdDeg(atTop);
    double change = motion.cockDegAt(top.get().timeS());
    tally("cock change address-top", "deg", 2.5)
        .add(change, change - half, change + half, wrist.changeToTopDeg());
    double moving = motion.cockRateDegPerS(atImpact) * impact.get().sdS();
    double sd = Math.hypot(motion.changeSdDeg(atTop, atImpact), moving);
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
    rows.add(
        new StudyRow(
            name,
            "releases withheld",
            "%",
            withheld + releases,
            pct,
            pct,
            Double.NaN,
            Double.NaN,
            Double.NaN));
    return rows;
  }

  /** The measures of one swing from its true joints. */
  private record WristTruth(SwingTruth truth) {

    private static final double STEP_S = 0.0005;

    private double eventS(SwingEvent event) {
      return truth.eventS(event).orElse(Double.NaN);
    }

    private double cockDegAt(double timeS) {
      return Math.toDegrees(truth.cockRad(timeS));
    }

    private double cockDeg(String at) {
      if (at.equals(SwingEvent.ADDRESS.word())) {
        return addressDeg();
      }
      return cockDegAt(timeOf(at));
    }

    private double timeOf(String at) {
      return Arrays.stream(SwingEvent.values())
          .filter(e -> e.word().equals(at))
          .mapToDouble(this::eventS)
          .findFirst()
          .orElse(Double.NaN);
    }

    private double addressDeg() {
      return cockDegAt(eventS(SwingEvent.TAKEAWAY) - 0.14);
    }

    private double changeToTopDeg() {
      return cockDegAt(eventS(SwingEvent.TOP)) - addressDeg();
    }

    private double changeTopToImpactDeg() {
      return cockDegAt(eventS(SwingEvent.IMPACT)) - cockDegAt(eventS(SwingEvent.TOP));
    }

    private double flexionChangeDeg(String at) {
      double address = truth.flexionRad(eventS(SwingEvent.TAKEAWAY) - 0.14);
      return Math.toDegrees(truth.flexionRad(timeOf(at)) - address);
    }

    private double plateauDeg() {
      double fromS = eventS(SwingEvent.TOP);
      double toS = eventS(SwingEvent.IMPACT) - 0.04;
      int n = (int) ((toS - fromS) / STEP_S);
      double[] cocks = new double[n];
      for (int i = 0; i < n; i++) {
        cocks[i] = cockDegAt(fromS + i * STEP_S);
      }
      Arrays.sort(cocks);
      return cocks[(int) Math.round(0.9 * (n - 1))] - addressDeg();
    }

    private double releaseS() {
      double level = plateauDeg() - 15 + addressDeg();
      double t = eventS(SwingEvent.IMPACT);
      while (cockDegAt(t) < level) {
        t -= STEP_S / 10;
      }
      return t;
    }

    private double releaseMs() {
      return 1000 * (eventS(SwingEvent.IMPACT) - releaseS());
    }

    private double releaseRateDegPerS() {
      return -Math.toDegrees(truth.cockRateRadPerS(releaseS()));
    }

    private double keptPct(String at) {
      return 100 * (cockDeg(at) - addressDeg()) / plateauDeg();
    }

    private double fastestS() {
      double best = eventS(SwingEvent.TOP);
      for (double t = best; t < eventS(SwingEvent.IMPACT); t += STEP_S) {
        best = truth.cockRateRadPerS(t) < truth.cockRateRadPerS(best) ? t : best;
      }
      return best;
    }

    private double peakRateDegPerS() {
      return -Math.toDegrees(truth.cockRateRadPerS(fastestS()));
    }

    private double peakRateMs() {
      return 1000 * (eventS(SwingEvent.IMPACT) - fastestS());
    }

    private double armPeakMs() {
      double best = eventS(SwingEvent.TOP);
      for (double t = best; t < eventS(SwingEvent.IMPACT); t += STEP_S) {
        best = truth.armRateRadPerS(t) > truth.armRateRadPerS(best) ? t : best;
      }
      return 1000 * (eventS(SwingEvent.IMPACT) - best);
    }
  }
}
