package steadyturn.ingest.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.CountDownLatch;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.ingest.recording.RecordingReader;
import steadyturn.ingest.recording.dataset.Archive;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;
import steadyturn.ingest.sensor.SampleSink;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.serial.HostTime;

/** Every thread of a recording fails in every way; what is said and what is on the disk agree. */
@SuppressWarnings("EnumOrdinal") // a unit a body point, in their order
class ThreadFailuresTest {

  private static final Player PLAYER = Player.unmeasured("mika", Handedness.RIGHT);
  private static final LocalDateTime START = LocalDateTime.of(2026, 4, 1, 10, 0);

  /** The long form is 100 seeds: -Dsteadyturn.seeds=100. */
  private static final int SEEDS = Integer.getInteger("steadyturn.seeds", 8);

  @TempDir private Path folder;

  private static Recording readBack(Path root) {
    return RecordingReader.read(Archive.open(root).sessions().get(0).runs().get(0)).recording();
  }

  private static void waitUntilKept(LiveUnit unit, long samples) throws InterruptedException {
    long untilMs = System.currentTimeMillis() + 10_000;
    while (unit.state().kept() < samples && System.currentTimeMillis() < untilMs) {
      Thread.sleep(10);
    }
  }

  @Test
  void aMarkOfTheYear1600IsLeftOutAndSaidAndCostsNoSample() throws Exception {
    // Given: 1000 samples, a mark dated 1600 (by another process), 1000 samples more. Expect: all
    // 2000 on the disk; one line about the mark; the good mark of today is there.
    LiveRecorder recorder = LiveRecorder.start(folder, PLAYER, "01");
    LiveUnit unit = new LiveUnit(recorder, new FedUnit(n -> {}), Optional.of(BodyPoint.PELVIS));
    FedUnit.feed(unit, 1000, HostTime.steadyS());
    MarkBox.leave(folder, new LiveMark(LocalDateTime.of(1600, 1, 1, 0, 0), 0, "hit", "", ""));
    MarkBox.leave(
        folder, new LiveMark(LocalDateTime.now(ZoneId.systemDefault()), 0, "hit", "7-iron", ""));
    waitUntilKept(unit, 1000);
    FedUnit.feed(unit, 1000, HostTime.steadyS() + 2);
    recorder.close();
    assertThat(readBack(folder).units().get(0).size()).isEqualTo(2000);
    assertThat(recorder.stopped()).isEmpty();
    assertThat(recorder.missing()).isZero();
    assertThat(recorder.news()).singleElement().asString().contains("1600-01-01").contains("left");
    assertThat(readBack(folder).marks()).singleElement().matches(m -> m.club().equals("7-iron"));
  }

  @Test
  void anAdapterThatThrowsOnceCostsItsBlockAndGoesOn() throws Exception {
    // Given: 1000 samples in blocks of ten, sample 505 throws. Expect: 505 to 509 missing, the five
    // before them kept; said once; the unit is there; five bytes skipped.
    LiveRecorder recorder = LiveRecorder.start(folder, PLAYER, "01");
    LiveUnit unit =
        new LiveUnit(
            recorder,
            new FedUnit(
                n -> {
                  if (n == 505) {
                    throw new IllegalStateException("unheard of");
                  }
                }),
            Optional.of(BodyPoint.PELVIS));
    unit.opened();
    FedUnit.feed(unit, 1000, HostTime.steadyS());
    LiveState state = unit.state();
    recorder.close();
    assertThat(state.isThere()).isTrue();
    assertThat(state.failures()).isEqualTo(1);
    assertThat(state.skippedBytes()).isEqualTo(4);
    // 1000 less the one that threw and the four bytes passed over behind it, which the adapter
    // never counted.
    assertThat(readBack(folder).units().get(0).size()).isEqualTo(995);
    assertThat(recorder.news())
        .singleElement()
        .asString()
        .contains("fed failed")
        .contains("unheard");
  }

  @Test
  void anAdapterThatAlwaysThrowsIsGivenUpAndSaidAndNotThere() throws Exception {
    LiveRecorder recorder = LiveRecorder.start(folder, PLAYER, "01");
    LiveUnit bad =
        new LiveUnit(
            recorder,
            new FedUnit(
                n -> {
                  throw new StackOverflowError();
                }),
            Optional.of(BodyPoint.PELVIS));
    LiveUnit good = new LiveUnit(recorder, new FedUnit(n -> {}), Optional.of(BodyPoint.LEAD_HAND));
    bad.opened();
    good.opened();
    double nowS = HostTime.steadyS();
    FedUnit.feed(bad, 1000, nowS);
    FedUnit.feed(good, 1000, nowS);
    recorder.close();
    assertThat(bad.state().isThere()).isFalse();
    assertThat(bad.isGivenUp()).isTrue();
    assertThat(bad.state().trouble()).contains("given up");
    assertThat(good.state().isThere()).isTrue();
    assertThat(String.join(" ", recorder.news())).contains("the unit is given up");
    assertThat(readBack(folder).units()).singleElement().matches(u -> u.size() == 1000);
  }

  @Test
  void aListenerThatThrowsCostsNoSample() throws Exception {
    LiveRecorder recorder = LiveRecorder.start(folder, PLAYER, "01");
    LiveUnit unit =
        new LiveUnit(
            recorder,
            new FedUnit(n -> {}),
            Optional.of(BodyPoint.PELVIS),
            (point, timeS, accel, gyro) -> {
              throw new IllegalStateException("deaf");
            });
    FedUnit.feed(unit, 500, HostTime.steadyS());
    recorder.close();
    assertThat(readBack(folder).units().get(0).size()).isEqualTo(500);
    assertThat(recorder.news()).singleElement().asString().contains("deaf");
  }

  @Test
  void oneBodyPointIsGivenToOneOfManyUnitsThatAskAtOnce() throws Exception {
    // Given: 50 times four threads that ask for the pelvis at one moment. Expect: one table each
    // time. (Looking first and acting then gave two in 24 of 2000 tries.)
    try (LiveRecorder recorder = LiveRecorder.start(folder, PLAYER, "01")) {
      for (int round = 0; round < 4; round++) {
        BodyPoint point = BodyPoint.values()[round];
        List<LiveTrack> given = new ArrayList<>();
        CountDownLatch go = new CountDownLatch(1);
        List<Thread> threads = new ArrayList<>();
        for (int k = 0; k < 8; k++) {
          threads.add(
              new Thread(
                  () -> {
                    try {
                      go.await();
                    } catch (InterruptedException e) {
                      return;
                    }
                    recorder
                        .unit(UnitFacts.plain(point, 100), START)
                        .ifPresent(
                            track -> {
                              synchronized (given) {
                                given.add(track);
                              }
                            });
                  }));
        }
        threads.forEach(Thread::start);
        go.countDown();
        for (Thread thread : threads) {
          thread.join();
        }
        assertThat(given).hasSize(1);
      }
    }
  }

  @Test
  void aSecondUnitAtABodyPointIsRefusedAndSaidAndSpoilsNothing() throws Exception {
    // Given: two units that both say in their hello that they are worn at the pelvis, and one that
    // changes its mind. Expect: the table holds the first one's samples only; the others say why.
    LiveRecorder recorder = LiveRecorder.start(folder, PLAYER, "01");
    Named first = new Named("pelvis", "A-1");
    Named second = new Named("pelvis", "B-2");
    LiveUnit one = new LiveUnit(recorder, first, Optional.empty());
    LiveUnit two = new LiveUnit(recorder, second, Optional.empty());
    double nowS = HostTime.steadyS();
    FedUnit.feed(one, 200, nowS);
    FedUnit.feed(two, 200, nowS);
    first.says = FedUnit.hello("lead_hand", "A-1");
    FedUnit.feed(one, 200, nowS + 1);
    LiveState moved = one.state();
    first.says = FedUnit.hello("pelvis", "C-3");
    FedUnit.feed(one, 200, nowS + 2);
    LiveState swapped = one.state();
    recorder.close();
    assertThat(two.state().trouble()).contains("where another unit is worn");
    assertThat(two.state().samples()).isZero();
    assertThat(moved.trouble()).contains("at another point now");
    assertThat(swapped.trouble()).contains("is unit C-3 now, not A-1");
    UnitStream read = readBack(folder).units().get(0);
    assertThat(read.size()).isEqualTo(200);
    assertThat(read.facts().serialNumber()).isEqualTo("A-1");
    try (var files = Files.list(folder.resolve("sub-mika/ses-01/motion"))) {
      assertThat(files.map(f -> f.getFileName().toString()))
          .allMatch(name -> name.contains("tracksys-pelvis"));
    }
  }

  /** A fed unit with a hello that can change. */
  private static final class Named implements SensorAdapter {
    private final FedUnit fed = new FedUnit(n -> {});
    private volatile steadyturn.ingest.sensor.UnitHello says;

    Named(String name, String serialNumber) {
      says = FedUnit.hello(name, serialNumber);
    }

    @Override
    public String name() {
      return "named";
    }

    @Override
    public void read(ByteBuffer bytes, SampleSink sink) {
      sink.hello(says);
      fed.read(bytes, sink);
    }
  }

  @Test
  void aDiskThatBreaksInTheMiddleOfABlockLeavesWholeLinesAndTrueCounts() throws Exception {
    // Given: the third block of a unit breaks half-way, and the half cannot be taken off again.
    // Expect: the recording ends and says so; what is read is what is said to be kept; the other
    // unit's block of that moment is kept.
    BadDisk disk = new BadDisk();
    disk.isDead = true;
    LiveRecorder recorder = LiveRecorder.start(folder, PLAYER, "01", disk);
    LiveUnit unit = new LiveUnit(recorder, new FedUnit(n -> {}), Optional.of(BodyPoint.PELVIS));
    double nowS = HostTime.steadyS();
    FedUnit.feed(unit, 500, nowS);
    waitUntilKept(unit, 500);
    disk.goodBlocks.set(0);
    FedUnit.feed(unit, 500, nowS + 1);
    recorder.close();
    assertThat(recorder.stopped().orElseThrow()).contains("No space left on device");
    assertThat(recorder.kept()).isEqualTo(500);
    assertThat(recorder.missing()).isEqualTo(500);
    // Half of 500 lines of one length lie behind the good ones; the last of them is cut in two.
    int read = readBack(folder).units().get(0).size();
    assertThat(read).isBetween(500, 751);
  }

  @Test
  void whateverThreadFailsAtWhateverMomentWhatIsSaidIsTrue() throws Exception {
    for (int seed = 1; seed <= SEEDS; seed++) {
      tryOnce(folder.resolve("seed" + seed), seed);
    }
  }

  /**
   * Given: three units in threads of their own, fed for half a second, and one failure at a seeded
   * moment: an adapter once or for ever, a listener, the disk in the middle of a block, the
   * recorder's thread itself, a mark that cannot be. Expect: nothing comes out of a thread; every
   * table holds exactly what is said to be kept, in order; what is missing is said; a unit that is
   * not read is not there.
   */
  private void tryOnce(Path root, int seed) throws Exception {
    Random random = new Random(seed);
    int kind = random.nextInt(6);
    int at = 20 + random.nextInt(200);
    BadDisk disk = new BadDisk();
    LiveRecorder recorder = LiveRecorder.start(root, PLAYER, "01", disk);
    List<LiveUnit> units = new ArrayList<>();
    List<Thread> threads = new ArrayList<>();
    List<Throwable> escaped = new ArrayList<>();
    for (int k = 0; k < 3; k++) {
      boolean isBad = k == seed % 3;
      LiveUnit unit =
          new LiveUnit(
              recorder,
              new FedUnit(
                  n -> {
                    boolean once = kind == 0 && n == at;
                    if (isBad && (once || (kind == 1 && n >= at))) {
                      throw new IllegalStateException("adapter, seed " + seed);
                    }
                  }),
              Optional.of(BodyPoint.values()[k]),
              (point, timeS, accel, gyro) -> {
                if (isBad && kind == 2) {
                  throw new IllegalStateException("listener, seed " + seed);
                }
              });
      unit.opened();
      units.add(unit);
      Thread thread = new Thread(() -> play(unit));
      thread.setUncaughtExceptionHandler((t, e) -> escaped.add(e));
      threads.add(thread);
    }
    threads.forEach(Thread::start);
    Thread.sleep(at);
    if (kind == 3) {
      disk.isDead = random.nextBoolean();
      disk.goodBlocks.set(random.nextInt(3));
    } else if (kind == 4) {
      disk.surprise = new IllegalStateException("recorder, seed " + seed);
    } else if (kind == 5) {
      MarkBox.leave(root, new LiveMark(LocalDateTime.MIN, 0, "hit", "", "seed " + seed));
    }
    for (Thread thread : threads) {
      thread.join();
    }
    recorder.close();
    check(root, recorder, units, kind, disk.isDead, "seed " + seed + ", kind " + kind);
    assertThat(escaped).as("seed " + seed).isEmpty();
  }

  private static void play(LiveUnit unit) {
    byte[] block = new byte[FedUnit.A_BLOCK];
    double fromS = HostTime.steadyS();
    for (int k = 0; k < 60; k++) {
      // Times run faster than the host's, so that an adapter can fail for a second.
      unit.bytes(block, block.length, fromS + k * 0.02, HostTime.wallS());
      try {
        Thread.sleep(8);
      } catch (InterruptedException e) {
        return;
      }
    }
  }

  private static void check(
      Path root, LiveRecorder recorder, List<LiveUnit> units, int kind, boolean isDead, String what)
      throws IOException {
    long taken = units.stream().mapToLong(u -> u.state().samples()).sum();
    long kept = units.stream().mapToLong(u -> u.state().kept()).sum();
    assertThat(recorder.kept()).as(what).isEqualTo(kept);
    assertThat(recorder.missing()).as(what).isEqualTo(taken - kept);
    assertThat(recorder.stopped().isPresent()).as(what).isEqualTo(kind == 3 || kind == 4);
    if (recorder.stopped().isEmpty()) {
      assertThat(taken).as(what).isEqualTo(kept);
    }
    boolean isTold = kind == 3 || kind == 4 || !recorder.news().isEmpty();
    assertThat(isTold).as(what).isTrue();
    for (LiveUnit unit : units) {
      assertThat(unit.state().isThere()).as(what).isEqualTo(!unit.isGivenUp());
    }
    if (kept == 0) {
      return;
    }
    var read = readBack(root).units().stream().collect(Collectors.toMap(UnitStream::point, u -> u));
    for (LiveUnit unit : units) {
      LiveState state = unit.state();
      UnitStream table = read.get(state.point().orElseThrow());
      long size = table == null ? 0 : table.size();
      if (isDead) {
        assertThat(size).as(what).isGreaterThanOrEqualTo(state.kept());
      } else {
        assertThat(size).as(what).isEqualTo(state.kept());
      }
      for (int i = 1; table != null && i < size; i++) {
        int step = MadeStream.numberOf(table, i) - MadeStream.numberOf(table, i - 1);
        assertThat(step).as(what).isBetween(1, kind == 0 ? FedUnit.A_BLOCK : 1);
      }
    }
  }
}
