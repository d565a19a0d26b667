package steadyturn.ingest.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.ingest.recording.dataset.Archive;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.recording.dataset.Session;
import steadyturn.ingest.recording.write.RecordingWriter;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

class RoundTripTest {

  private static final long SEED = 20250331;

  @TempDir Path root;

  @Test
  void whatIsWrittenIsReadBackWithinTheStatedRounding() {
    // Given: 1000 samples of three units, seed 20250331, values as large as a swing's.
    // Expect: time within 1.1e-6 s (two roundings of half a microsecond: the start of day and the
    // latency), acceleration within 0.51e-5 m/s^2, rate within 0.51e-6 rad/s (half the last
    // decimal written, and a little for the binary form).
    Recording written = Lessons.threeUnits(1000, SEED);
    RecordingWriter.into(root, "Lessons of the test range")
        .write(written, RunLabel.lesson("mika", "01"), Lessons.NINE_O_CLOCK);

    Recording read = onlyRun(root).recording();

    for (UnitStream unit : written.units()) {
      UnitStream back = read.unit(unit.point()).orElseThrow();
      assertThat(back.size()).isEqualTo(unit.size());
      for (int i = 0; i < unit.size(); i++) {
        assertThat(back.timeS(i)).isCloseTo(unit.timeS(i), within(1.1e-6));
        for (int axis = 0; axis < 3; axis++) {
          assertThat(back.accelMps2(axis, i)).isCloseTo(unit.accelMps2(axis, i), within(0.51e-5));
          assertThat(back.gyroRadPerS(axis, i))
              .isCloseTo(unit.gyroRadPerS(axis, i), within(0.51e-6));
        }
      }
    }
  }

  @Test
  void factsOfPlayerUnitsAndMarksSurvive() {
    // Given: a left-handed player with measured pelvis, units with serial number and full scales,
    // a wear step and a hit. Expect: the same records, to the last member.
    Recording written = Lessons.threeUnits(50, SEED);
    RecordingWriter.into(root, "Lessons of the test range")
        .write(written, RunLabel.lesson("mika", "01"), Lessons.NINE_O_CLOCK);

    ReadRun read = onlyRun(root);

    assertThat(read.notices()).isEmpty();
    assertThat(read.recording().player()).isEqualTo(written.player());
    assertThat(read.recording().marks()).isEqualTo(written.marks());
    assertThat(read.recording().units().stream().map(UnitStream::facts))
        .isEqualTo(written.units().stream().map(UnitStream::facts).toList());
    assertThat(read.recording().unit(BodyPoint.PELVIS).orElseThrow().timeS(0)).isZero();
  }

  static ReadRun onlyRun(Path path) {
    List<Session> sessions = Archive.open(path).sessions();
    assertThat(sessions).hasSize(1);
    assertThat(sessions.get(0).runs()).hasSize(1);
    return RecordingReader.read(sessions.get(0).runs().get(0));
  }
}
