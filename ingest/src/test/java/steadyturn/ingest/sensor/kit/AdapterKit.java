package steadyturn.ingest.sensor.kit;

import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import steadyturn.ingest.sensor.SensorAdapter;

/** Extend this for each adapter; every promise becomes a test of its own. */
public abstract class AdapterKit {

  /** A new adapter, as for a port just opened. */
  protected abstract SensorAdapter adapter();

  /** What the unit really sent. */
  protected abstract GoldenRecording golden();

  /**
   * Whether the unit sends a check (checksum, CRC) with each sample. Where it does not, damaged
   * samples cannot be told from true ones, and that promise is left out.
   */
  protected boolean sendsCheck() {
    return true;
  }

  @TestFactory
  Stream<DynamicTest> promises() {
    return Arrays.stream(Promise.values())
        .filter(p -> sendsCheck() || p != Promise.DAMAGE_NEVER_INVENTS_A_SAMPLE)
        .map(p -> DynamicTest.dynamicTest(p.words(), () -> p.check(this::adapter, golden())));
  }
}
