package steadyturn.analysis.lab.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** What a teacher gives is drawn apart from what reads it; the reading must gain by it. */
class TeacherGiftTest {

  private static final int LESSONS = 12;
  private static final long SEED = 8100;
  private static final Map<String, List<StudyRow>> ROWS = new TreeMap<>();

  private static StudyRow row(StudyCase given, String name) {
    return ROWS
        .computeIfAbsent(given.name(), each -> PelvisStudy.run(given, LESSONS, SEED, () -> {}))
        .stream()
        .filter(row -> row.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  private static StudyCase named(String name) {
    List<StudyCase> all = StudyCase.ofGifts();
    return all.stream().filter(c -> c.name().equals(name)).findFirst().orElseThrow();
  }

  @Test
  void aRulerTellsTheTiltBetterThanTheUsualTenDegrees() {
    // given standing tilts of 10 +- 5 deg (1 SD), points touched within 5 mm, a case laid within 1
    // deg
    StudyRow usual = row(named("all steps"), "pelvis.tilt @ impact");
    StudyRow ruled = row(named("tilt"), "pelvis.tilt @ impact");
    // expect two points 150 mm apart to tell the tilt within 2.9 deg by themselves, and so to take
    // a quarter off the error and a third off the interval at least
    assertEquals(LESSONS, ruled.n(), "seed " + SEED);
    assertTrue(ruled.rmse() < 0.75 * usual.rmse(), usual + " " + ruled);
    assertTrue(ruled.halfWidth() < 0.67 * usual.halfWidth(), usual + " " + ruled);
    assertTrue(ruled.coveragePct() >= 80, ruled.toString());
  }

  @Test
  void aDepthTakenOverTheWornUnitNarrowsTheSlide() {
    StudyRow usual = row(named("all steps"), "pelvis.slide @ top");
    StudyRow worn = row(named("worn depth"), "pelvis.slide @ top");
    assertTrue(worn.halfWidth() < usual.halfWidth(), usual + " " + worn);
    assertTrue(worn.coveragePct() >= 80, worn.toString());
  }
}
