package steadyturn.ingest.recording.table;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** A motion table and its channels written by hand, read from memory. */
final class MotionBytes {

  private static final Path FILE = Path.of("made_motion.tsv");

  final List<String> notices = new ArrayList<>();
  private final List<Channel> channels = new ArrayList<>();
  private double rateHz = 100;

  /** The next column: a type, an axis (or n/a) and a unit. */
  MotionBytes column(String type, String component, String units) {
    int line = channels.size() + 2;
    channels.add(
        new Channel(
            line, type + component, component, type, "pelvis", units, false, Double.NaN, false));
    return this;
  }

  /** Time in a unit, then accelerometer x y z in m/s^2 and gyroscope x y z in rad/s. */
  static MotionBytes usual(String timeUnit) {
    return new MotionBytes().column("LATENCY", "n/a", timeUnit).six();
  }

  MotionBytes six() {
    for (String axis : List.of("x", "y", "z")) {
      column("ACCEL", axis, "m/s^2");
    }
    for (String axis : List.of("x", "y", "z")) {
      column("GYRO", axis, "rad/s");
    }
    return this;
  }

  MotionBytes countedAt(double hz) {
    rateHz = hz;
    return this;
  }

  UnitStream read(String text) {
    return read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
  }

  UnitStream read(InputStream in) {
    MotionLayout layout =
        MotionLayout.of(FILE, channels, word -> Optional.of(BodyPoint.PELVIS), notices);
    SampleColumns columns = new SampleColumns(layout.slots(), 0);
    try (MotionStream stream = new MotionStream(FILE, in, layout, rateHz)) {
      stream.fill(columns, Double.POSITIVE_INFINITY);
      notices.addAll(stream.tally().notices());
    }
    return columns.handOver(UnitFacts.plain(BodyPoint.PELVIS, 100), MotionLayout.firstSlot(0), 0);
  }
}
