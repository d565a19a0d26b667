package steadyturn.analysis.lesson;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.lab.LessonSimulator;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.swing.Faults;
import steadyturn.fusion.displace.Anchor;
import steadyturn.fusion.displace.SwingSpan;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

class PelvisReadingTest {

  private static final int SEED = 5;
  private static final int SWINGS = 6;

  private static List<GatheredSwing> gathered() {
    LessonGathering gathering = new LessonGathering(false, Faults.usual());
    gathering.add(
        LessonSimulator.simulate(LessonSpec.standard().withHits(SWINGS).withPractices(0), SEED)
            .recording());
    return gathering.swings();
  }

  @Test
  void aSwingKeepsItsSamplesOnceAndNoneBeyondItsRests() {
    // Given: a simulated lesson of six hits, 500 Hz, seed 5. Expect: the samples kept of a swing
    // begin with its first rest and end with its last, 10 ms more on either side (our choice, as
    // the spans have it), within one step of 2 ms and some jitter; and what the other estimates
    // take in, with the rest before the address, are the same samples, not a copy. A lesson of
    // 2,000 swings stands or falls with that: six seconds of seven columns are 170 kB a swing.
    List<GatheredSwing> swings = gathered();
    assertThat(swings).hasSize(SWINGS);
    for (GatheredSwing swing : swings) {
      SwingRests rests = swing.pelvis().rests().orElseThrow();
      UnitStream kept = rests.span().stream();
      SwingRests witnessed =
          rests.witnessed(swing.swing(), new SwingRests.Stance(Vector3.Z, Vector3.Y));
      List<Anchor> anchors = witnessed.span().anchors();
      double firstS = anchors.get(0).startS();
      double lastS = anchors.get(anchors.size() - 1).endS();
      assertThat(kept.timeS(0)).isCloseTo(firstS - 0.01, within(0.004));
      assertThat(kept.timeS(kept.size() - 1)).isCloseTo(lastS + 0.01, within(0.004));
      assertThat(witnessed.span().stream()).isSameAs(kept);
      assertThat(witnessed.asDrifting().span().stream()).isSameAs(kept);
    }
    assertThat(swings.stream().map(s -> s.pelvis().rests().orElseThrow()))
        .anyMatch(rests -> rests.earlier().isPresent());
  }

  @Test
  void aSpanInALongerStreamIsTheSpanOfItsOwnSamples() {
    // Given: the samples of a swing, and the same within the seconds around it. Expect: the same
    // samples, bridges and rests either way.
    GatheredSwing swing = gathered().get(0);
    SwingSpan inside = swing.pelvis().rests().orElseThrow().span();
    UnitStream longer = inside.stream();
    double fromS = inside.anchors().get(0).startS() - 0.01;
    double toS = longer.timeS(longer.size() - 1) + 1;
    SwingSpan own = SwingSpan.of(longer.between(fromS, toS), inside.anchors(), inside.stance());
    assertThat(own.from()).isZero();
    assertThat(own.to()).isEqualTo(inside.to() - inside.from());
    assertThat(own.stream().timeS(0)).isEqualTo(longer.timeS(inside.from()));
    assertThat(own.bridges()).isEqualTo(inside.bridges());
  }

  @Test
  void aRestFromWhichNoTurningLeadsToTheAddressIsNoWitness() {
    // Given: a swing of the lesson that has a rest before its address; then the same with the
    // unit lying otherwise until 0.2 s before the address, x, y and z exchanged in turn, from where
    // it comes without turning, as where its cable was out meanwhile. Expect: the rest is a witness
    // in the first and none in the second; address and finish stay as they were.
    GatheredSwing swing =
        gathered().stream()
            .filter(s -> s.pelvis().rests().orElseThrow().earlier().isPresent())
            .findFirst()
            .orElseThrow();
    List<Anchor> anchors = swing.pelvis().rests().orElseThrow().span().anchors();
    Recording lesson =
        LessonSimulator.simulate(LessonSpec.standard().withHits(SWINGS).withPractices(0), SEED)
            .recording();
    UnitStream pelvis = lesson.unit(BodyPoint.PELVIS).orElseThrow();
    UnitStream moved = lyingOtherwise(pelvis, anchors.get(0).startS() - 0.2);
    assertThat(rests(lesson, swing, pelvis).earlier()).isPresent();
    assertThat(rests(lesson, swing, moved).earlier()).isEmpty();
    assertThat(rests(lesson, swing, moved).span().anchors()).isEqualTo(anchors);
  }

  private static UnitStream lyingOtherwise(UnitStream unit, double untilS) {
    double[][] accel = new double[3][];
    double[][] gyro = new double[3][];
    for (int axis = 0; axis < 3; axis++) {
      accel[axis] = unit.accelColumnMps2(axis).clone();
      gyro[axis] = unit.gyroColumnRadPerS(axis);
      System.arraycopy(
          unit.accelColumnMps2((axis + 1) % 3), 0, accel[axis], 0, unit.indexAt(untilS));
    }
    return new UnitStream(unit.facts(), unit.timeColumnS(), accel, gyro);
  }

  private static SwingRests rests(Recording lesson, GatheredSwing swing, UnitStream pelvis) {
    Recording with = new Recording(lesson.id(), lesson.player(), List.of(pelvis), lesson.marks());
    return PelvisReading.of(with, swing.swing(), swing.steps()).rests().orElseThrow();
  }

  @Test
  void withoutEnoughSamplesThereIsAReason() {
    // Given: the same lesson without its pelvis unit, and with 50 samples (0.1 s) of it in the
    // swing. Expect: no rests, and the reason that the measures will show.
    Recording lesson =
        LessonSimulator.simulate(LessonSpec.standard().withHits(1).withPractices(0), SEED)
            .recording();
    LessonGathering gathering = new LessonGathering(false, Faults.usual());
    gathering.add(lesson);
    GatheredSwing swing = gathering.swings().get(0);
    double middleS = (swing.swing().startS() + swing.swing().endS()) / 2;
    UnitStream pelvis = lesson.unit(BodyPoint.PELVIS).orElseThrow();
    UnitStream few = pelvis.between(middleS, pelvis.timeS(pelvis.indexAt(middleS) + 50));
    assertThat(few.size()).isEqualTo(50);
    assertThat(reading(lesson, swing, List.of())).isEqualTo(MeasureReason.NEEDS_PELVIS);
    assertThat(reading(lesson, swing, List.of(few))).isEqualTo(MeasureReason.FEW_PELVIS_SAMPLES);
  }

  private static MeasureReason reading(
      Recording lesson, GatheredSwing swing, List<UnitStream> units) {
    Recording other = new Recording(lesson.id(), lesson.player(), units, lesson.marks());
    PelvisReading reading = PelvisReading.of(other, swing.swing(), swing.steps());
    assertThat(reading.rests()).isEmpty();
    return reading.missing();
  }
}
