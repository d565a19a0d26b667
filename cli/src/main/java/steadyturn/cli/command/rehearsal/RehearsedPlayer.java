package steadyturn.cli.command.rehearsal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import steadyturn.analysis.lab.LessonSimulator;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.analysis.lab.body.PlayerStyle;
import steadyturn.ingest.lab.VirtualPort;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;
import steadyturn.ingest.serial.HostTime;

/** A virtual player with three units on, who waits until something is wanted. */
public final class RehearsedPlayer implements AutoCloseable {

  private static final double RATE_HZ = 500;

  /** For whoever measures: how fast the units send, and whether there are five of them. */
  private static final String RATE = "steadyturn.rehearsal.hz";

  private static final String ALL_UNITS = "steadyturn.rehearsal.all-units";
  private static final int BALLS = 12;

  /** How a hand moves a unit, and how much a restless player moves all of them. */
  private static final double MOVED_S = 2.5;

  private static final double RESTLESS_S = 3;
  private static final double RESTLESS = 0.25;

  private static final double SLIP_RAD = Math.toRadians(35);

  private static final int MOST_SHOWN = 4_000_000;

  private final Recording lesson;
  private final MovementCourse course;
  private final List<RehearsedUnit> units = new ArrayList<>();
  private final List<Path> paths = new ArrayList<>();
  private int[] shown = new int[1 << 12];
  private int known;

  private RehearsedPlayer(Recording lesson, double rateHz) {
    this.lesson = lesson;
    course = new MovementCourse(lesson, rateHz);
  }

  /**
   * Makes a player up.
   *
   * @param folder where the ports lie; made where it is not there
   */
  public static RehearsedPlayer in(Path folder, Handedness handed, long seed) throws IOException {
    double rateHz = Double.parseDouble(System.getProperty(RATE, Double.toString(RATE_HZ)));
    LessonSpec spec =
        LessonSpec.standard()
            .withHanded(handed)
            .withPlayer(PlayerStyle.slider())
            .withHits(BALLS)
            .withPractices(0)
            .withWaggles(1)
            .withWalking(false)
            .withRateHz(rateHz)
            .withLossPct(0)
            .withJitterS(0)
            .withClockSkewPpm(0)
            .withUnitStartSpreadS(0)
            .withUnitStartErrorS(0);
    Files.createDirectories(folder);
    if (Boolean.getBoolean(ALL_UNITS)) {
      spec = spec.withUnits(EnumSet.allOf(BodyPoint.class));
    }
    Recording lesson = LessonSimulator.simulate(spec, seed).recording();
    RehearsedPlayer player = new RehearsedPlayer(lesson, rateHz);
    player.begin(folder);
    return player;
  }

  private void begin(Path folder) throws IOException {
    Mark rest = course.first(MarkWord.TABLE_REST.word()).orElseThrow();
    for (UnitStream unit : lesson.units()) {
      Path path = folder.resolve("unit-" + (units.size() + 1));
      Files.deleteIfExists(path); // what a program that was killed left
      Files.deleteIfExists(Path.of(path + ".unit"));
      paths.add(path);
      units.add(new RehearsedUnit(unit, VirtualPort.at(path), this::shown, mean(unit, rest)));
    }
    double startS = HostTime.steadyS();
    units.forEach(unit -> unit.begin(startS));
  }

  private static double[] mean(UnitStream unit, Mark rest) {
    int from = unit.indexAt(rest.onsetS());
    int to = Math.max(from + 1, unit.indexAt(rest.endS()));
    double[] mean = new double[3];
    for (int axis = 0; axis < 3; axis++) {
      for (int i = from; i < to; i++) {
        mean[axis] += unit.gyroRadPerS(axis, i) / (to - from);
      }
    }
    return mean;
  }

  /** What all units show at a sample: the first of them that comes there decides it. */
  private synchronized int shown(int tick) {
    if (tick >= MOST_SHOWN) {
      return shown[MOST_SHOWN - 1];
    }
    while (known <= tick) {
      if (known == shown.length) {
        shown = Arrays.copyOf(shown, 2 * shown.length);
      }
      shown[known++] = course.next();
    }
    return shown[tick];
  }

  /** Where the units are. */
  public List<Path> ports() {
    return List.copyOf(paths);
  }

  /** The player's own facts. */
  public Player facts() {
    return lesson.player();
  }

  /** The player does the next movement of a kind: a wear step, or {@code hit}. */
  public void wish(MarkWord movement) {
    course.wish(movement.word());
  }

  /** Whether the player does something, or will at once. */
  public boolean isBusy() {
    return course.isBusy();
  }

  /** Somebody takes a unit and moves it. */
  public void move(int unit) {
    units.get(unit).shake(MOVED_S, 1);
  }

  /** The player does not keep still. */
  public void beRestless() {
    units.forEach(unit -> unit.shake(RESTLESS_S, RESTLESS));
  }

  /** A unit slips on the body and stays so. */
  public void slip(int unit) {
    units.get(unit).slip(SLIP_RAD);
  }

  /** A cable comes out, and is put in again after so long. */
  public void pull(int unit, double lengthS) {
    units.get(unit).pull(lengthS);
  }

  @Override
  public void close() throws IOException {
    for (RehearsedUnit unit : units) {
      unit.stop();
    }
  }
}
