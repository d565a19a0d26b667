package steadyturn.analysis.lab;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import steadyturn.analysis.lab.body.BodyMotion;
import steadyturn.analysis.lab.body.MountedUnit;
import steadyturn.analysis.lab.body.Trait;
import steadyturn.analysis.lab.family.Dice;
import steadyturn.analysis.lab.family.Half;
import steadyturn.analysis.lab.family.Situation;
import steadyturn.analysis.lab.family.WornBody;
import steadyturn.analysis.lab.unit.UnitErrors;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.fusion.rotation.MovingFrame;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/** Lessons of families: exact in themselves, and as different as they are meant to be. */
class FamilyLessonsTest {

  private static final long SEED = 77;

  private static final Map<Situation, Inside> MADE = new EnumMap<>(Situation.class);

  /** A lesson's inside: the body and its worn units before any sensor. */
  private static final class Inside {
    private final Stage stage;
    private final BodyMotion body;
    private final UnitMounts mounts;
    private final List<PlannedSwing> swings;

    private Inside(LessonSpec spec, long seed) {
      WornBody worn = spec.family().orElseThrow().errors().player(new Dice(Draws.of(seed, "w", 0)));
      DrawnPelvis pelvis = DrawnPelvis.of(worn.pelvis());
      Choreography laid =
          new Choreography(spec, List.of(), seed, pelvis.standingTiltRad(), Optional.of(worn));
      laid.lay();
      stage = laid.stage();
      swings = laid.swings();
      body = stage.body(pelvis.sizes(), stage.nowS);
      List<Double> impactsS = swings.stream().map(PlannedSwing::impactS).toList();
      mounts = new UnitMounts(spec, seed, stage, pelvis, impactsS);
    }

    static Inside of(Situation situation, long seed) {
      return new Inside(FamilyLessons.spec(situation, Half.TUNING, seed), seed);
    }

    /** Of the usual seed, made once. */
    static Inside of(Situation situation) {
      return MADE.computeIfAbsent(situation, key -> of(key, SEED));
    }
  }

  @ParameterizedTest
  @EnumSource(
      value = BodyPoint.class,
      names = {"PELVIS", "LEAD_FOREARM", "LEAD_HAND"})
  void whatAUnitFeelsIsTheDifferenceOfItsPlaces(BodyPoint point) {
    // Given: a drawn lesson with ringing skin, creeping mount and blow; places and attitudes of a
    // unit 20 us apart. Expect: their differences give rate and specific force. Within 1e-3 rad/s
    // and 0.05 m/s^2: second differences of places of 1 m rounded at 1e-16 over (20 us)^2 err by
    // 1e-6; what the fastest bursts (200 Hz, 100 g) bend within the step by 0.01.
    System.out.println("seed " + SEED);
    Inside inside = Inside.of(Situation.STANDARD);
    MountedUnit.Placer placer = inside.mounts.mount(point, inside.body).placer();
    double impactS = inside.swings.get(0).impactS();
    double h = 2e-5;
    for (double t = impactS - 1.9; t < impactS + 0.8; t += 0.0313) {
      MovingFrame before = placed(placer, t - h);
      MovingFrame now = placed(placer, t);
      MovingFrame after = placed(placer, t + h);
      double[] rate = new double[3];
      double[] force = new double[3];
      now.rateRadPerS(rate);
      now.specificForceMps2(UnitErrors.G_MPS2, force);
      Vector3 turn = before.qGroundFrame().conjugate().times(after.qGroundFrame()).rotationVector();
      Vector3 bend =
          before.placeM().plus(after.placeM()).minus(now.placeM().times(2)).times(1 / (h * h));
      Quaternion qUnitGround = now.qGroundFrame().conjugate();
      Vector3 felt = qUnitGround.rotate(bend.plus(new Vector3(0, 0, UnitErrors.G_MPS2)));
      for (int i = 0; i < 3; i++) {
        assertThat(turn.get(i) / (2 * h)).as("rate at %s", t).isCloseTo(rate[i], within(1e-3));
        assertThat(felt.get(i)).as("force at %s", t).isCloseTo(force[i], within(0.05));
      }
    }
  }

  private static MovingFrame placed(MountedUnit.Placer placer, double timeS) {
    MovingFrame frame = new MovingFrame();
    placer.place(timeS, frame);
    return frame;
  }

  @Test
  void onTheTableAUnitFeelsGravityAlone() {
    // Given: a drawn lesson, all units on the table at 1.5 s. Expect: standard gravity (CGPM 1901,
    // 9.80665 m/s^2) and no turning; nothing moves there.
    Inside inside = Inside.of(Situation.STANDARD);
    for (BodyPoint point : List.of(BodyPoint.PELVIS, BodyPoint.LEAD_HAND)) {
      MovingFrame frame = placed(inside.mounts.mount(point, inside.body).placer(), 1.5);
      double[] rate = new double[3];
      double[] force = new double[3];
      frame.rateRadPerS(rate);
      frame.specificForceMps2(UnitErrors.G_MPS2, force);
      assertThat(new Vector3(force[0], force[1], force[2]).norm()).isCloseTo(9.80665, within(1e-4));
      assertThat(new Vector3(rate[0], rate[1], rate[2]).norm()).isCloseTo(0, within(1e-6));
    }
  }

  @ParameterizedTest
  @EnumSource(Situation.class)
  void theTakeawayIsTheLastMomentOfTheBackswingUnderEightDegreesASecond(Situation situation) {
    // Given: a drawn swing; the forearm's length at moments 0.2 ms apart. Expect: at the takeaway
    // it
    // turns away by 8 deg/s, right after by more until 40 ms later. Within 0.05 deg/s: differences
    // of directions, the plane's normal taken by the test from directions from the top to impact.
    Inside inside = Inside.of(situation);
    PlannedSwing plan = inside.swings.get(1);
    BodyMotion.Walker walker = inside.body.walker();
    double takeawayS =
        new EventFinder(inside.body, plan).find().getOrDefault(SwingEvent.TAKEAWAY, Double.NaN);
    Vector3 normal = Vector3.ZERO;
    for (double t = plan.topS(); t < plan.impactS(); t += 0.004) {
      normal = normal.plus(along(walker, t).cross(along(walker, t + 0.004)));
    }
    normal = normal.unit();
    assertThat(away(walker, normal, takeawayS)).isCloseTo(8, within(0.05));
    for (double t = takeawayS + 0.002; t < takeawayS + 0.04; t += 0.002) {
      assertThat(away(walker, normal, t)).isGreaterThan(8);
    }
  }

  private static double away(BodyMotion.Walker walker, Vector3 normal, double timeS) {
    Vector3 before = along(walker, timeS - 1e-4);
    Vector3 after = along(walker, timeS + 1e-4);
    return -Math.toDegrees(before.cross(after).dot(normal) / 2e-4);
  }

  private static Vector3 along(BodyMotion.Walker walker, double timeS) {
    MovingFrame frame = new MovingFrame();
    walker.segment(BodyPoint.LEAD_FOREARM, timeS, frame);
    return frame.xAxis();
  }

  @Test
  void aLeftHandedLessonIsTheMirrorImage() {
    // Given: one drawn lesson from either side. Expect: streams mirrored in the vertical plane of
    // the target line (force along y and rates about x and z change sign) to the last bit, and the
    // same values of every measure.
    LessonSpec spec = FamilyLessons.spec(Situation.STANDARD, Half.TUNING, SEED).withRateHz(100);
    SyntheticLesson right = LessonSimulator.simulate(spec.withHanded(Handedness.RIGHT), SEED);
    SyntheticLesson left = LessonSimulator.simulate(spec.withHanded(Handedness.LEFT), SEED);
    UnitStream r = right.recording().unit(BodyPoint.LEAD_HAND).orElseThrow();
    UnitStream l = left.recording().unit(BodyPoint.LEAD_HAND).orElseThrow();
    for (int k = 0; k < r.size(); k += 37) {
      assertThat(l.accelMps2(0, k)).isEqualTo(r.accelMps2(0, k));
      assertThat(l.accelMps2(1, k)).isEqualTo(-r.accelMps2(1, k));
      assertThat(l.gyroRadPerS(0, k)).isEqualTo(-r.gyroRadPerS(0, k));
      assertThat(l.gyroRadPerS(1, k)).isEqualTo(r.gyroRadPerS(1, k));
    }
    assertThat(left.truth().swings().get(0).truthMeasures())
        .isEqualTo(right.truth().swings().get(0).truthMeasures());
  }

  @Test
  void aSeedGivesOneLessonAndAnotherSeedAnother() {
    // Given: one seed twice, its neighbour, and the same seed of the other half. Expect: the same
    // stream twice, other streams from the others.
    Recording once = lesson(Half.TUNING, SEED);
    Recording again = lesson(Half.TUNING, SEED);
    Recording next = lesson(Half.TUNING, SEED + 1);
    Recording judged = lesson(Half.JUDGING, SEED);
    assertThat(sample(again)).isEqualTo(sample(once));
    assertThat(sample(next)).isNotEqualTo(sample(once));
    assertThat(sample(judged)).isNotEqualTo(sample(once));
  }

  private static Recording lesson(Half half, long seed) {
    LessonSpec spec = FamilyLessons.spec(Situation.STANDARD, half, seed).withRateHz(100);
    return LessonSimulator.simulate(spec, seed).recording();
  }

  private static double sample(Recording recording) {
    UnitStream pelvis = recording.unit(BodyPoint.PELVIS).orElseThrow();
    return pelvis.accelMps2(0, pelvis.size() / 2);
  }

  @Test
  void membersOfBothHalvesAllDiffer() {
    // Given: all members of both halves. Expect: no two alike in size, course, skin or pelvis;
    // every
    // shape meets every error within 256 seeds.
    Set<Object> seen = new HashSet<>();
    Set<Object> pairs = new HashSet<>();
    for (Half half : Half.values()) {
      for (int seed = 0; seed < FamilyLessons.MEMBERS * FamilyLessons.MEMBERS; seed++) {
        var family = FamilyLessons.spec(Situation.STANDARD, half, seed).family().orElseThrow();
        double turn = family.shape().style().spread(Trait.TURN_TOP_DEG).mean();
        seen.add(turn);
        seen.add(family.errors().pelvis());
        pairs.add(List.of(turn, family.errors().pelvis()));
      }
    }
    assertThat(seen).hasSize(2 * 2 * FamilyLessons.MEMBERS);
    assertThat(pairs).hasSize(2 * FamilyLessons.MEMBERS * FamilyLessons.MEMBERS);
  }

  @ParameterizedTest
  @EnumSource(Situation.class)
  void everySwingHasItsKeyPositionsInOrder(Situation situation) {
    // Given: four lessons a situation. Expect: takeaway, arm level, top, arm level, impact one
    // after another; 0.3-2.2 s back and 0.1-0.6 s down, what is called a full swing at all.
    for (long seed = SEED; seed < SEED + 4; seed++) {
      System.out.println("seed " + seed);
      Inside inside = seed == SEED ? Inside.of(situation) : Inside.of(situation, seed);
      for (PlannedSwing plan : inside.swings) {
        Map<SwingEvent, Double> atS = new EventFinder(inside.body, plan).find();
        List<Double> inOrder =
            Stream.of(
                    SwingEvent.TAKEAWAY,
                    SwingEvent.LEAD_ARM_LEVEL_BACK,
                    SwingEvent.TOP,
                    SwingEvent.LEAD_ARM_LEVEL_DOWN,
                    SwingEvent.IMPACT)
                .map(event -> Objects.requireNonNull(atS.get(event), event.word()))
                .toList();
        assertThat(inOrder).isSorted();
        assertThat(inOrder.get(2) - inOrder.get(0)).isBetween(0.3, 2.2);
        assertThat(inOrder.get(4) - inOrder.get(2)).isBetween(0.1, 0.6);
      }
    }
  }
}
