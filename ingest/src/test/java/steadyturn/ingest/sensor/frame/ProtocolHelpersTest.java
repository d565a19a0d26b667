package steadyturn.ingest.sensor.frame;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.ingest.lab.BinaryFrameEncoder;
import steadyturn.ingest.lab.TextLineEncoder;
import steadyturn.ingest.lab.UnitEncoder;
import steadyturn.ingest.sensor.KeptSamples;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.sensor.SensorAdapters;

class ProtocolHelpersTest {

  private final List<Integer> read = new ArrayList<>();
  private final KeptSamples kept = new KeptSamples();

  /** Frames of AA 55, one byte of data, the same with four bits turned. */
  private final SyncFrames frames =
      new SyncFrames(
          new byte[] {(byte) 0xAA, 0x55},
          4,
          (frame, sink) -> {
            boolean isGood = (frame.get(2) ^ 0x3C) == frame.get(3);
            if (isGood) {
              read.add((int) frame.get(2));
            }
            return isGood;
          });

  private ByteBuffer bytes(int... values) {
    ByteBuffer buffer = ByteBuffer.allocate(values.length);
    for (int value : values) {
      buffer.put((byte) value);
    }
    return buffer.flip();
  }

  @Test
  void aTrueFrameInsideAFalseOneIsStillFound() {
    // Given: a frame cut after its begin, at once followed by a whole one. Expect: the whole one is
    // read, the two bytes of the cut one are skipped.
    ByteBuffer given = bytes(0xAA, 0x55, 0xAA, 0x55, 7, 7 ^ 0x3C);
    frames.read(given, kept);
    assertThat(read).containsExactly(7);
    assertThat(kept.skippedBytes).isEqualTo(2);
    assertThat(given.remaining()).isZero();
  }

  @Test
  void anUnfinishedFrameIsLeftAndNoiseBeforeItIsNot() {
    ByteBuffer given = bytes(1, 2, 3, 0xAA, 0x55, 9);
    frames.read(given, kept);
    assertThat(kept.skippedBytes).isEqualTo(3);
    assertThat(given.remaining()).isEqualTo(3);
    assertThat(read).isEmpty();
  }

  @Test
  void aBeginCutInHalfIsLeftToo() {
    ByteBuffer given = bytes(1, 0xAA);
    frames.read(given, kept);
    assertThat(given.remaining()).isEqualTo(1);
  }

  @Test
  void linesMayEndWithOrWithoutCarriageReturn() {
    List<String> lines = new ArrayList<>();
    LineProtocol protocol = new LineProtocol(20, (line, sink) -> lines.add(line));
    protocol.read(ByteBuffer.wrap("a\r\nb\nc".getBytes(StandardCharsets.US_ASCII)), kept);
    assertThat(lines).containsExactly("a", "b");
  }

  @Test
  void probingTellsTheTwoProtocolsApart() {
    for (UnitEncoder encoder : List.of(new TextLineEncoder(), new BinaryFrameEncoder(16, 2000))) {
      ByteBuffer stream = ByteBuffer.allocate(4000);
      for (int k = 0; k < 20; k++) {
        stream.put(encoder.sample(k, 2000L * k, new double[] {0, 0, 9.8}, new double[3]));
      }
      byte[] joinedMidway = new byte[stream.position() - 9];
      stream.flip().position(9).get(joinedMidway);
      String expected = encoder instanceof TextLineEncoder ? "text-line" : "binary-frame";
      assertThat(SensorAdapters.probe(joinedMidway).orElseThrow().name()).isEqualTo(expected);
    }
    assertThat(SensorAdapters.probe(new byte[3000])).isEmpty();
  }

  @Test
  void theBinaryCounterTellsWhatNeverArrived() {
    BinaryFrameEncoder encoder = new BinaryFrameEncoder(16, 2000);
    SensorAdapter adapter = new BinaryFrameAdapter();
    for (long k : new long[] {65_533, 65_534, 65_536, 65_540}) {
      byte[] frame = encoder.sample(k, 1000 * k, new double[3], new double[3]);
      adapter.read(ByteBuffer.wrap(frame), kept);
    }
    // Missing: 65535, and 65537 to 65539, over the wrap of 16 bits.
    assertThat(kept.lostSamples).isEqualTo(4);
  }
}
