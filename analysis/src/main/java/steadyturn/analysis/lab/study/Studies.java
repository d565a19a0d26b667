package steadyturn.analysis.lab.study;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.analysis.lab.body.PlayerStyle;
import steadyturn.analysis.lab.unit.UnitGrade;
import steadyturn.ingest.sample.BodyPoint;

/** All studies by name, in the order of docs/accuracy.md. */
public final class Studies {

  /** What the budget shows of each source. */
  private static final List<String> BUDGET =
      List.of(
          "pelvis.turn @ impact",
          "pelvis.slide @ top",
          "pelvis.slide @ impact",
          "pelvis.centre @ impact");

  /** What the wear steps are judged by. */
  private static final List<String> GIFTS =
      List.of(
          "pelvis.turn @ impact",
          "pelvis.slide @ top",
          "pelvis.slide @ impact",
          "pelvis.thrust @ impact",
          "pelvis.tilt @ impact",
          "pelvis.centre-along @ top",
          "pelvis.centre-along @ impact");

  private static final List<String> STEPS =
      List.of(
          "pelvis.turn @ top",
          "pelvis.turn @ impact",
          "pelvis.slide @ top",
          "pelvis.slide @ impact",
          "pelvis.thrust @ impact",
          "pelvis.tilt @ impact",
          "pelvis.sidetilt @ impact",
          "pelvis.centre-along @ top",
          "pelvis.centre-along @ impact",
          "pelvis.centre-across @ impact");

  private static final int HITS_PER_WRIST_LESSON = 2;

  private static final Set<BodyPoint> FROM_SHAFT =
      EnumSet.of(BodyPoint.PELVIS, BodyPoint.LEAD_FOREARM, BodyPoint.CLUB_SHAFT);

  private static final Set<BodyPoint> ALL_ARM =
      EnumSet.of(
          BodyPoint.PELVIS, BodyPoint.LEAD_FOREARM, BodyPoint.LEAD_HAND, BodyPoint.CLUB_SHAFT);

  /** What runs a study: lessons, seed of the first, and what to do after each lesson. */
  @FunctionalInterface
  public interface Runner {
    List<StudyRow> run(int lessons, long seed, Runnable afterEach);
  }

  /**
   * One study.
   *
   * @param name for the command line
   * @param what in plain words
   * @param lessonsPerRun lessons of one swing count 1; larger ones run fewer times
   */
  public record Study(String name, String what, double lessonsPerRun, Runner runner) {

    /** How many lessons are simulated for so many runs. */
    public int lessons(int runs) {
      return Math.max(1, (int) Math.round(runs * lessonsPerRun));
    }
  }

  private Studies() {}

  /** Pelvis studies, then swings and events, then the wrist. */
  public static List<Study> all() {
    LessonSpec arm =
        LessonSpec.standard()
            .withHits(HITS_PER_WRIST_LESSON)
            .withPractices(0)
            .withWaggles(0)
            .withWalking(false);
    return List.of(
        pelvis(StudyCase.standard(), 1),
        pelvis(StudyCase.tenSwings(), 0.2),
        pelvis(StudyCase.tenSwingsApart(), 0.2),
        pelvis(StudyCase.tenSwingsRaw(), 0.1),
        pelvis(StudyCase.tenSwingsRawApart(), 0.1),
        pelvis(StudyCase.ideal(), 0.5),
        pelvis(StudyCase.raw(), 1),
        pelvis(StudyCase.unheldFinish(), 1),
        pelvis(StudyCase.driftingAddress(), 1),
        pelvis(StudyCase.hundredHertz(), 1),
        pelvis(StudyCase.leftHanded(), 1),
        pelvis(StudyCase.withoutSteps(), 1),
        new Study(
            "error-budget",
            "one source of error at a time, all others off",
            0.3,
            (lessons, seed, afterEach) ->
                side(StudyCase.oneSourceAtATime(), BUDGET, lessons, seed, afterEach)),
        new Study(
            "wear-steps-alone",
            "one swing with no wear step, with each alone, with all",
            0.5,
            (lessons, seed, afterEach) ->
                side(StudyCase.stepsAlone(), STEPS, lessons, seed, afterEach)),
        new Study(
            "what-a-teacher-gives",
            "what can be given cheaply besides the usual, alone and together",
            0.5,
            (lessons, seed, afterEach) ->
                side(StudyCase.ofGifts(), GIFTS, lessons, seed, afterEach)),
        swings("swings", "five hits and five practice swings a lesson", LessonSpec.standard()),
        swings("swings-200-hz", "the same at 200 Hz", LessonSpec.standard().withRateHz(200)),
        wrist("wrist-500-hz", "wrist at 500 Hz, clocks within 0.5 ms", arm),
        wrist("wrist-shaft", "forearm and club shaft, no hand unit", arm.withUnits(FROM_SHAFT)),
        wrist("wrist-hand-shaft", "forearm, hand and club shaft", arm.withUnits(ALL_ARM)),
        wrist("wrist-200-hz", "wrist at 200 Hz", arm.withRateHz(200)),
        wrist(
            "wrist-clock-1-ms",
            "start times of the units known to 1 ms",
            arm.withUnitStartErrorS(0.001)),
        wrist(
            "wrist-clock-5-ms",
            "start times of the units known to 5 ms",
            arm.withUnitStartErrorS(0.005)),
        wrist(
            "wrist-1500-deg-s", "gyroscopes up to 1500 deg/s", arm.withGyroFullScaleDegPerS(1500)),
        wrist(
            "wrist-1000-deg-s", "gyroscopes up to 1000 deg/s", arm.withGyroFullScaleDegPerS(1000)),
        wrist(
            "wrist-1000-raw",
            "gyroscopes up to 1000 deg/s, units not calibrated",
            arm.withGyroFullScaleDegPerS(1000).withUnitGrade(UnitGrade.RAW)),
        wrist(
            "wrist-1000-200-hz",
            "gyroscopes up to 1000 deg/s at 200 Hz",
            arm.withGyroFullScaleDegPerS(1000).withRateHz(200)),
        wrist(
            "wrist-early", "players who let go early", arm.withPlayer(PlayerStyle.earlyRelease())),
        wrist("wrist-late", "players who let go late", arm.withPlayer(PlayerStyle.lateRelease())),
        wrist(
            "wrist-short-downswing",
            "players who come down in 0.18 to 0.22 s",
            arm.withPlayer(PlayerStyle.shortDownswing())),
        wrist(
            "wrist-slow-tempo",
            "players who take about 1.1 s back and 0.36 s down",
            arm.withPlayer(PlayerStyle.slowTempo())));
  }

  private static Study pelvis(StudyCase study, double lessonsPerRun) {
    return new Study(
        study.name(),
        study.what(),
        lessonsPerRun,
        (lessons, seed, afterEach) -> PelvisStudy.run(study, lessons, seed, afterEach));
  }

  /** Several cases side by side, a few rows of each. */
  private static List<StudyRow> side(
      List<StudyCase> cases, List<String> rows, int lessons, long seed, Runnable afterEach) {
    List<StudyRow> out = new ArrayList<>();
    for (StudyCase one : cases) {
      // the bar counts the lessons of one case; the others run along
      Runnable after = out.isEmpty() ? afterEach : () -> {};
      for (StudyRow row : PelvisStudy.run(one, lessons, seed, after)) {
        if (rows.contains(row.name())) {
          out.add(row.renamed(one.name() + ": " + row.name()));
        }
      }
    }
    return out;
  }

  private static Study swings(String name, String what, LessonSpec spec) {
    return new Study(
        name,
        what + ", with waggles and turf brush",
        0.1,
        (lessons, seed, afterEach) -> SwingStudy.run(name, spec, 10 * lessons, seed));
  }

  private static Study wrist(String name, String what, LessonSpec spec) {
    return new Study(
        name,
        what,
        1.0 / HITS_PER_WRIST_LESSON,
        (lessons, seed, afterEach) ->
            WristStudy.run(name, spec, HITS_PER_WRIST_LESSON * lessons, seed));
  }
}
