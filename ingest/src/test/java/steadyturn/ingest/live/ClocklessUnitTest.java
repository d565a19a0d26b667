package steadyturn.ingest.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.ingest.recording.RecordingReader;
import steadyturn.ingest.recording.dataset.Archive;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.UnitStream;
import steadyturn.ingest.sensor.SampleSink;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.sensor.UnitHello;
import steadyturn.ingest.serial.HostTime;

/** A unit without a clock, from its bytes to the file. */
class ClocklessUnitTest {

  private static final double RATE_HZ = 96;
  private static final int BATCH = 8;

  @TempDir private Path folder;

  /** One byte is one sample, numbered by its acceleration; it says that it runs at 100 Hz. */
  private static final class Numbered implements SensorAdapter {

    private int next;

    @Override
    public String name() {
      return "numbered";
    }

    @Override
    public void read(ByteBuffer bytes, SampleSink sink) {
      if (next == 0) {
        sink.hello(new UnitHello("pelvis", "N-1", 100, 156.9, 34.9));
      }
      while (bytes.hasRemaining()) {
        bytes.get();
        sink.sample(0.01 * next++, 0, 9.8, 0, 0, 0);
      }
    }
  }

  @Test
  void itsTimesAndItsRateAreThoseOfTheArrivalsAndAPulledCableIsAGap() throws Exception {
    // Given: 96 Hz by 8 with 2 to 22 ms of way (seed 5), said to be 100 Hz; after 30 s the cable is
    // pulled for 4 s. Expect: every sample in the file, at the host's time less that of the first
    // within 5 ms; the gap at its place; 96 Hz within 0.1 % as the rate; what listens hears the
    // same.
    Random random = new Random(5);
    double startS = HostTime.steadyS();
    List<Double> heardS = new ArrayList<>();
    LiveListener listener = (point, timeS, accel, gyro) -> heardS.add(timeS - startS);
    int batches = (int) (60 * RATE_HZ / BATCH);
    int pulled = batches / 2;
    try (LiveRecorder recorder =
        LiveRecorder.start(folder, Player.unmeasured("mika", Handedness.RIGHT), "1")) {
      LiveUnit unit = new LiveUnit(recorder, new Numbered(), Optional.empty(), listener);
      unit.opened();
      for (int k = 0; k < batches; k++) {
        if (k == pulled) {
          unit.gone("pulled");
          unit.opened();
        }
        double cameS = takenS((k + 1) * BATCH - 1) + 0.002 + 0.02 * random.nextDouble();
        unit.bytes(new byte[BATCH], BATCH, startS + cameS, HostTime.wallS());
      }
      unit.ended();
      unit.betterStart();
      assertThat(unit.state().clockSpreadS())
          .isBetween(0.002, 0.015); // the least of two blocks each
      assertThat(unit.state().restarts()).isZero();
    }
    UnitStream stream =
        RecordingReader.read(Archive.open(folder).sessions().get(0).runs().get(0))
            .recording()
            .unit(BodyPoint.PELVIS)
            .orElseThrow();
    assertThat(stream.size()).isEqualTo(batches * BATCH);
    assertThat(stream.facts().nominalRateHz()).isCloseTo(RATE_HZ, within(0.096));
    assertThat(stream.timeS(pulled * BATCH) - stream.timeS(pulled * BATCH - 1))
        .isCloseTo(4 + 1 / RATE_HZ, within(0.004));
    for (int i = 0; i < stream.size(); i++) {
      assertThat(stream.accelMps2(0, i)).isCloseTo(0.01 * i, within(1e-6));
      assertThat(stream.timeS(i) - stream.timeS(0)).isCloseTo(takenS(i), within(0.005));
      assertThat(heardS.get(i)).isCloseTo(takenS(i) + 0.002, within(0.006));
    }
  }

  private static double takenS(int number) {
    double s = number / RATE_HZ;
    return s < 30 ? s : s + 4;
  }
}
