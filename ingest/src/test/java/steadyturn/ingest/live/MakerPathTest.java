package steadyturn.ingest.live;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.ingest.lab.Frames55Encoder;
import steadyturn.ingest.lab.UnitEncoder;
import steadyturn.ingest.lab.UnitFaults;
import steadyturn.ingest.lab.VirtualPort;
import steadyturn.ingest.lab.VirtualUnit;
import steadyturn.ingest.lab.XImu3Encoder;
import steadyturn.ingest.lab.XbusEncoder;
import steadyturn.ingest.recording.RecordingReader;
import steadyturn.ingest.recording.dataset.Archive;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.sensor.UnitOptions;
import steadyturn.ingest.sensor.maker.Frames55Adapter;
import steadyturn.ingest.sensor.maker.XImu3Adapter;
import steadyturn.ingest.sensor.maker.XbusAdapter;
import steadyturn.ingest.serial.HostTime;
import steadyturn.ingest.serial.SerialPortSource;
import steadyturn.ingest.serial.SharedPort;

/** The whole way of units that must be set up: port, commands, answers, cable out and in again. */
class MakerPathTest {

  private static final Player PLAYER = Player.unmeasured("mika", Handedness.RIGHT);
  private static final double RATE_HZ = 200;

  @TempDir private Path folder;

  private static Recording recorded(Path root) {
    return RecordingReader.read(Archive.open(root).sessions().get(0).runs().get(0)).recording();
  }

  private record Made(BodyPoint point, SensorAdapter adapter, UnitEncoder encoder) {}

  private static SensorAdapter chosen(SensorAdapter adapter, String options) {
    adapter.choose(UnitOptions.of(options, 0));
    return adapter;
  }

  @Test
  void unitsAreSetUpAtTheStartAndAfterTheirCableCameOut() throws Exception {
    // Given: three makes that leave the factory at 10 Hz, 50 Hz in text, and without any sample;
    // seven seconds of 200 Hz, no power from second 3 to 4. Expect: each is set to 200 Hz within
    // two
    // seconds of each start, so that a quarter of the 1200 samples come at the very least
    // (the one that is silent at first is waited for a second each time).
    Socat.require();
    List<Made> units =
        List.of(
            new Made(BodyPoint.PELVIS, new Frames55Adapter(), new Frames55Encoder(false)),
            new Made(
                BodyPoint.LEAD_FOREARM,
                chosen(new XImu3Adapter(), "rate=200"),
                new XImu3Encoder("")),
            new Made(
                BodyPoint.LEAD_HAND,
                chosen(new XbusAdapter(), "rate=200,accel-range=16,gyro-range=2000"),
                new XbusEncoder()));
    Path root = folder.resolve("lessons");
    List<LiveUnit> live = new ArrayList<>();
    try (LiveRecorder recorder = LiveRecorder.start(root, PLAYER, "01")) {
      play(units, recorder, live);
    }
    Recording read = recorded(root);
    for (int k = 0; k < units.size(); k++) {
      UnitStream unit = read.unit(units.get(k).point()).orElseThrow();
      LiveState state = live.get(k).state();
      assertThat(state.unplugged()).as(units.get(k).adapter().name()).isEqualTo(1);
      assertThat(unit.size()).as(units.get(k).adapter().name()).isBetween(300, 1210);
      assertThat(unit.facts().gyroFullScaleRadPerS()).isCloseTo(Math.toRadians(2000), within(1e-6));
      assertThat(fastPart(unit, 0, 2)).isGreaterThan(50);
      assertThat(fastPart(unit, 3.5, 7)).isGreaterThan(50);
      // Every sample is one that was sent, where the unit's clock put it. Within 1.1 ms: the
      // coarsest
      // of the clocks counts milliseconds.
      int first = MadeStream.numberOf(unit, 0);
      for (int i = 1; i < unit.size(); i++) {
        double expectS = (MadeStream.numberOf(unit, i) - first) / RATE_HZ;
        assertThat(unit.timeS(i) - unit.timeS(0)).isCloseTo(expectS, within(0.0011));
      }
    }
    assertThat(read.unit(BodyPoint.LEAD_HAND).orElseThrow().facts().serialNumber())
        .isEqualTo("037003F8");
    assertThat(read.unit(BodyPoint.LEAD_FOREARM).orElseThrow().facts().serialNumber())
        .isEqualTo("0123ABCD");
  }

  private void play(List<Made> units, LiveRecorder recorder, List<LiveUnit> live)
      throws IOException, InterruptedException {
    UnitFaults unplugs = new UnitFaults(0, 0, 0, 0, 0, List.of(new UnitFaults.Stretch(3, 4)));
    List<VirtualPort> ports = new ArrayList<>();
    List<SerialPortSource> sources = new ArrayList<>();
    List<Thread> threads = new ArrayList<>();
    double startS = HostTime.steadyS() + 0.5;
    for (Made made : units) {
      Path path = folder.resolve(made.adapter().name());
      VirtualPort port = VirtualPort.at(path);
      UnitStream stream = MadeStream.numbered(made.point(), RATE_HZ, 1400);
      VirtualUnit player = new VirtualUnit(stream, made.encoder(), port, unplugs, 0, 1, 1);
      LiveUnit unit =
          new LiveUnit(
              recorder,
              made.adapter(),
              Optional.of(made.point()),
              new PortPlace(0, true),
              (point, timeS, accel, gyro) -> {});
      ports.add(port);
      live.add(unit);
      sources.add(SerialPortSource.open(path.toString(), made.adapter().bauds(), unit));
      threads.add(new Thread(() -> player.run(startS), "virtual unit"));
    }
    threads.forEach(Thread::start);
    for (Thread thread : threads) {
      thread.join();
    }
    Thread.sleep(300);
    sources.forEach(SerialPortSource::close);
    for (VirtualPort port : ports) {
      port.close();
    }
  }

  /** Samples of a stretch that follow the one before as the rate wished for says. */
  private static int fastPart(UnitStream unit, double fromS, double toS) {
    int n = 0;
    for (int i = 1; i < unit.size(); i++) {
      boolean isIn = unit.timeS(i) > fromS && unit.timeS(i) < toS;
      n += isIn && unit.timeS(i) - unit.timeS(i - 1) < 1.5 / RATE_HZ ? 1 : 0;
    }
    return n;
  }

  @Test
  void samplesOfBeforeItWasSetUpAreNotRecorded() throws IOException {
    // Given: a unit without a clock at 10 Hz until its three commands (0.1 s apart) have reached
    // it,
    // then at 200 Hz. Expect: none of the slow ones is recorded: one of them, taken for 5 ms, set
    // the
    // times of the next seconds 95 ms early.
    Path root = folder.resolve("lessons");
    Frames55Encoder encoder = new Frames55Encoder(true);
    try (LiveRecorder recorder = LiveRecorder.start(root, PLAYER, "01")) {
      LiveUnit unit =
          new LiveUnit(
              recorder,
              new Frames55Adapter(),
              Optional.of(BodyPoint.PELVIS),
              new PortPlace(0, true),
              (point, timeS, accel, gyro) -> {});
      unit.opened();
      double[] up = {0, 0, 9.80665};
      double lastSlowS = 0;
      for (int i = 0; i < 2000; i++) {
        double nowS = 100 + 0.005 * i;
        encoder.heard(unit.toSend(nowS));
        lastSlowS = encoder.rateHz() < RATE_HZ ? nowS : lastSlowS;
        if (encoder.sends(i, RATE_HZ)) {
          byte[] frame = encoder.sample(i, 5000L * i, up, new double[] {0.001 * i, 0, 0});
          unit.bytes(frame, frame.length, nowS, nowS);
        }
      }
      unit.ended();
      assertThat(lastSlowS).isGreaterThan(100.1);
    }
    UnitStream read = recorded(root).unit(BodyPoint.PELVIS).orElseThrow();
    assertThat(read.size()).isGreaterThan(1700);
    for (int i = 1; i < read.size(); i++) {
      double steps = (read.gyroRadPerS(0, i) - read.gyroRadPerS(0, i - 1)) / 0.001;
      assertThat(steps).isCloseTo(1, within(1.1)); // counts of the rate are a thousandth
    }
  }

  @Test
  void anOutageDoesNotSlowTheRateThatIsWrittenDown() throws IOException {
    // Given: a unit that tells no rate, 200 Hz, its cable out from second 10 to 14 of 50. Expect:
    // 200 Hz in the recording; by samples over all time it was 184, and check then believed neither
    // the rate nor the clock.
    Path root = folder.resolve("lessons");
    Frames55Encoder encoder = new Frames55Encoder(false);
    try (LiveRecorder recorder = LiveRecorder.start(root, PLAYER, "01")) {
      LiveUnit unit =
          new LiveUnit(
              recorder,
              new Frames55Adapter(),
              Optional.of(BodyPoint.PELVIS),
              new PortPlace(0, true),
              (point, timeS, accel, gyro) -> {});
      for (int i = 0; i < 10_000; i++) {
        double nowS = 100 + 0.005 * i;
        if (i == 2000) {
          unit.gone("unplugged");
          encoder.powerOff();
        } else if (i == 0 || i == 2800) {
          unit.opened();
        }
        boolean isOut = i >= 2000 && i < 2800;
        encoder.heard(isOut ? new byte[0] : unit.toSend(nowS));
        if (!isOut && encoder.sends(i, RATE_HZ)) {
          byte[] frame = encoder.sample(i, 5000L * i, new double[] {0, 0, 9.8}, new double[3]);
          unit.bytes(frame, frame.length, nowS, nowS);
        }
      }
    }
    UnitStream read = recorded(root).unit(BodyPoint.PELVIS).orElseThrow();
    assertThat(read.facts().nominalRateHz()).isEqualTo(200);
  }

  @Test
  void bytesAreSentInOrderEachAfterThePauseOfTheOneBefore() {
    PacedLink link = new PacedLink();
    link.send(new byte[] {1}, 100);
    link.send(new byte[] {2}, 0);
    link.send(new byte[] {3}, 0);
    assertThat(link.due(5.0)).containsExactly(1);
    assertThat(link.due(5.099)).isEmpty();
    assertThat(link.due(5.101)).containsExactly(2);
    link.clear();
    assertThat(link.due(9)).isEmpty();
    link.send(new byte[] {4}, 1000);
    assertThat(link.due(9)).containsExactly(4);
    link.clear();
    link.send(new byte[] {5}, 0);
    assertThat(link.due(9)).containsExactly(5);
  }

  @Test
  void nothingIsSentToAUnitUnlessAPersonAllowsIt() throws IOException {
    try (LiveRecorder recorder = LiveRecorder.start(folder.resolve("x"), PLAYER, "01")) {
      LiveUnit unit = new LiveUnit(recorder, new XImu3Adapter(), Optional.of(BodyPoint.PELVIS));
      unit.opened();
      for (int k = 0; k < 100; k++) {
        assertThat(unit.toSend(5 + 0.1 * k)).isEmpty();
      }
    }
  }

  @Test
  void unitsBehindOnePortAreToldApartAndSetUpByTheirNumber() throws IOException {
    // Given: two units behind a multiplexer, A and B, one port. Expect: each in its own table, each
    // set up behind its own letter.
    Path root = folder.resolve("lessons");
    String line = "%sI,%d,0.0000,0.0000,0.0000,%d.0000,0.0000,0.0000\n";
    try (LiveRecorder recorder = LiveRecorder.start(root, PLAYER, "01")) {
      LiveUnit first = numbered(recorder, 1, BodyPoint.PELVIS);
      LiveUnit second = numbered(recorder, 2, BodyPoint.LEAD_HAND);
      LiveUnit unnumbered = new LiveUnit(recorder, new XImu3Adapter(), Optional.empty());
      SharedPort port = new SharedPort(List.of(first, second, unnumbered));
      port.opened();
      assertThat(port.isUnderstood(1)).isFalse();
      String sent = "";
      for (int k = 0; k < 100; k++) {
        String text =
            String.format(line, "^A", 1_000_000 + 5000 * k, 1)
                + String.format(line, "^B", 9_000_000 + 5000 * k, 2);
        byte[] bytes = text.getBytes(ISO_8859_1);
        port.bytes(bytes, bytes.length, 100 + 0.005 * k, 100);
        sent += new String(port.toSend(100 + 0.05 * k), ISO_8859_1);
      }
      assertThat(port.isUnderstood(101)).isTrue();
      assertThat(sent).contains("^A{\"serial_number\":null}\n").contains("^B{\"apply\":null}\n");
      assertThat(unnumbered.state().trouble()).contains("PORT#1");
    }
    Recording read = recorded(root);
    UnitStream pelvis = read.unit(BodyPoint.PELVIS).orElseThrow();
    UnitStream hand = read.unit(BodyPoint.LEAD_HAND).orElseThrow();
    assertThat(pelvis.size()).isGreaterThan(80);
    assertThat(pelvis.accelMps2(0, pelvis.size() - 1)).isCloseTo(9.80665, within(1e-4));
    assertThat(hand.accelMps2(0, hand.size() - 1)).isCloseTo(2 * 9.80665, within(1e-4));
    // Ranges without a hello: those of the kind, 24 g and 2000 deg/s.
    assertThat(read.unit(BodyPoint.PELVIS).orElseThrow().facts().accelFullScaleMps2())
        .isCloseTo(24 * 9.80665, within(1e-3));
  }

  private static LiveUnit numbered(LiveRecorder recorder, int number, BodyPoint point) {
    SensorAdapter adapter = new XImu3Adapter();
    adapter.choose(UnitOptions.of("", number));
    PortPlace place = new PortPlace(number, true);
    return new LiveUnit(
        recorder, adapter, Optional.of(point), place, (at, timeS, accel, gyro) -> {});
  }
}
