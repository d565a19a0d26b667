package steadyturn.ingest.sensor.maker;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.sensor.KeptSamples;
import steadyturn.ingest.sensor.KnownUnit;

/**
 * Blocks laid down byte by byte after openmovementproject/openmovement@4abb1202 Docs/ax3/cwa.h:
 * 'AX', 508, fraction at 4, sequence at 10, time at 14, scales at 18, rate at 24, 'axes and
 * packing' at 25, offset of the time's sample at 26, count at 28, samples from 30, sum of all words
 * zero.
 */
class CwaBlocksTest {

  /** 2026-05-04 03:02:01 UTC. */
  private static final double TIME_S = 1777863721;

  private static final int TIME = 26 << 26 | 5 << 22 | 4 << 17 | 3 << 12 | 2 << 6 | 1;
  private static final int AX6 = 0x62;
  private static final double G = 9.80665;

  private static final class Kept extends KeptSamples {
    final List<KnownUnit> known = new ArrayList<>();

    @Override
    public void known(KnownUnit unit) {
      known.add(unit);
    }
  }

  private final Kept kept = new Kept();
  private final CwaAdapter adapter = new CwaAdapter();

  /** Accelerations of 16 g (2048 counts a g), rates of 2000 deg/s, 100 Hz, 40 samples. */
  private static ByteBuffer block() {
    ByteBuffer f = ByteBuffer.allocate(512).order(ByteOrder.LITTLE_ENDIAN);
    f.put((byte) 'A').put((byte) 'X').putShort((short) 508);
    f.putInt(10, 7).putInt(14, TIME).putShort(18, (short) (3 << 13 | 2 << 10 | 5));
    f.put(24, (byte) 0x4A).put(25, (byte) AX6).putShort(28, (short) 40);
    for (int i = 0; i < 40; i++) {
      int at = 30 + 12 * i;
      f.putShort(at, (short) (100 + i))
          .putShort(at + 2, (short) -200)
          .putShort(at + 4, (short) 300);
      f.putShort(at + 6, (short) (1000 + i)).putShort(at + 8, (short) -2048);
      f.putShort(at + 10, (short) 4096);
    }
    return f;
  }

  private static byte[] summed(ByteBuffer f) {
    f.putShort(510, (short) 0);
    int sum = 0;
    for (int at = 0; at < 512; at += 2) {
      sum += f.getShort(at);
    }
    f.putShort(510, (short) -sum);
    return f.array();
  }

  private void read(ByteBuffer... blocks) {
    for (ByteBuffer block : blocks) {
      adapter.read(ByteBuffer.wrap(summed(block)), kept);
    }
  }

  private double timeS(int sample) {
    return kept.samples.get(sample)[0];
  }

  @Test
  void aBlockIsReadByItsScales() {
    read(block());
    assertThat(kept.samples).hasSize(40);
    double deg = Math.toRadians(2000) / 32768;
    assertThat(kept.samples.get(39))
        .containsExactly(
            new double[] {
              TIME_S + 0.39, 1039 * G / 2048, -G, 2 * G, 139 * deg, -200 * deg, 300 * deg
            },
            within(1e-6));
    KnownUnit unit = kept.known.get(0);
    assertThat(unit.accelFullScaleMps2()).isCloseTo(16 * G, within(1e-9));
    assertThat(unit.gyroFullScaleRadPerS()).isCloseTo(Math.toRadians(2000), within(1e-12));
    assertThat(unit.rateHz()).hasValue(100);
    assertThat(kept.skippedBytes).isZero();
    assertThat(kept.lostSamples).isZero();
  }

  @ParameterizedTest
  @CsvSource({"1, 1, 4000, 64", "2, 4, 500, 32", "4, 3, 1000, 8"})
  void rangesFollowTheirCodes(int accelCode, int gyroCode, double degPerS, double g) {
    read(block().putShort(18, (short) (accelCode << 13 | gyroCode << 10)));
    KnownUnit unit = kept.known.get(0);
    assertThat(unit.accelFullScaleMps2()).isCloseTo(g * G, within(1e-9));
    assertThat(unit.gyroFullScaleRadPerS()).isCloseTo(Math.toRadians(degPerS), within(1e-12));
  }

  @ParameterizedTest
  @CsvSource({"0x06, 6.25", "0x08, 25", "0x4B, 200", "0x0F, 3200"})
  void theRateFollowsItsCode(String code, double rateHz) {
    read(block().put(24, Integer.decode(code).byteValue()));
    assertThat(kept.known.get(0).rateHz()).hasValue(rateHz);
    assertThat(timeS(39) - timeS(0)).isCloseTo(39 / rateHz, within(1e-6));
  }

  @ParameterizedTest
  @CsvSource({
    // fraction as written, offset of the sample the time belongs to, begin after the time, s
    "0, 0, 0",
    "0, 12, -0.12",
    "0, -3, 0.03",
    "0xC000, 7, -0.07",
    "0xA000, 0, 0",
    "0x4000, 0, 0"
  })
  void theTimeOfDayBelongsToTheSampleItSays(String fraction, int offset, double afterS) {
    // The fraction counts from bit 14 down where bit 15 is set: 0xC000 is 0.5 s, 50 samples later.
    read(
        block()
            .putShort(4, (short) Integer.decode(fraction).intValue())
            .putShort(26, (short) offset));
    assertThat(timeS(0)).isCloseTo(TIME_S + afterS, within(1e-6));
  }

  @ParameterizedTest
  @CsvSource({"8, 0", "9, 1", "12, 4", "5, 0", "7, 0"})
  void whatTheSequenceSkipsIsLost(int sequence, int blocks) {
    read(block(), block().putInt(10, sequence));
    assertThat(kept.lostSamples).isEqualTo(40L * blocks);
  }

  @ParameterizedTest
  @CsvSource({"-45, true", "-35, true", "-49, true", "-51, false", "-31, true", "-29, false"})
  void aBlockGoesOnWhereTheOneBeforeEnded(int offset, boolean isSameRun) {
    // Given: the second block's own time 0.4 s behind the first's, some samples aside: within 0.1 s
    // it begins at the end of the one before and ends where it says.
    read(block(), block().putShort(26, (short) offset));
    double beginS = TIME_S - offset / 100.0;
    double fromS = isSameRun ? TIME_S + 0.4 : beginS;
    assertThat(timeS(40)).isCloseTo(fromS, within(1e-6));
    assertThat(timeS(60)).isCloseTo((fromS + beginS + 0.4) / 2, within(1e-6));
  }

  @Test
  void whatIsWrongIsPassedOver() {
    byte[] damaged = summed(block());
    damaged[100] ^= (byte) 1;
    adapter.read(ByteBuffer.wrap(damaged), kept);
    assertThat(kept.skippedBytes).isEqualTo(512);
    read(block().putShort(28, (short) 41)); // more than there is room for
    read(block().putInt(14, TIME + (8 << 22))); // month 13
    read(block().putShort(18, (short) (2 << 10))); // no range of the accelerometer
    read(block().putShort(18, (short) (3 << 13)));
    assertThat(kept.skippedBytes).isEqualTo(5 * 512);
    assertThat(kept.samples).isEmpty();
    read(block().put(25, (byte) 0x32)); // the model without a gyroscope
    assertThat(kept.samples).isEmpty();
    assertThat(kept.skippedBytes).isEqualTo(5 * 512);
  }

  @ParameterizedTest
  @CsvSource({"0x1234, 0x0002, 135732", "0xFFFE, 0xFFFF, 65534", "0x0007, 0x0000, 7"})
  void theHeadTellsTheNumber(String low, String high, String number) {
    ByteBuffer both = ByteBuffer.allocate(1536).order(ByteOrder.LITTLE_ENDIAN);
    both.put((byte) 'M').put((byte) 'D').putShort((short) 1020);
    both.putShort(5, (short) Integer.decode(low).intValue());
    both.putShort(11, (short) Integer.decode(high).intValue());
    both.position(1024).put(summed(block()));
    adapter.read(both.rewind(), kept);
    assertThat(kept.known.get(0).serialNumber()).isEqualTo(number);
    assertThat(kept.skippedBytes).isZero();
  }
}
