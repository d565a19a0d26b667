package steadyturn.analysis.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.lab.LessonSimulator;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.analysis.lab.SyntheticLesson;
import steadyturn.analysis.lesson.LessonAnalyzer;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.lesson.Notice;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.limits.BodyReason;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.MarkReason;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/** A lesson sample by sample against the same lesson read whole. */
class LiveLessonTest {

  private static final long SEED = 41;

  private static final Set<Measure> LOOKED_AT =
      Set.of(Measure.PELVIS_TURN, Measure.PELVIS_SLIDE, Measure.WRIST_RELEASE, Measure.TEMPO_RATIO);

  /** What was told, and when the lesson's time stood where. */
  private static final class Told implements LiveEvents {
    final Map<Integer, SwingResult> atOnce = Collections.synchronizedMap(new TreeMap<>());
    final Map<Integer, SwingResult> lastly = Collections.synchronizedMap(new TreeMap<>());
    final List<Notice> notices = Collections.synchronizedList(new ArrayList<>());
    final List<Double> afterS = Collections.synchronizedList(new ArrayList<>());

    @Override
    public void measured(SwingResult swing, double seconds) {
      atOnce.put(swing.number(), swing);
      afterS.add(seconds);
    }

    @Override
    public void noticed(Notice notice) {
      notices.add(notice);
    }

    @Override
    public void revised(List<SwingResult> latest) {
      latest.forEach(swing -> lastly.put(swing.number(), swing));
    }
  }

  @Test
  void answersTheSameSwingsAsTheWholeRecording() {
    // given a simulated lesson of six hits (five are estimated together at once) with waggles
    // between, three units at 200 Hz
    SyntheticLesson simulated =
        LessonSimulator.simulate(LessonSpec.standard().withHits(6).withRateHz(200), SEED);
    Recording whole = simulated.recording();
    Told told = played(whole);
    LessonResult read = LessonAnalyzer.withDefaults().analyze(List.of(whole)).get(0);
    // expect every swing told once, in order, and no other
    assertEquals(read.swings().size(), told.atOnce.size(), "seed " + SEED);
    assertEquals(told.atOnce.keySet(), told.lastly.keySet(), "seed " + SEED);
    // within: what was told at once lies inside the joint intervals of what is known at the end
    for (SwingResult swing : read.swings()) {
      assertNear(swing, Objects.requireNonNull(told.atOnce.get(swing.number())), 1.5);
      assertNear(swing, Objects.requireNonNull(told.lastly.get(swing.number())), 1.0);
    }
  }

  /** It is the same work; only what was seen by then differs. */
  private static void assertNear(SwingResult whole, SwingResult live, double halfWidths) {
    String swing = "swing " + whole.number() + ", seed " + SEED;
    EventTime early = EventTime.of(SwingEvent.IMPACT, live.events()).orElseThrow();
    double withinS = Math.max(0.005, 2 * early.sdS());
    assertEquals(whole.timeS(SwingEvent.IMPACT), early.timeS(), withinS, swing);
    for (MeasureValue value : whole.measures()) {
      boolean isLooked = LOOKED_AT.contains(value.measure()) && value.given();
      double other =
          live.measure(value.measure(), value.at()).map(MeasureValue::value).orElse(Double.NaN);
      if (isLooked) {
        double half = (value.high() - value.low()) / 2;
        String what = value.measure() + " " + value.at() + ", " + swing;
        assertEquals(value.value(), other, halfWidths * half, what);
      }
    }
  }

  private record Sample(UnitStream unit, int index) {
    double timeS() {
      return unit.timeS(index);
    }
  }

  @Test
  void whatIsNotedOfOneBallIsGivenToNoOther() {
    // given two hits and a practice swing, 7-iron; each hit typed 2.5 s after it, a note right
    // behind,
    // nothing at the practice swing, and a hit typed a minute before the first ball
    LessonSpec spec =
        LessonSpec.standard().withHits(2).withPractices(1).withRateHz(200).withWaggles(0);
    Recording noted = LessonSimulator.simulate(spec, SEED).recording();
    List<Mark> typed = new ArrayList<>();
    for (Mark mark : noted.marks()) {
      if (mark.trialType().equals("hit")) {
        typed.add(new Mark(mark.endS() + 2.5, 0, "hit", mark.club(), ""));
        typed.add(new Mark(mark.endS() + 2.6, 0, "note", "", "after " + typed.size()));
      } else if (!mark.trialType().equals("practice")) {
        typed.add(mark);
      }
    }
    double firstS =
        noted.marks().stream()
            .filter(mark -> mark.trialType().equals("hit"))
            .findFirst()
            .orElseThrow()
            .onsetS();
    typed.add(new Mark(firstS - 20, 0, "hit", "", ""));
    typed.sort(Comparator.comparingDouble(Mark::onsetS));
    Recording whole = noted.with(typed);
    Told told = played(whole);
    LessonResult read = LessonAnalyzer.withDefaults().analyze(List.of(whole)).get(0);
    // expect the kinds, clubs and notes of the whole recording, the third swing noted by nothing
    assertEquals(
        read.swings().stream().map(LiveLessonTest::words).toList(),
        told.lastly.values().stream().map(LiveLessonTest::words).toList(),
        "seed " + SEED);
    assertEquals(SwingKind.PRACTICE, Objects.requireNonNull(told.atOnce.get(3)).kind());
    assertEquals("", Objects.requireNonNull(told.lastly.get(3)).note());
    assertTrue(Objects.requireNonNull(told.lastly.get(2)).note().startsWith("after"));
    assertEquals(1, told.notices.stream().filter(LiveLessonTest::isFar).count());
    assertEquals(1, read.notices().stream().filter(LiveLessonTest::isFar).count());
  }

  @Test
  void theWrongSideIsToldWhileBallsAreHit() {
    // given three hits of a right-handed player who is said to be left-handed; expect no swing,
    // and that it is said why, once
    Recording right =
        LessonSimulator.simulate(LessonSpec.standard().withHits(3).withRateHz(200), SEED)
            .recording();
    Recording said =
        new Recording(
            right.id(), Player.unmeasured("zoe", Handedness.LEFT), right.units(), right.marks());
    Told told = played(said);
    assertTrue(told.atOnce.isEmpty());
    assertEquals(
        1, told.notices.stream().filter(n -> n.reason().code() == BodyReason.SIDE).count());
  }

  private static String words(SwingResult swing) {
    return swing.number() + " " + swing.kind() + " " + swing.club() + " " + swing.note();
  }

  private static boolean isFar(Notice notice) {
    return notice.reason().code() == MarkReason.FAR;
  }

  private static Told played(Recording whole) {
    Told told = new Told();
    try (LiveLesson lesson =
        new LiveLesson(whole.id(), whole.player(), UnaryOperator.identity(), told)) {
      whole.units().forEach(unit -> lesson.unit(unit.facts(), 0));
      List<Sample> samples = new ArrayList<>();
      for (UnitStream unit : whole.units()) {
        IntStream.range(0, unit.size()).forEach(i -> samples.add(new Sample(unit, i)));
      }
      samples.sort(Comparator.comparingDouble(Sample::timeS));
      List<Mark> marks = new ArrayList<>(whole.marks());
      for (Sample s : samples) {
        while (!marks.isEmpty() && marks.get(0).endS() <= s.timeS()) {
          lesson.mark(marks.remove(0));
        }
        lesson.sample(s.unit().point(), s.timeS(), values(s, true), values(s, false));
      }
    }
    assertTrue(told.afterS.stream().allMatch(s -> s >= 0));
    return told;
  }

  private static double[] values(Sample s, boolean isForce) {
    double[] out = new double[3];
    for (int axis = 0; axis < 3; axis++) {
      out[axis] =
          isForce ? s.unit().accelMps2(axis, s.index()) : s.unit().gyroRadPerS(axis, s.index());
    }
    return out;
  }
}
