package steadyturn.analysis.lab.study;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import steadyturn.analysis.lab.LessonSimulator;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.analysis.lab.SyntheticLesson;
import steadyturn.analysis.lab.WearStep;
import steadyturn.analysis.lab.body.BodyErrors;
import steadyturn.analysis.lab.unit.UnitGrade;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.ingest.sample.Handedness;

/**
 * A kind of lesson to study, with what has to be reached in it.
 *
 * @param name in words a command line takes
 * @param what in plain words
 * @param spec what is simulated
 * @param settings how it is analysed
 * @param levels must and aim by measure and key position, in the measure's unit
 * @param gifts what the teacher gives besides the wear steps
 */
public record StudyCase(
    String name,
    String what,
    LessonSpec spec,
    AnalysisSettings settings,
    Map<String, Level> levels,
    List<TeacherGift> gifts) {

  /** What has to be reached and what we wish for. */
  public record Level(double must, double aim) {}

  public StudyCase {
    levels = Map.copyOf(levels);
    gifts = List.copyOf(gifts);
  }

  private StudyCase(
      String name,
      String what,
      LessonSpec spec,
      AnalysisSettings settings,
      Map<String, Level> levels) {
    this(name, what, spec, settings, levels, List.of());
  }

  /** The case's lesson of a seed. */
  SyntheticLesson lesson(long seed) {
    SyntheticLesson lesson = LessonSimulator.simulate(spec, seed);
    for (TeacherGift gift : gifts) {
      lesson = gift.to(lesson);
    }
    return lesson;
  }

  private static final Map<String, Level> STANDARD =
      Map.of(
          "pelvis.turn @ top", new Level(1.5, 0.8),
          "pelvis.turn @ impact", new Level(1.8, 1.0),
          "pelvis.slide @ lead-arm-level-back", new Level(8, 5),
          "pelvis.slide @ top", new Level(15, 8),
          "pelvis.slide @ impact", new Level(18, 10),
          "pelvis.slide-per-turn @ top", new Level(0.35, 0.20),
          "pelvis.slide-per-turn @ impact", new Level(0.50, 0.30),
          "pelvis.centre @ top", new Level(28, 15),
          "pelvis.centre @ impact", new Level(40, 22));

  private StudyCase(String name, String what, LessonSpec spec, Map<String, Level> levels) {
    this(name, what, spec, AnalysisSettings.defaults(), levels);
  }

  private static LessonSpec one() {
    return LessonSpec.standard().withHits(1).withPractices(0).withWaggles(0).withWalking(false);
  }

  /** One swing a lesson, as most of the levels ask. */
  public static StudyCase standard() {
    return new StudyCase(
        "standard", "one swing, calibrated unit at 500 Hz, all wear steps", one(), STANDARD);
  }

  /** Ten swings of one lesson, estimated together. */
  public static StudyCase tenSwings() {
    return new StudyCase(
        "ten-swings", "lessons of ten swings estimated together", one().withHits(10), STANDARD);
  }

  /**
   * The same lessons, each swing estimated on its own: what the others bring shows by comparison.
   */
  public static StudyCase tenSwingsApart() {
    return new StudyCase(
        "ten-swings-apart",
        "the same lessons of ten swings, each swing estimated on its own",
        one().withHits(10),
        AnalysisSettings.defaults().apart(),
        STANDARD);
  }

  /** The same with raw units, together. */
  public static StudyCase tenSwingsRaw() {
    return new StudyCase(
        "ten-swings-raw",
        "lessons of ten swings estimated together, unit not calibrated",
        one().withHits(10).withUnitGrade(UnitGrade.RAW),
        Map.of());
  }

  /** The same with raw units, apart. */
  public static StudyCase tenSwingsRawApart() {
    return new StudyCase(
        "ten-swings-raw-apart",
        "the same lessons of ten swings with raw units, each swing on its own",
        one().withHits(10).withUnitGrade(UnitGrade.RAW),
        AnalysisSettings.defaults().apart(),
        Map.of());
  }

  /** All error off but one: unit, sway, wobble, skin, alignment, standing tilt, lever arm, aim. */
  public static List<StudyCase> oneSourceAtATime() {
    BodyErrors none = BodyErrors.none();
    return List.of(
        only("unit", one().withBody(none)),
        only("raw unit", one().withBody(none).withUnitGrade(UnitGrade.RAW)),
        only("sway", ideal(none.withSway())),
        only("wobble", ideal(none.withWobble())),
        only("skin", ideal(none.withSkinShift())),
        only("alignment", ideal(none.withAlignment())),
        only("standing tilt", ideal(none.withStandingTilt())),
        only("lever arm", ideal(none.withLeverArm())),
        only("aim", ideal(none.withAim())));
  }

  private static LessonSpec ideal(BodyErrors body) {
    return one().withUnitGrade(UnitGrade.IDEAL).withBody(body);
  }

  private static StudyCase only(String source, LessonSpec spec) {
    return new StudyCase(source, "only " + source, spec, Map.of());
  }

  /** A unit as it comes from the shop. */
  public static StudyCase raw() {
    return new StudyCase(
        "raw-unit", "one swing, unit not calibrated", one().withUnitGrade(UnitGrade.RAW), Map.of());
  }

  /** The player leaves the finish at once. */
  public static StudyCase unheldFinish() {
    return new StudyCase(
        "unheld-finish",
        "one swing, finish not held",
        one().withFinishHeld(false),
        Map.of("pelvis.slide @ impact", new Level(20, 14)));
  }

  /** The body drifts at 9 cm/s through the address, hardly turning. */
  public static StudyCase driftingAddress() {
    return new StudyCase(
        "drifting-address",
        "one swing, body drifting at 9 cm/s through the address",
        one().withAddressDriftMps(0.09),
        Map.of(
            "pelvis.turn @ top", new Level(2, Double.NaN),
            "pelvis.turn @ impact", new Level(2, Double.NaN),
            "pelvis.slide @ top", new Level(40, 25),
            "pelvis.slide @ impact", new Level(40, 25)));
  }

  /** A slow unit. */
  public static StudyCase hundredHertz() {
    return new StudyCase(
        "100-hz",
        "one swing, units at 100 Hz whose start times are known to 12 ms",
        one().withRateHz(100).withUnitStartErrorS(0.012),
        Map.of());
  }

  /** The same from the other side. */
  public static StudyCase leftHanded() {
    return new StudyCase(
        "left-handed", "one swing, left-handed", one().withHanded(Handedness.LEFT), STANDARD);
  }

  /** No wear step at all. */
  public static StudyCase withoutSteps() {
    return new StudyCase(
        "no-wear-steps", "one swing, no wear step done", one().withWearSteps(Set.of()), Map.of());
  }

  /** One swing with no wear step, with each alone, and with all. */
  public static List<StudyCase> stepsAlone() {
    List<StudyCase> out = new ArrayList<>();
    out.add(with("none", Set.of()));
    for (WearStep step :
        List.of(
            WearStep.TABLE_REST,
            WearStep.AIM,
            WearStep.QUIET_STANCE,
            WearStep.BOW,
            WearStep.TURN_ON_SPOT)) {
      out.add(with(step.word(), Set.of(step)));
    }
    out.add(with("all", Set.of(WearStep.values())));
    return out;
  }

  private static StudyCase with(String name, Set<WearStep> steps) {
    return new StudyCase(name, "only " + name, one().withWearSteps(steps), Map.of());
  }

  /** What a teacher can give cheaply, alone and together. */
  public static List<StudyCase> ofGifts() {
    List<TeacherGift> both = List.of(TeacherGift.RULER, TeacherGift.WORN_DEPTH);
    Set<WearStep> noTurn = EnumSet.complementOf(EnumSet.of(WearStep.TURN_ON_SPOT));
    LessonSpec turnless = one().withWearSteps(noTurn);
    LessonSpec ten = one().withHits(10);
    return List.of(
        given("all steps", one(), List.of()),
        given("tilt", one(), List.of(TeacherGift.RULER)),
        given("worn depth", one(), List.of(TeacherGift.WORN_DEPTH)),
        given("tilt and worn depth", one(), both),
        given("no turn on the spot", turnless, List.of()),
        given("no turn, tilt and worn depth", turnless, both),
        given("ten swings", ten, List.of()),
        given("ten swings, tilt and worn depth", ten, both));
  }

  private static StudyCase given(String name, LessonSpec spec, List<TeacherGift> gifts) {
    return new StudyCase(name, name, spec, AnalysisSettings.defaults(), Map.of(), gifts);
  }

  /** A near-ideal unit on a body that neither sways nor lets the unit shift. */
  public static StudyCase ideal() {
    return new StudyCase(
        "near-ideal",
        "one swing, near-ideal unit, no sway, no skin shift, geometry as measured",
        one().withUnitGrade(UnitGrade.IDEAL).withBody(BodyErrors.none()),
        Map.of(
            "pelvis.turn @ top", new Level(0.2, 0.1),
            "pelvis.turn @ impact", new Level(0.2, 0.1),
            "pelvis.slide @ top", new Level(6, 3),
            "pelvis.slide @ impact", new Level(6, 3),
            "pelvis.centre @ top", new Level(10, 6),
            "pelvis.centre @ impact", new Level(10, 6)));
  }
}
