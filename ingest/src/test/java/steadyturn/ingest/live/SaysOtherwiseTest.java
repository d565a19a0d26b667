package steadyturn.ingest.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sensor.KnownUnit;
import steadyturn.ingest.sensor.SampleSink;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.sensor.UnitHello;
import steadyturn.ingest.sensor.UnitLink;

/**
 * A unit that comes back otherwise than it was, refuses to be set up, or must know that its port
 * was opened. Its protocol: a byte is a sample, or the hello of a setting.
 */
class SaysOtherwiseTest {

  private static final List<UnitHello> SETTINGS =
      List.of(hello(250, 16, 2000), hello(25, 4, 500), hello(250, 16, 2000), hello(500, 16, 2000));
  private static final byte SAMPLE = 9;
  private static final byte RANGES = 8;

  @TempDir Path folder;
  private LiveRecorder recorder;
  private final Told adapter = new Told();
  private double nowS = 100;

  @BeforeEach
  void start() throws IOException {
    Player player = Player.unmeasured("p", Handedness.RIGHT);
    recorder = LiveRecorder.start(folder.resolve("lessons"), player, "01");
  }

  @AfterEach
  void end() {
    recorder.close();
  }

  @Test
  void whatAUnitSaysLaterIsNotTakenForWhatWasRecorded() {
    // Given: 250 Hz, 16 g, 2000 deg/s, then the setting of the factory, then the first again, ten
    // samples each. Expect: the table keeps what its samples were taken with; those of narrower
    // ranges are left out, which is said with old and new; afterwards it goes on.
    LiveUnit unit = unit(false);
    say(unit, 0, 10);
    assertFirstSetting(unit);
    say(unit, 1, 10);
    assertFirstSetting(unit);
    assertThat(unit.state().samples()).isEqualTo(10);
    assertThat(unit.state().trouble())
        .contains("runs at 25 Hz, 4 g, 500 deg/s now, not at 250 Hz, 16 g, 2000 deg/s", "left out");
    say(unit, 2, 10);
    assertFirstSetting(unit);
    assertThat(unit.state().samples()).isEqualTo(20);
    assertThat(unit.state().trouble()).isEmpty();
  }

  @Test
  void aUnitThatRunsFasterThanItSaidIsKeptAndTold() {
    LiveUnit unit = unit(false);
    say(unit, 0, 10);
    say(unit, 3, 10);
    assertThat(unit.state().samples()).isEqualTo(20);
    assertFirstSetting(unit);
    assertThat(recorder.news())
        .containsExactly(
            "pelvis runs at 500 Hz, 16 g, 2000 deg/s now; its files keep 250 Hz, 16 g, 2000 deg/s,"
                + " said first");
  }

  @Test
  void whatAUnitSaysBeforeItIsSetUpIsNotHeldForItsTable() {
    // Given: the hello of the factory while the unit waits to be set up, samples from then on, the
    // hello of the new setting ten samples later; the cable out, the same again. Expect: the table
    // is of the new setting, no sample of after the set-up is left out, nothing is told.
    LiveUnit unit = unit(true);
    for (int plugged = 1; plugged <= 2; plugged++) {
      unit.opened();
      say(unit, 1, 1);
      for (int k = 0; k < 20; k++) {
        unit.toSend(nowS += 0.1);
      }
      say(unit, SAMPLE, 9);
      say(unit, 0, 10);
      assertFirstSetting(unit);
      assertThat(unit.state().trouble()).isEmpty();
      assertThat(unit.state().samples()).isEqualTo(plugged * 20L);
      unit.gone("unplugged");
    }
    assertThat(recorder.news()).noneMatch(line -> line.contains("runs at"));
  }

  @Test
  void theRateThatAUnitShowsByRunningStaysWhenItComesBack() {
    // Given: a unit that tells its ranges and never its rate, at 250 Hz; set up, cable out, set up
    // again. Expect: 250 Hz shown by its samples before and after, as its tables say nothing else.
    LiveUnit unit = unit(true);
    for (int plugged = 1; plugged <= 2; plugged++) {
      unit.opened();
      say(unit, RANGES, 1);
      for (int k = 0; k < 20; k++) {
        unit.toSend(nowS += 0.1);
      }
      say(unit, RANGES, plugged == 1 ? 2000 : 1);
      assertFirstSetting(unit);
      unit.gone("unplugged");
    }
  }

  @Test
  void anAdapterHearsOfEachOpeningBeforeItSetsTheUnitUp() {
    LiveUnit plain = unit(false);
    plain.opened();
    plain.gone("unplugged");
    plain.opened();
    plain.toSend(200);
    assertThat(adapter.told).containsExactly("opened", "opened");
    adapter.told.clear();
    LiveUnit setUp = unit(true);
    setUp.tuned(115_200);
    setUp.opened();
    setUp.toSend(200);
    setUp.toSend(202);
    assertThat(adapter.told).containsExactly("opened", "configured at 115200");
  }

  @Test
  void aRefusalIsToldOnce() {
    LiveUnit unit = unit(true);
    for (int k = 0; k < 3; k++) {
      unit.opened();
      unit.toSend(nowS);
      unit.toSend(nowS + 2);
      nowS += 3;
    }
    assertThat(recorder.news())
        .containsExactly("pelvis is not set up as wished: it refuses 500 Hz");
  }

  private LiveUnit unit(boolean mayConfigure) {
    return new LiveUnit(
        recorder,
        adapter,
        Optional.of(BodyPoint.PELVIS),
        new PortPlace(0, mayConfigure),
        (point, timeS, accel, gyro) -> {});
  }

  private void say(LiveUnit unit, int setting, int samples) {
    unit.bytes(new byte[] {(byte) setting}, 1, nowS, nowS);
    for (int k = 0; k < samples; k++) {
      nowS += 0.004;
      unit.bytes(new byte[] {SAMPLE}, 1, nowS, nowS);
    }
  }

  private static void assertFirstSetting(LiveUnit unit) {
    UnitFacts facts = unit.facts().orElseThrow();
    assertThat(facts.nominalRateHz()).isEqualTo(250);
    assertThat(facts.accelFullScaleMps2()).isCloseTo(16 * 9.80665, within(1e-9));
    assertThat(Math.toDegrees(facts.gyroFullScaleRadPerS())).isCloseTo(2000, within(1e-9));
  }

  private static UnitHello hello(double rateHz, double g, double degPerS) {
    return new UnitHello("", "A1", rateHz, g * 9.80665, Math.toRadians(degPerS));
  }

  private final class Told implements SensorAdapter {

    private final List<String> told = new ArrayList<>();

    @Override
    public String name() {
      return "told";
    }

    @Override
    public void opened() {
      told.add("opened");
    }

    @Override
    public void configure(UnitLink link) {
      link.baud().ifPresent(baud -> told.add("configured at " + baud));
      link.failed("refuses 500 Hz");
    }

    @Override
    public void read(ByteBuffer bytes, SampleSink sink) {
      while (bytes.hasRemaining()) {
        int what = bytes.get();
        if (what == SAMPLE) {
          sink.sample(nowS, 0, 0, 9.8, 0, 0, 0);
        } else if (what == RANGES) {
          sink.known(KnownUnit.ofRanges(16, 2000));
        } else {
          sink.hello(SETTINGS.get(what));
        }
      }
    }
  }
}
