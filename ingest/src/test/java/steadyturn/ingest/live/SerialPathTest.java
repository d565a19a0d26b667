package steadyturn.ingest.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.ingest.lab.BinaryFrameEncoder;
import steadyturn.ingest.lab.TextLineEncoder;
import steadyturn.ingest.lab.UnitFaults;
import steadyturn.ingest.lab.VirtualPort;
import steadyturn.ingest.lab.VirtualUnit;
import steadyturn.ingest.recording.RecordingReader;
import steadyturn.ingest.recording.dataset.Archive;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;
import steadyturn.ingest.sensor.frame.BinaryFrameAdapter;
import steadyturn.ingest.sensor.frame.TextLineAdapter;
import steadyturn.ingest.serial.HostTime;
import steadyturn.ingest.serial.PortListener;
import steadyturn.ingest.serial.SerialPortSource;

/** The whole way over real pseudo-terminals: virtual units, ports, adapters, clocks, recorder. */
class SerialPathTest {

  private static final Player PLAYER = Player.unmeasured("mika", Handedness.RIGHT);

  @TempDir private Path folder;

  @BeforeEach
  void needsSocat() {
    Socat.require();
  }

  private Recording recorded(Path root) {
    return RecordingReader.read(Archive.open(root).sessions().get(0).runs().get(0)).recording();
  }

  private static LiveState waitForEnd(LiveUnit unit, VirtualUnit player, Thread playing)
      throws InterruptedException {
    playing.join(30_000);
    assertThat(playing.isAlive()).as("still playing after 30 s").isFalse();
    long untilMs = System.currentTimeMillis() + 800;
    while (unit.state().samples() < player.due() && System.currentTimeMillis() < untilMs) {
      Thread.sleep(20);
    }
    return unit.state();
  }

  @Test
  void twoUnitsOfTwoProtocolsArriveWholeWithTheirFacts() throws Exception {
    Path root = folder.resolve("lessons");
    Path pelvisPath = folder.resolve("p");
    Path handPath = folder.resolve("h");
    UnitStream pelvis = MadeStream.numbered(BodyPoint.PELVIS, 500, 1500);
    UnitStream hand = MadeStream.numbered(BodyPoint.LEAD_HAND, 200, 600).shifted(0.4);
    try (VirtualPort pelvisPort = VirtualPort.at(pelvisPath);
        VirtualPort handPort = VirtualPort.at(handPath);
        LiveRecorder recorder = LiveRecorder.start(root, PLAYER, "01")) {
      LiveUnit livePelvis = new LiveUnit(recorder, new BinaryFrameAdapter(), Optional.empty());
      LiveUnit liveHand = new LiveUnit(recorder, new TextLineAdapter(), Optional.empty());
      VirtualUnit playPelvis =
          new VirtualUnit(
              pelvis, new BinaryFrameEncoder(16, 2000), pelvisPort, UnitFaults.NONE, 0, 1, 1);
      VirtualUnit playHand =
          new VirtualUnit(hand, new TextLineEncoder(), handPort, UnitFaults.NONE, 0, 1, 2);
      try (SerialPortSource a =
              SerialPortSource.open(pelvisPath.toString(), List.of(921_600), livePelvis);
          SerialPortSource b =
              SerialPortSource.open(handPath.toString(), List.of(921_600), liveHand)) {
        Thread.sleep(300);
        double startS = HostTime.steadyS();
        Thread first = new Thread(() -> playPelvis.run(startS));
        Thread second = new Thread(() -> playHand.run(startS));
        first.start();
        second.start();
        assertThat(waitForEnd(livePelvis, playPelvis, first).lost()).isZero();
        assertThat(waitForEnd(liveHand, playHand, second).skippedBytes()).isZero();
        assertThat(a.path()).isNotEqualTo(b.path());
      }
    }
    Recording read = recorded(root);
    UnitStream readPelvis = read.unit(BodyPoint.PELVIS).orElseThrow();
    UnitStream readHand = read.unit(BodyPoint.LEAD_HAND).orElseThrow();
    assertThat(readPelvis.size()).isEqualTo(1500);
    assertThat(readHand.size()).isEqualTo(600);
    assertThat(MadeStream.numberOf(readPelvis, 1499)).isEqualTo(1499);
    assertThat(readPelvis.facts().nominalRateHz()).isEqualTo(500);
    assertThat(readHand.facts().serialNumber()).isEqualTo("V-7");
    // The hand's unit starts 0.4 s later, as in the recording that is played; the start times are
    // right to the way's latency, which is some ms. Within 0.1 s on a busy machine.
    assertThat(readHand.timeS(0)).isCloseTo(0.4, within(0.1));
  }

  private static Thread play(VirtualUnit unit) {
    Thread thread = new Thread(unit, "virtual unit");
    thread.start();
    return thread;
  }

  @Test
  void aUnitPluggedOutAndInAgainGoesOnInTheSameRecordingWithAGap() throws Exception {
    Path root = folder.resolve("lessons");
    Path path = folder.resolve("p");
    UnitStream pelvis = MadeStream.numbered(BodyPoint.PELVIS, 200, 1000);
    UnitFaults unplugs = new UnitFaults(0, 0, 0, 0, 0, List.of(new UnitFaults.Stretch(1.5, 2.5)));
    try (VirtualPort port = VirtualPort.at(path);
        LiveRecorder recorder = LiveRecorder.start(root, PLAYER, "01")) {
      List<Double> heardS = new ArrayList<>();
      LiveUnit live =
          new LiveUnit(
              recorder,
              new BinaryFrameAdapter(),
              Optional.empty(),
              (point, timeS, accel, gyro) -> heardS.add(timeS));
      VirtualUnit player =
          new VirtualUnit(pelvis, new BinaryFrameEncoder(16, 2000), port, unplugs, 0, 1, 1);
      try (SerialPortSource source =
          SerialPortSource.open(path.toString(), List.of(921_600), live)) {
        Thread.sleep(300);
        Thread playing = play(player);
        LiveState state = waitForEnd(live, player, playing);
        assertThat(state.unplugged()).isEqualTo(1);
        assertThat(heardS).hasSize((int) state.samples());
        // Five seconds were played. Within 0.2 s: the start of the listening is the host's.
        double lengthS = heardS.get(heardS.size() - 1) - heardS.get(0);
        assertThat(lengthS).isCloseTo(4.995, within(0.2));
        assertThat(source.path()).isEqualTo(path.toString());
      }
    }
    UnitStream read = recorded(root).units().get(0);
    List<Double> stepsS = new ArrayList<>();
    for (int i = 1; i < read.size(); i++) {
      stepsS.add(read.timeS(i) - read.timeS(i - 1));
      // Every sample lies where the unit's clock put it, before and after the gap; within 2 us: the
      // clock counts microseconds and the table is rounded to them.
      int number = MadeStream.numberOf(read, i) - MadeStream.numberOf(read, 0);
      assertThat(read.timeS(i) - read.timeS(0)).isCloseTo(number / 200.0, within(2e-6));
    }
    assertThat(stepsS.stream().filter(s -> s > 0.9).count()).isEqualTo(1);
  }

  @Test
  void noiseDamageDropsAndBurstsCostTheirSamplesOnlyAndInventNone() throws Exception {
    // Given: 1500 samples at 500 Hz; 2 % dropped, 2 % with a flipped bit, 2 % followed by noise,
    // bytes
    // held back up to 40 ms. Expect: some 4 % missing; noise may draw in the frame behind it, so up
    // to
    // 8 %; nothing that was not sent.
    Path root = folder.resolve("lessons");
    Path path = folder.resolve("p");
    UnitStream pelvis = MadeStream.numbered(BodyPoint.PELVIS, 500, 1500);
    UnitFaults faults = new UnitFaults(2, 2, 2, 0.04, 40, List.of());
    LiveState state;
    try (VirtualPort port = VirtualPort.at(path);
        LiveRecorder recorder = LiveRecorder.start(root, PLAYER, "01")) {
      LiveUnit live = new LiveUnit(recorder, new BinaryFrameAdapter(), Optional.empty());
      VirtualUnit player =
          new VirtualUnit(pelvis, new BinaryFrameEncoder(16, 2000), port, faults, 0, 1, 9);
      try (SerialPortSource source =
          SerialPortSource.open(path.toString(), List.of(921_600), live)) {
        Thread.sleep(300);
        state = waitForEnd(live, player, play(player));
        assertThat(source.path()).isEqualTo(path.toString());
      }
    }
    UnitStream read = recorded(root).units().get(0);
    for (int i = 1; i < read.size(); i++) {
      int number = MadeStream.numberOf(read, i) - MadeStream.numberOf(read, 0);
      double expectS = number / 500.0 / (1 + 40e-6);
      assertThat(read.timeS(i) - read.timeS(0)).isCloseTo(expectS, within(2e-6));
    }
    assertThat(1500 - read.size()).isBetween(30, 120);
    assertThat(state.lost()).isCloseTo(1500 - read.size(), within(3L));
    assertThat(state.skippedBytes()).isPositive();
    assertThat(state.restarts()).isZero();
  }

  @Test
  void aPortThatIsNotThereIsToldOnceAndTriedAgain() throws Exception {
    List<String> told = new ArrayList<>();
    PortListener listener =
        new PortListener() {
          @Override
          public void bytes(byte[] block, int count, double steadyS, double wallS) {}

          @Override
          public void gone(String why) {
            told.add(why);
          }
        };
    try (SerialPortSource source =
        SerialPortSource.open(folder.resolve("none").toString(), List.of(9600), listener)) {
      Thread.sleep(600);
      assertThat(source.path()).endsWith("none");
    }
    assertThat(told).containsExactly("does not exist");
  }

  @Test
  void aVirtualPortIsNotPutWhereSomethingIs() throws IOException {
    Path taken = Files.createFile(folder.resolve("taken"));
    org.assertj.core.api.Assertions.assertThatThrownBy(() -> VirtualPort.at(taken))
        .hasMessageContaining("exists already");
  }
}
