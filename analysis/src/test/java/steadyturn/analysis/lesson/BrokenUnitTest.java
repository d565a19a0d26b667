package steadyturn.analysis.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.analysis.lab.LessonSimulator;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/** A unit that is worn and says nothing costs what it would have said, and nothing else. */
class BrokenUnitTest {

  private static final double LATE_S = 1e6;
  private static final Map<Long, Recording> MADE = new TreeMap<>();

  private static Recording lesson(String id, long seed) {
    Recording made = MADE.computeIfAbsent(seed, BrokenUnitTest::made);
    return new Recording(id, made.player(), made.units(), made.marks());
  }

  private static Recording made(long seed) {
    return LessonSimulator.simulate(
            LessonSpec.standard().withHits(2).withPractices(0).withWaggles(0), seed)
        .recording();
  }

  private static List<LessonResult> analyze(Recording... recordings) {
    return new LessonAnalyzer(AnalysisSettings.defaults().withoutCurves())
        .analyze(List.of(recordings));
  }

  private static Recording without(Recording recording, BodyPoint point) {
    List<UnitStream> units = new ArrayList<>(recording.units());
    units.removeIf(unit -> unit.point() == point);
    return new Recording(recording.id(), recording.player(), units, recording.marks());
  }

  private static List<String> given(LessonResult result) {
    List<String> out = new ArrayList<>();
    for (SwingResult swing : result.swings()) {
      swing.events().forEach(e -> out.add(e.event() + " " + e.timeS()));
      swing.measures().stream()
          .filter(MeasureValue::given)
          .forEach(v -> out.add(v.measure() + " " + v.at() + " " + v.value() + " " + v.high()));
    }
    return out;
  }

  @ParameterizedTest
  @CsvSource({
    "PELVIS, RATES",
    "PELVIS, VALUES",
    "PELVIS, LINES",
    "LEAD_FOREARM, RATES",
    "LEAD_FOREARM, VALUES",
    "LEAD_FOREARM, LINES",
    "LEAD_HAND, RATES",
    "LEAD_HAND, VALUES",
    "LEAD_HAND, LINES"
  })
  void aUnitThatShowsNoRateIsAsGoodAsNone(BodyPoint point, String lost) {
    // Given: a lesson of two swings (seed 3) in which one unit has no rates, no values at all, or
    // two samples only. Expect: every value of the same lesson without that unit, and no other; no
    // fault of the program (faults are strict in tests: one would be thrown).
    // Within: the same numbers, as the same samples are read.
    Recording whole = lesson("one", 3);
    double fromS = lost.equals("LINES") ? secondS(whole, point) : -LATE_S;
    Dropout.Kind first = lost.equals("LINES") ? Dropout.Kind.LINES : Dropout.Kind.RATES;
    Recording broken = Dropout.of(whole, point, first, fromS, LATE_S);
    if (lost.equals("VALUES")) {
      broken = Dropout.of(broken, point, Dropout.Kind.FORCES, -LATE_S, LATE_S);
    }
    LessonResult expected = analyze(without(whole, point)).get(0);
    LessonResult found = analyze(broken).get(0);
    assertThat(expected.swings()).isNotEmpty();
    assertThat(given(found)).isEqualTo(given(expected));
    // and it is said: the unit is among the lesson's units
    assertThat(found.units()).hasSize(whole.units().size());
  }

  private static double secondS(Recording recording, BodyPoint point) {
    return recording.unit(point).orElseThrow().timeS(1);
  }

  @Test
  void aRecordingWithoutUnitsOrSamplesLeavesTheOthersAsTheyAre() {
    // Given: one lesson in two recordings (seeds 3, 4), and between them one without units and one
    // whose units have no samples. Expect: the values of the two alone; a result for each of four.
    Recording first = lesson("one", 3);
    Recording last = lesson("two", 4);
    Recording bare = new Recording("bare", first.player(), List.of(), first.marks());
    List<UnitStream> none = first.units().stream().map(u -> u.between(LATE_S, LATE_S + 1)).toList();
    Recording empty = new Recording("empty", first.player(), none, first.marks());
    List<LessonResult> expected = analyze(first, last);
    List<LessonResult> found = analyze(first, bare, empty, last);
    assertThat(found)
        .extracting(LessonResult::recording)
        .containsExactly("one", "bare", "empty", "two");
    assertThat(given(found.get(0))).isNotEmpty().isEqualTo(given(expected.get(0)));
    assertThat(given(found.get(3))).isNotEmpty().isEqualTo(given(expected.get(1)));
    assertThat(found.get(1).swings()).isEmpty();
    assertThat(found.get(2).swings()).isEmpty();
  }
}
