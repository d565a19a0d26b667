package steadyturn.analysis.lab.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.analysis.lab.body.PlayerStyle;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;

/** The studies of docs/accuracy.md in a short form; seeds are fixed and stand in each test. */
class ArmStudiesTest {

  private static final LessonSpec SHORT = LessonSpec.standard().withHits(5).withWalking(false);

  private static StudyRow row(List<StudyRow> rows, String name) {
    return rows.stream().filter(r -> r.name().equals(name)).findFirst().orElseThrow();
  }

  private static void findsAll(List<StudyRow> rows) {
    assertThat(row(rows, "swings not found").rmse()).isZero();
    assertThat(row(rows, "other movements taken for swings").rmse()).isZero();
  }

  @Test
  void hitsAndPracticeSwingsAreFoundAndWagglesAndPuttsAreNot() {
    // Given: 5 hits, 5 practice swings brushing the turf, 2 waggles with taps before each, 2 putts.
    // Expect: all found, nothing else, no impact in a practice swing; impact within the level.
    List<StudyRow> rows = SwingStudy.run("short", SHORT.withPutts(2), 5, 31);
    findsAll(rows);
    assertThat(row(rows, "false impacts in practice swings").rmse()).isZero();
    assertThat(row(rows, "impact of hits").rmse()).isLessThan(3);
  }

  @Test
  void aLeftHandedPlayerWithSlowUnitsIsFoundAsWell() {
    // Given: left-handed, 100 Hz, gyroscopes that end at 1000 deg/s (flat tops of 0.1 s).
    LessonSpec spec =
        SHORT.withHanded(Handedness.LEFT).withRateHz(100).withGyroFullScaleDegPerS(1000);
    findsAll(SwingStudy.run("slow", spec, 5, 32));
  }

  @Test
  void aBlowBetweenTheSamplesOfSlowUnitsIsStillTimed() {
    // Given: a lesson at 200 Hz (seed 700048) one of whose hits left no sample above what grass
    // gives at hand or forearm. Expect: no impact missed, none in the practice swings through
    // grass,
    // impact within 3 ms RMS, the level (1.3 ms on the arm's clock, the rest is the pelvis unit's).
    LessonSpec spec = LessonSpec.standard().withRateHz(200);
    List<StudyRow> rows = SwingStudy.run("between samples", spec, 5, 700048);
    findsAll(rows);
    assertThat(row(rows, "impacts missed in hits").rmse()).isZero();
    assertThat(row(rows, "false impacts in practice swings").rmse()).isZero();
    assertThat(row(rows, "impact of hits").rmse()).isLessThan(3);
  }

  @Test
  void theHandAloneAndThePelvisAloneFindTheSwings() {
    // Given: one unit at a time. Expect: all swings, nothing else.
    findsAll(SwingStudy.run("hand", SHORT.withUnits(EnumSet.of(BodyPoint.LEAD_HAND)), 5, 33));
    findsAll(SwingStudy.run("pelvis", SHORT.withUnits(EnumSet.of(BodyPoint.PELVIS)), 5, 34));
  }

  @Test
  void cockAndReleaseKeepTheirLevels() {
    // Given: 15 hits of 3 players, 500 Hz, calibrated, skin and strapping errors.
    // Expect: RMSE 2.5 deg address-top, 4.5 deg top-impact, 4 ms or 2 deg / rate: the levels.
    List<StudyRow> rows = WristStudy.run("short", SHORT.withWaggles(0), 15, 41);
    for (String name :
        List.of("cock change address-top", "cock change top-impact", "wrist.release")) {
      StudyRow row = row(rows, name);
      assertThat(row.n()).as(name).isEqualTo(15);
      assertThat(row.rmse()).as(name).isLessThan(row.level());
      assertThat(row.score()).as(name + ": error over its own spread").isLessThan(1.6);
    }
  }

  @Test
  void anAccelerometerThatComesBackIntoItsScaleIsNotTakenForTheBlow() {
    // Given: a short downswing (seed 700017) in which the hand's accelerometer is cut off at 16 g
    // until 8 ms before the ball. Expect: the downswing's length within 3 ms RMS: these units
    // follow
    // the bone at once, and the top is taken 2.2 ms before what they show; with the kink taken for
    // the blow it was 4 ms more.
    LessonSpec spec = SHORT.withWaggles(0).withPractices(0);
    List<StudyRow> rows =
        WristStudy.run("short downswing", spec.withPlayer(PlayerStyle.shortDownswing()), 5, 700017);
    assertThat(row(rows, "tempo.down").rmse()).isLessThan(0.003);
  }
}
