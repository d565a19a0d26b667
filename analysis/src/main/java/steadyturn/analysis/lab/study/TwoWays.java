package steadyturn.analysis.lab.study;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import steadyturn.analysis.lab.LessonSimulator;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.analysis.lab.SyntheticLesson;
import steadyturn.analysis.lab.body.PlayerStyle;
import steadyturn.analysis.lab.truth.LessonTruth;
import steadyturn.analysis.lab.truth.TrueMeasure;
import steadyturn.analysis.lesson.LessonAnalyzer;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.lesson.Notice;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.fusion.wear.StepReason;
import steadyturn.ingest.lab.Speech;
import steadyturn.ingest.recording.RecordingReader;
import steadyturn.ingest.recording.dataset.Archive;
import steadyturn.ingest.sample.Averages;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Recording;

/**
 * One simulated lesson two ways: read as it was simulated, its marks being stretches, and sent by
 * its units, recorded, and its marks typed early or late as instants. Both are of units whose
 * calibration is not known, as a recorder does not know it.
 */
public final class TwoWays {

  /** What is compared, and by how much the medians may differ. */
  public static final List<Compared> COMPARED =
      List.of(
          new Compared(Measure.PELVIS_TURN, "top", 0.2),
          new Compared(Measure.PELVIS_TURN, "impact", 0.2),
          new Compared(Measure.PELVIS_SLIDE, "top", 2),
          new Compared(Measure.PELVIS_SLIDE, "impact", 2),
          new Compared(Measure.WRIST_COCK, "top", 0.5),
          new Compared(Measure.WRIST_COCK, "impact", 0.5),
          new Compared(Measure.WRIST_RELEASE, "", 1),
          new Compared(Measure.TEMPO_RATIO, "", 0.02));

  /**
   * A measure at a key position.
   *
   * @param at the key position, empty for the swing as a whole
   * @param level largest median difference, unit of the measure
   */
  public record Compared(Measure measure, String at, double level) {

    private Optional<MeasureValue> valueOf(SwingResult swing) {
      return swing.measures().stream()
          .filter(v -> v.measure() == measure && (at.isEmpty() || v.at().equals(at)))
          .filter(MeasureValue::given)
          .findFirst();
    }

    private Optional<Double> of(SwingResult swing) {
      return valueOf(swing).map(MeasureValue::value);
    }
  }

  /**
   * The difference of one measure over all lessons.
   *
   * @param values swings that have it both ways
   * @param median size of the difference in the middle one
   */
  public record Row(Compared compared, int values, double median) {

    public boolean reached() {
      return values > 0 && median <= compared.level;
    }
  }

  /** How a lesson comes from its units and a typing person into a dataset. */
  @FunctionalInterface
  public interface Way {

    /**
     * Records it.
     *
     * @param draw for starts, clocks, delays and how early or late is typed
     * @param folder where nothing is yet
     */
    void record(Recording lesson, RandomGenerator draw, Path folder) throws IOException;
  }

  private final Way way;
  private final Speech speech;
  private final List<List<Double>> differences = new ArrayList<>();
  private final List<String> unlike = new ArrayList<>();
  private final List<String> missed = new ArrayList<>();
  private int swings;
  private int judged;
  private int covered;

  /** The bytes handed to the recorder, faster than in real time. */
  public TwoWays(Speech speech) {
    this(speech, (lesson, draw, folder) -> new SentLesson(lesson, draw, speech).into(folder));
  }

  /** Another way, of units that speak so. */
  public TwoWays(Speech speech, Way way) {
    this.way = way;
    this.speech = speech;
    COMPARED.forEach(c -> differences.add(new ArrayList<>()));
  }

  /**
   * Adds one lesson. Units that are set up lose their cable, so that they are held against the
   * truth alone, not against the simulated lesson. Styles, hands, rates, start times, clocks and
   * delays take turns or are drawn.
   *
   * @param folder where nothing is yet
   */
  public void add(long seed, int balls, Path folder) throws IOException {
    RandomGenerator draw = new Well19937c(seed);
    SyntheticLesson simulated = LessonSimulator.simulate(spec(seed, balls), seed);
    Recording asSent = SentLesson.asTold(simulated.recording(), speech);
    way.record(asSent, draw, folder);
    Recording recorded =
        RecordingReader.read(Archive.open(folder).sessions().get(0).runs().get(0)).recording();
    LessonResult result = analyzed(recorded);
    if (speech.isSetUp()) {
      swings += result.swings().size();
      note(seed, "swings", simulated.truth().swings().size(), result.swings().size());
    } else {
      compare(seed, analyzed(asSent), result);
    }
    judge(simulated.truth(), result);
  }

  /** Where the truth lies within the intervals of what was recorded. */
  private void judge(LessonTruth truth, LessonResult recorded) {
    boolean isWhole = truth.swings().size() == recorded.swings().size();
    for (int i = 0; isWhole && i < truth.swings().size(); i++) {
      for (Compared compared : COMPARED) {
        Optional<MeasureValue> value = compared.valueOf(recorded.swings().get(i));
        Optional<Double> is =
            truth.swings().get(i).truth(compared.measure, compared.at).map(TrueMeasure::value);
        if (value.isPresent() && is.isPresent()) {
          judged++;
          boolean holds = value.get().low() <= is.get() && is.get() <= value.get().high();
          covered += holds ? 1 : 0;
          if (!holds) {
            missed.add(
                String.format(
                    Locale.ROOT,
                    "swing %d, %s %s: %.3f is not in %.3f to %.3f",
                    i + 1,
                    compared.measure.id(),
                    compared.at,
                    is.get(),
                    value.get().low(),
                    value.get().high()));
          }
        }
      }
    }
  }

  /** Values whose truth is known. */
  public int judged() {
    return judged;
  }

  /** How many of all that are compared were given and have a known truth, percent. */
  public double givenPct() {
    return 100.0 * judged / (swings * COMPARED.size());
  }

  /** Those that do not have it within their interval. */
  public List<String> missed() {
    return List.copyOf(missed);
  }

  /** How many of them have it within their interval, percent. */
  public double coveredPct() {
    return 100.0 * covered / judged;
  }

  private LessonSpec spec(long seed, int balls) {
    List<PlayerStyle> styles = PlayerStyle.all();
    return LessonSpec.standard()
        .withPlayer(styles.get((int) Math.floorMod(seed, (long) styles.size())))
        .withHanded(seed % 2 == 0 ? Handedness.RIGHT : Handedness.LEFT)
        .withAccelFullScaleG(speech.accelRangeG())
        .withRateHz(seed % 4 < 2 || speech.isSetUp() ? 200 : 500)
        .withHits(balls)
        .withPractices(1);
  }

  private static LessonResult analyzed(Recording recording) {
    return LessonAnalyzer.withDefaults().analyze(List.of(recording)).get(0);
  }

  private void compare(long seed, LessonResult asSent, LessonResult recorded) {
    note(seed, "swings", words(asSent), words(recorded));
    note(seed, "again", again(asSent), again(recorded));
    if (asSent.swings().size() != recorded.swings().size()) {
      return;
    }
    for (int i = 0; i < asSent.swings().size(); i++) {
      swings++;
      for (int c = 0; c < COMPARED.size(); c++) {
        Optional<Double> one = COMPARED.get(c).of(asSent.swings().get(i));
        Optional<Double> other = COMPARED.get(c).of(recorded.swings().get(i));
        if (one.isPresent() && other.isPresent()) {
          differences.get(c).add(Math.abs(one.get() - other.get()));
        }
      }
    }
  }

  private void note(long seed, String what, Object one, Object other) {
    if (!one.equals(other)) {
      unlike.add(seed + " " + what + ": " + one + " / " + other);
    }
  }

  private static List<String> words(LessonResult result) {
    return result.swings().stream().map(s -> s.kind() + " " + s.club()).toList();
  }

  private static Set<String> again(LessonResult result) {
    Set<String> steps = new TreeSet<>();
    for (Notice notice : result.notices()) {
      if (notice.reason().code() instanceof StepReason) {
        steps.add(notice.about());
      }
    }
    return steps;
  }

  public int swings() {
    return swings;
  }

  /** Lessons whose swings, clubs or step verdicts differ, and how. */
  public List<String> unlike() {
    return List.copyOf(unlike);
  }

  /** None where units are held against the truth alone. */
  public List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    for (int c = 0; c < COMPARED.size() && !speech.isSetUp(); c++) {
      double[] sizes = differences.get(c).stream().mapToDouble(d -> d).toArray();
      rows.add(new Row(COMPARED.get(c), sizes.length, Averages.median(sizes)));
    }
    return rows;
  }
}
