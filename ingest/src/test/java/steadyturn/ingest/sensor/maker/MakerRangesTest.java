package steadyturn.ingest.sensor.maker;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.ingest.lab.Frames55Encoder;
import steadyturn.ingest.lab.UnitEncoder;
import steadyturn.ingest.lab.XImu3Encoder;
import steadyturn.ingest.sensor.KeptSamples;
import steadyturn.ingest.sensor.KnownUnit;
import steadyturn.ingest.sensor.SensorAdapter;

/** Ranges that a unit does not send stand in its adapter, after its maker's description. */
class MakerRangesTest {

  private static KnownUnit told(SensorAdapter adapter, UnitEncoder unit) {
    List<KnownUnit> known = new ArrayList<>();
    KeptSamples kept =
        new KeptSamples() {
          @Override
          public void known(KnownUnit told) {
            known.add(told);
          }
        };
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    for (int i = 0; i < 20; i++) {
      bytes.writeBytes(unit.sample(i, 10_000L * i, new double[] {0, 0, 9.8}, new double[3]));
    }
    adapter.read(ByteBuffer.wrap(bytes.toByteArray()), kept);
    return known.get(known.size() - 1);
  }

  private static void expect(KnownUnit told, double g, double degPerS) {
    assertThat(told.accelFullScaleMps2()).isCloseTo(g * 9.80665, within(1e-9));
    assertThat(told.gyroFullScaleRadPerS()).isCloseTo(Math.toRadians(degPerS), within(1e-9));
  }

  @Test
  void theRangesAreThoseOfTheDescription() {
    expect(told(new Frames55Adapter(), new Frames55Encoder(false)), 16, 2000);
    expect(told(new Frames55Adapter(), new Frames55Encoder(true)), 16, 2000);
    expect(told(new XImu3Adapter(), new XImu3Encoder("")), 24, 2000);
  }
}
