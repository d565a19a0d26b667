package steadyturn.ingest.sensor.maker;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import steadyturn.ingest.sensor.AdapterFeed;
import steadyturn.ingest.sensor.KeptSamples;
import steadyturn.ingest.sensor.KnownUnit;
import steadyturn.ingest.sensor.SensorAdapter;

/** Bytes of real units are read whole, to the values that their makers' programs show. */
class RealCapturesTest {

  private static final double G = 9.80665;

  /** Keeps what is known of the unit besides. */
  private static final class Kept extends KeptSamples {
    private final List<KnownUnit> known = new ArrayList<>();

    @Override
    public void known(KnownUnit told) {
      known.add(told);
    }

    KnownUnit last() {
      return known.get(known.size() - 1);
    }
  }

  private static Kept read(SensorAdapter adapter, byte[] bytes) {
    Kept kept = new Kept();
    new AdapterFeed(adapter, kept).feed(bytes, bytes.length);
    return kept;
  }

  private static double meanNorm(List<double[]> samples) {
    return samples.stream()
        .mapToDouble(s -> Math.sqrt(s[1] * s[1] + s[2] * s[2] + s[3] * s[3]))
        .average()
        .orElse(0);
  }

  @Test
  void theCaptureOfABluetoothUnitIsReadWhole() {
    // Given: 288 frames of 20 bytes (source: Captures). Expect: 287 samples, since the last frame
    // has
    // none behind it that would vouch for it; nothing skipped. First frame 55 61 27 06 bc 01 79 06
    // 55 00 e7 fe c4 fa: 0x0627 = 1575 of 32768 is 0.769 g; 0x0055 = 85 is 5.188 deg/s.
    Kept kept = read(new Frames55Adapter(), Captures.wt901());
    assertThat(kept.samples).hasSize(287);
    assertThat(kept.skippedBytes).isZero();
    double[] first = kept.samples.get(0);
    assertThat(first[1]).isCloseTo(1575 / 2048.0 * G, within(1e-9));
    assertThat(first[2]).isCloseTo(0x01bc / 2048.0 * G, within(1e-9));
    assertThat(first[3]).isCloseTo(0x0679 / 2048.0 * G, within(1e-9));
    assertThat(Math.toDegrees(first[4])).isCloseTo(85 * 2000 / 32768.0, within(1e-9));
    assertThat(Math.toDegrees(first[5])).isCloseTo((0xfee7 - 65536) * 2000 / 32768.0, within(1e-9));
    assertThat(kept.samples).allMatch(s -> Double.isNaN(s[0]));
    // Turned in the hand: about gravity. Within 10 %: the hand accelerates it too.
    assertThat(meanNorm(kept.samples)).isCloseTo(G, within(0.1 * G));
    // Its rate by the times of arrival: 94.7 Hz in these 3 s, in which the radio fell silent once
    // for
    // 0.24 s; its owners measured 99.26 Hz over minutes. Within 5 of that.
    List<Captures.Block> blocks = Captures.wt901Blocks();
    double lengthS = blocks.get(blocks.size() - 1).arrivedS() - blocks.get(0).arrivedS();
    int after = IntStream.range(1, blocks.size()).map(k -> blocks.get(k).bytes().length).sum() / 20;
    assertThat(after / lengthS).isCloseTo(99.26, within(5.0));
  }

  @Test
  void theFileOfALoggerIsReadWhole() {
    // Given: a head and 283 blocks of 40 samples. Expect: each of the 11,320 samples, 16 g and 250
    // deg/s, the number of the head: 91 * 65536 + 48058.
    Kept kept = read(new CwaAdapter(), Captures.ax6());
    assertThat(kept.samples).hasSize(283 * 40);
    assertThat(kept.skippedBytes).isZero();
    assertThat(kept.lostSamples).isZero();
    assertThat(kept.last().accelFullScaleMps2()).isCloseTo(16 * G, within(1e-9));
    assertThat(Math.toDegrees(kept.last().gyroFullScaleRadPerS())).isCloseTo(250, within(1e-9));
    assertThat(kept.last().serialNumber()).isEqualTo("6011834");
    assertThat(kept.last().rateHz()).hasValue(100);
    // Its own clock: 99.2 Hz by the times of day in the blocks. Every step between 9.5 and 10.6 ms.
    List<double[]> s = kept.samples;
    double lengthS = s.get(s.size() - 1)[0] - s.get(0)[0];
    assertThat((s.size() - 1) / lengthS).isCloseTo(99.2, within(0.5));
    for (int i = 1; i < s.size(); i++) {
      assertThat(s.get(i)[0] - s.get(i - 1)[0]).isBetween(0.0095, 0.0106);
    }
    // At rest at its end: the last block. Within 2 %: what such a unit is worth uncalibrated.
    assertThat(meanNorm(s.subList(s.size() - 40, s.size()))).isCloseTo(G, within(0.02 * G));
  }

  @Test
  void recordedXbusMessagesGiveTheValuesOfTheMakersProgram() {
    // Given: recorded payloads and what the maker's own program decoded from them. Expect: the same
    // values, within half of the last digit printed. One of six carries no acceleration.
    String all = Captures.mti();
    Matcher raw = Pattern.compile("## Raw Data\\s+```\\s+([0-9A-F ]+)\\s+```").matcher(all);
    List<double[]> decoded = decoded(all);
    List<byte[]> payloads = new ArrayList<>();
    while (raw.find()) {
      payloads.add(HexFormat.ofDelimiter(" ").parseHex(raw.group(1).strip()));
    }
    assertThat(payloads).hasSize(6);
    assertThat(decoded).hasSize(5);
    int k = 0;
    for (byte[] payload : payloads) {
      Kept kept = read(new XbusAdapter(), framed(0x36, payload));
      assertThat(kept.skippedBytes).isZero();
      if (kept.samples.isEmpty()) {
        continue;
      }
      double[] sample = kept.samples.get(0);
      double[] expected = decoded.get(k++);
      assertThat(sample[0]).isCloseTo(expected[0] / 10_000, within(1e-9));
      for (int i = 1; i < 7; i++) {
        assertThat(sample[i]).isCloseTo(expected[i], within(0.51e-8));
      }
    }
    assertThat(k).isEqualTo(5);
  }

  /** Ticks, acceleration, rate of each packet that has them. */
  private static List<double[]> decoded(String all) {
    String number = "\\s*(-?[0-9.]+)";
    Matcher found =
        Pattern.compile(
                ("SampleTimeFine, 4 bytes," + number + "\\).*?")
                    + ("accX:" + number + ", accY:" + number + ", accZ:" + number + ".*?")
                    + ("gyrX:" + number + ", gyrY:" + number + ", gyrZ:" + number))
            .matcher(all);
    List<double[]> rows = new ArrayList<>();
    while (found.find()) {
      Matcher row = found;
      rows.add(
          IntStream.rangeClosed(1, 7).mapToDouble(i -> Double.parseDouble(row.group(i))).toArray());
    }
    return rows;
  }

  /** A message, its check computed here by hand. */
  private static byte[] framed(int id, byte[] payload) {
    ByteBuffer m = ByteBuffer.allocate(payload.length + 5);
    m.put((byte) 0xFA).put((byte) 0xFF).put((byte) id).put((byte) payload.length).put(payload);
    int sum = 0xFF + id + payload.length;
    for (byte value : payload) {
      sum += value & 0xFF;
    }
    return m.put((byte) (256 - sum % 256)).array();
  }

  @Test
  void xbusCommandsAreThoseThatWereRecorded() {
    // Source: the configuration that was recorded between the maker's program and a unit.
    assertThat(XbusAdapter.message(0x30)).isEqualTo(bytes("FA FF 30 00 D1"));
    assertThat(XbusAdapter.message(0x10)).isEqualTo(bytes("FA FF 10 00 F1"));
    byte[] outputs =
        bytes(
            "10 20 FF FF 10 60 FF FF 20 10 01 90 40 20 01 90 40 10 01 90 40 30 01 90 80 20 01 90"
                + " 80 30 01 90 C0 20 00 64 08 10 00 0A 30 10 00 32 E0 20 FF FF");
    byte[] message = XbusAdapter.message(0xC0, outputs);
    assertThat(message[message.length - 1]).isEqualTo((byte) 0x99);
    Kept kept = read(new XbusAdapter(), bytes("FA FF 01 04 03 70 03 F8 8E"));
    assertThat(kept.last().serialNumber()).isEqualTo("037003F8");
  }

  private static byte[] bytes(String hex) {
    return HexFormat.ofDelimiter(" ").parseHex(hex);
  }

  @Test
  void theExamplesOfTheManualAreRead() {
    // Source: x-IMU3 user manual, inertial message: 1 s, no rate, 1 g along z; in text and binary.
    byte[] text = "I,1000000,0.0000,0.0000,0.0000,0.0000,0.0000,1.0000\n".getBytes(ISO_8859_1);
    byte[] binary =
        bytes(
            "C9 40 42 0F 00 00 00 00 00 00 00 00 00 00 00 00 00 00 00 00 00 00 00 00 00 00 00 00 00"
                + " 00 00 80 3F 0A");
    for (byte[] message : List.of(text, binary)) {
      Kept kept = read(new XImu3Adapter(), message);
      assertThat(kept.skippedBytes).isZero();
      assertThat(kept.samples.get(0)).containsExactly(1, 0, 0, G, 0, 0, 0);
    }
    Kept answer =
        read(
            new XImu3Adapter(),
            "{\"ping\":{\"interface\":\"USB\",\"name\":\"x-IMU3\",\"sn\":\"01234567\"}}\n"
                .getBytes(ISO_8859_1));
    assertThat(answer.last().serialNumber()).isEqualTo("01234567");
    Kept others =
        read(
            new XImu3Adapter(),
            """
            M,1000000,1.0000,0.0000,0.0000
            N,1000000,Button pressed.
            B,1000000,100.0000,4.2000,2.0000
            """
                .getBytes(ISO_8859_1));
    assertThat(others.skippedBytes).isZero();
  }

  @Test
  void aRecordedRestOfAnXImu3IsReadFromBothKindsOfMessage() {
    // Given: 362 recorded samples, put into messages as the manual says. Expect: all of them; mean
    // specific force within 0.5 % of 1 g, 50 Hz.
    List<String> lines = Captures.xImu3Lines();
    StringBuilder text = new StringBuilder();
    for (String line : lines) {
      String[] v = line.split(",", -1);
      text.append("I,").append(v[0]);
      for (int i = 1; i < 7; i++) {
        text.append(String.format(java.util.Locale.ROOT, ",%.4f", Double.parseDouble(v[i])));
      }
      text.append('\n');
    }
    Kept kept = read(new XImu3Adapter(), text.toString().getBytes(ISO_8859_1));
    assertThat(kept.samples).hasSize(362);
    assertThat(kept.skippedBytes).isZero();
    assertThat(meanNorm(kept.samples)).isCloseTo(G, within(0.005 * G));
    double[] stepsS =
        IntStream.range(1, 362)
            .mapToDouble(k -> kept.samples.get(k)[0] - kept.samples.get(k - 1)[0])
            .sorted()
            .toArray();
    assertThat(1 / stepsS[180]).isCloseTo(50, within(0.2)); // the median: four are missing
    double[] first =
        Arrays.stream(lines.get(0).split(",", -1)).mapToDouble(Double::parseDouble).toArray();
    assertThat(Math.toDegrees(kept.samples.get(0)[4])).isCloseTo(first[1], within(0.51e-4));
  }
}
