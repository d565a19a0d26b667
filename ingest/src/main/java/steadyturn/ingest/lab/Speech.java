package steadyturn.ingest.lab;

import static java.util.Locale.ROOT;

import java.util.function.Supplier;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.sensor.SensorAdapters;
import steadyturn.ingest.sensor.UnitOptions;

/** What virtual units speak: every protocol that has an encoder. */
@SuppressWarnings("ImmutableEnumChecker") // constructors only
public enum Speech {
  BINARY_FRAME("binary-frame", "", () -> new BinaryFrameEncoder(16, 2000)),
  TEXT_LINE("text-line", "", TextLineEncoder::new),
  FRAMES_55("frames-55", "rate=%.0f", () -> new Frames55Encoder(false)),
  FRAMES_55_LONG("frames-55", "rate=%.0f", () -> new Frames55Encoder(true)),
  X_IMU3("x-imu3", "rate=%.0f", () -> new XImu3Encoder("")),
  XBUS("xbus", "rate=%.0f,accel-range=16,gyro-range=2000", XbusEncoder::new);

  private final String adapter;
  private final String options;
  private final Supplier<UnitEncoder> encoders;

  Speech(String adapter, String options, Supplier<UnitEncoder> encoders) {
    this.adapter = adapter;
    this.options = options;
    this.encoders = encoders;
  }

  /** Such a unit as it comes out of the factory. */
  public UnitEncoder encoder() {
    return encoders.get();
  }

  /** How large an acceleration such a unit shows, g. */
  public double accelRangeG() {
    return this == X_IMU3 ? 24 : 16;
  }

  /** Whether it must be told its rate before it is of use. */
  public boolean isSetUp() {
    return !options.isEmpty();
  }

  /** Its adapter with what is wished, as {@code record} takes it behind the port. */
  public String words(double rateHz) {
    return isSetUp() ? adapter + ":" + String.format(ROOT, options, rateHz) : adapter;
  }

  /** That adapter. */
  public SensorAdapter adapter(double rateHz) {
    SensorAdapter fresh = SensorAdapters.named(adapter).orElseThrow();
    fresh.choose(UnitOptions.of(String.format(ROOT, options, rateHz), 0));
    return fresh;
  }

  @Override
  public String toString() {
    return name().toLowerCase(ROOT).replace('_', '-');
  }
}
