package steadyturn.ingest.sensor.kit;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import steadyturn.ingest.sample.Offered;
import steadyturn.ingest.sensor.FrameCheck;
import steadyturn.ingest.sensor.SensorAdapter;

/**
 * Extend this for each adapter; every promise becomes a test of its own. One that the recording or
 * the unit's check cannot prove is shown as left out, with the reason.
 */
@Offered
public abstract class AdapterKit {

  /** A new adapter, as for a port just opened. */
  protected abstract SensorAdapter adapter();

  /** What the unit really sent. */
  protected abstract GoldenRecording golden();

  /** How well each frame is checked; an adapter of two framings has two kits. */
  protected FrameCheck check() {
    return adapter().check();
  }

  @TestFactory
  Stream<DynamicTest> promises() {
    return Arrays.stream(Promise.values())
        .map(p -> DynamicTest.dynamicTest(p.words(), () -> prove(p)));
  }

  private void prove(Promise promise) {
    Optional<String> why = promise.notProvable(this::adapter, golden(), check());
    why.ifPresent(Assumptions::abort);
    promise.check(this::adapter, golden(), check());
  }
}
