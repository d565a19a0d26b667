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

  /**
   * How well each frame is checked: what the adapter says of itself. An adapter of two framings has
   * two kits, and each says here what its own framing is worth.
   */
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
    why.ifPresent(reason -> Assumptions.abort(promise.words() + ": " + reason));
    try {
      promise.check(this::adapter, golden(), check());
    } catch (AssertionError e) { // some runners show no display name, so the promise says its own
      throw new AssertionError(promise.words() + ": " + e.getMessage(), e);
    }
  }
}
