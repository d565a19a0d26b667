package steadyturn.analysis.lesson;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.analysis.lab.LessonSimulator;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.analysis.lab.SyntheticLesson;
import steadyturn.analysis.limits.MountReason;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/** A unit that moves on the belt in mid-lesson costs what comes after, and is called so. */
class SlippedUnitTest {

  /**
   * Given: eight swings of a simulated player; before the fifth (or seventh) the unit turns on the
   * belt by 25 deg, for the rest of the lesson farther round the hip than anyone wears it. Expect:
   * slipped, not worn wrong; slide at impact of every swing before as without the slip, within its
   * half-width (the unit's errors are learnt from fewer swings), of none after.
   */
  @ParameterizedTest(name = "seed {0}, before swing {1}")
  @CsvSource({"71, 5", "72, 5", "72, 7"})
  void aSlipIsToldFromAUnitThatWasWornWrong(long seed, int firstAfter) {
    LessonSpec spec = LessonSpec.standard().withHits(8).withPractices(0).withWaggles(0);
    SyntheticLesson lesson = LessonSimulator.simulate(spec, seed);
    LessonResult sound = analyze(lesson.recording());
    double slipS =
        lesson.truth().swings().get(firstAfter - 1).eventS(SwingEvent.TAKEAWAY).orElseThrow() - 5;
    LessonResult slipped = analyze(slipping(lesson.recording(), slipS));
    assertThat(slipped.notices())
        .filteredOn(Notice::refuses)
        .extracting(notice -> notice.reason().code())
        .containsExactly(MountReason.SLIPPED);
    assertThat(slipped.swings()).hasSize(8);
    for (int i = 0; i < 8; i++) {
      if (i < firstAfter - 1) {
        MeasureValue was = slide(sound, i).findFirst().orElseThrow();
        MeasureValue is = slide(slipped, i).findFirst().orElseThrow();
        double half = (was.high() - was.low()) / 2;
        assertThat(is.value()).as("swing %d", i + 1).isCloseTo(was.value(), within(half));
        assertThat(is.high() - is.low()).isLessThan(1.3 * (was.high() - was.low()));
      } else {
        assertThat(slide(slipped, i)).as("swing %d", i + 1).isEmpty();
      }
    }
  }

  private static Stream<MeasureValue> slide(LessonResult result, int swing) {
    return result.swings().get(swing).measure(Measure.PELVIS_SLIDE, "impact").stream()
        .filter(MeasureValue::given);
  }

  private static LessonResult analyze(Recording recording) {
    return new LessonAnalyzer(AnalysisSettings.defaults().withoutCurves())
        .analyze(List.of(recording))
        .get(0);
  }

  private static Recording slipping(Recording sound, double fromS) {
    List<UnitStream> units =
        sound.units().stream()
            .map(unit -> unit.point() == BodyPoint.PELVIS ? turned(unit, fromS) : unit)
            .toList();
    return new Recording(sound.id(), sound.player(), units, sound.marks());
  }

  private static UnitStream turned(UnitStream unit, double fromS) {
    Quaternion qNewOld =
        Quaternion.fromRotationVector(new Vector3(0.3, 0.5, 0.8).unit().times(Math.toRadians(25)));
    double[][] accel = new double[3][unit.size()];
    double[][] gyro = new double[3][unit.size()];
    for (int i = 0; i < unit.size(); i++) {
      int at = i;
      Vector3 force = Vector3.each(axis -> unit.accelMps2(axis, at));
      Vector3 rate = Vector3.each(axis -> unit.gyroRadPerS(axis, at));
      boolean isAfter = unit.timeS(i) >= fromS;
      for (int axis = 0; axis < 3; axis++) {
        accel[axis][i] = (isAfter ? qNewOld.rotate(force) : force).get(axis);
        gyro[axis][i] = (isAfter ? qNewOld.rotate(rate) : rate).get(axis);
      }
    }
    return new UnitStream(unit.facts(), unit.timeColumnS(), accel, gyro);
  }
}
