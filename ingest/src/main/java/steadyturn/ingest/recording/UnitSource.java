package steadyturn.ingest.recording;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;
import steadyturn.ingest.recording.dataset.Sidecars;
import steadyturn.ingest.recording.dataset.UnitFile;
import steadyturn.ingest.recording.table.Channel;
import steadyturn.ingest.recording.table.MotionLayout;
import steadyturn.ingest.recording.table.MotionStream;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.recording.table.SampleColumns;
import steadyturn.ingest.recording.table.TextTable;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** One motion table with what its sidecars say, ready to be read whole or in stretches. */
record UnitSource(UnitFile file, JsonNode facts, MotionLayout layout, List<String> notices) {

  private static final int PROBED_BYTES = 1 << 16;

  /** Reads the sidecars and plans the columns. */
  static UnitSource plan(Path root, UnitFile file, Function<String, Optional<BodyPoint>> pointOf) {
    List<String> notices = new ArrayList<>();
    Sidecars sidecars = new Sidecars(root, file, notices);
    Path channels =
        sidecars
            .nearest("channels", "tsv")
            .orElseThrow(() -> missing(file, "_channels.tsv", "names its columns and units"));
    MotionLayout layout =
        MotionLayout.of(
            channels, Channel.read(TextTable.read(channels, notices)), pointOf, notices);
    Optional<JsonNode> json = sidecars.json("motion");
    UnitSource source =
        new UnitSource(file, json.orElse(MissingNode.getInstance()), layout, notices);
    if (json.isEmpty()) {
      source.requireTime();
    }
    return source;
  }

  private static RecordingException missing(UnitFile file, String ending, String why) {
    String sidecar = file.fileName().replace("_motion.tsv", ending);
    return RecordingException.of(
        file.table(),
        "its sidecar " + sidecar + " is missing; it " + why + ". Put it beside the table.");
  }

  private void requireTime() {
    if (!layout.hasTime()) {
      throw missing(file, "_motion.json", "tells the sampling rate");
    }
    notices.add(
        RecordingException.place(file.table(), 0, "")
            + ": its sidecar _motion.json is missing; the rate is taken from the time column and"
            + " full scales are not known.");
  }

  MotionStream open() {
    double countingHz = positive("SamplingFrequencyEffective", nominalHz());
    if (!layout.hasTime() && Double.isNaN(countingHz)) {
      throw RecordingException.of(
          file.table(),
          "has no time column (LATENCY), and its _motion.json no SamplingFrequency above 0. Write"
              + " one of the two.");
    }
    try {
      return new MotionStream(file.table(), Files.newInputStream(file.table()), layout, countingHz);
    } catch (IOException e) {
      throw RecordingException.io(file.table(), e);
    }
  }

  /** All samples, one stream a body point, time counted from the table's first sample. */
  List<UnitStream> readAll(double byS) {
    SampleColumns columns = new SampleColumns(layout.slots(), expectedSamples());
    try (MotionStream stream = open()) {
      stream.fill(columns, Double.POSITIVE_INFINITY);
      notices.addAll(stream.tally().notices());
    }
    double rateHz = rateHz(columns);
    return IntStream.range(0, layout.points().size())
        .mapToObj(i -> columns.handOver(factsOf(i, rateHz), MotionLayout.firstSlot(i), byS))
        .toList();
  }

  UnitFacts factsOf(int pointIndex, double rateHz) {
    return new UnitFacts(
        layout.points().get(pointIndex),
        facts.path("DeviceSerialNumber").asText(""),
        rateHz,
        fullScale(layout.accelFullScaleMps2(pointIndex), "AccelFullScale"),
        fullScale(layout.gyroFullScaleRadPerS(pointIndex), "GyroFullScale"),
        layout.calibrated(pointIndex) || facts.path("CalibrationApplied").asBoolean(false));
  }

  /** The stated rate; where none is stated, the mean rate of the samples. */
  double rateHz(SampleColumns columns) {
    double stated = nominalHz();
    if (!Double.isNaN(stated)) {
      return stated;
    }
    int n = columns.size();
    return n < 2 ? 1 : (n - 1) / (columns.lastTimeS() - columns.timeS(0));
  }

  private double nominalHz() {
    return positive("SamplingFrequency", Double.NaN);
  }

  /** What the channels tell, else what the motion sidecar tells in SI units. */
  private double fullScale(double ofChannels, String member) {
    return ofChannels > 0 ? ofChannels : positive(member, Double.POSITIVE_INFINITY);
  }

  private double positive(String member, double otherwise) {
    double value = facts.path(member).asDouble(0);
    return value > 0 ? value : otherwise;
  }

  /** What the samples take in memory, judged by the file's size. */
  long expectedBytes() {
    return (long) expectedSamples() * layout.slots() * Double.BYTES;
  }

  /** A little more than the number of lines, judged by the first of them. */
  private int expectedSamples() {
    try (InputStream in = Files.newInputStream(file.table())) {
      byte[] head = in.readNBytes(PROBED_BYTES);
      int lines = 1;
      for (byte b : head) {
        lines += b == '\n' ? 1 : 0;
      }
      double linesPerByte = lines / (double) Math.max(1, head.length);
      return (int)
          Math.min(Integer.MAX_VALUE / 2.0, 1.02 * Files.size(file.table()) * linesPerByte);
    } catch (IOException e) {
      throw RecordingException.io(file.table(), e);
    }
  }
}
