package steadyturn.cli.command.lab;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import org.apache.commons.math3.random.RandomGenerator;
import steadyturn.analysis.lab.study.SentLesson;
import steadyturn.cli.terminal.Failures;
import steadyturn.ingest.lab.Speech;
import steadyturn.ingest.lab.UnitFaults;
import steadyturn.ingest.lab.VirtualPort;
import steadyturn.ingest.lab.VirtualUnit;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;
import steadyturn.ingest.serial.HostTime;

/**
 * A simulated lesson as it comes at the mat: its units at virtual serial ports, {@code record} in a
 * process of its own, and its marks typed there.
 *
 * @param speech what the units speak; those that must be set up are switched on before the lesson,
 *     and their cable comes out once
 * @param pace 1 for real time; at another one the recording process sees time pass as fast
 */
public record MatLesson(double pace, Speech speech) {

  private static final String PROGRAM = "steadyturn.cli.Main";

  /** What units and typing do, s: starts apart, clocks off, bytes late, and the time to begin. */
  private static final double LATEST_START_S = 2;

  private static final double SKEW_PPM = 50;
  private static final double JITTER_S = 0.02;
  private static final double BEGIN_S = 120;

  private record Typed(double atS, String line) {}

  /** Records it into a folder; what the command said is left beside it. */
  public void record(Recording lesson, RandomGenerator draw, Path folder) throws IOException {
    Files.createDirectories(folder.getParent());
    List<Path> paths = new ArrayList<>();
    List<VirtualPort> ports = new ArrayList<>();
    List<VirtualUnit> units = new ArrayList<>();
    for (UnitStream unit : lesson.units()) {
      Path path = Path.of(folder + "." + unit.point().tracksysLabel());
      paths.add(path);
      ports.add(VirtualPort.at(path));
      units.add(virtual(lesson, unit, draw, ports.get(ports.size() - 1)));
    }
    Path said = Path.of(folder + ".txt");
    Process process = begin(lesson, folder, paths, said);
    try (PrintWriter keyboard =
        new PrintWriter(process.getOutputStream(), true, StandardCharsets.UTF_8)) {
      waitFor(said);
      double startS = HostTime.steadyS();
      List<Thread> threads = units.stream().map(u -> new Thread(() -> u.run(startS))).toList();
      threads.forEach(Thread::start);
      for (Typed typed : typed(lesson, draw)) {
        pauseUntil(startS + (typed.atS + beforeS()) / pace);
        keyboard.println(typed.line);
      }
      for (Thread thread : threads) {
        thread.join();
      }
      pauseUntil(HostTime.steadyS() + 1);
      keyboard.println("quit");
      if (!process.waitFor(60, TimeUnit.SECONDS) || process.exitValue() != Failures.DONE) {
        throw new IOException("the recording failed: " + said);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      process.destroy();
      for (VirtualPort port : ports) {
        port.close();
      }
    }
  }

  private double beforeS() {
    return speech.isSetUp() ? SentLesson.BEFORE_S : 0;
  }

  private VirtualUnit virtual(
      Recording lesson, UnitStream unit, RandomGenerator draw, VirtualPort port) {
    double skewPpm = SKEW_PPM * (2 * draw.nextDouble() - 1);
    double lateS = unit.point() == BodyPoint.PELVIS ? 0 : LATEST_START_S * draw.nextDouble();
    UnitStream sent =
        speech.isSetUp()
            ? SentLesson.lyingBefore(unit)
            : unit.between(unit.timeS(0) + lateS, Double.POSITIVE_INFINITY);
    List<UnitFaults.Stretch> outs =
        speech.isSetUp()
            ? SentLesson.unplugged(lesson, unit).stream().map(s -> s.later(beforeS())).toList()
            : List.of();
    UnitFaults faults = new UnitFaults(0, 0, 0, JITTER_S / pace, skewPpm, outs);
    return new VirtualUnit(sent, speech.encoder(), port, faults, -beforeS(), pace, draw.nextInt());
  }

  private Process begin(Recording lesson, Path folder, List<Path> ports, Path said)
      throws IOException {
    Player player = lesson.player();
    List<String> line = new ArrayList<>();
    line.add(ProcessHandle.current().info().command().orElse("java"));
    line.addAll(
        List.of("-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-Dsteadyturn.pace=" + pace));
    line.addAll(List.of("-cp", System.getProperty("java.class.path"), PROGRAM, "record"));
    line.addAll(List.of("--typed", "--player", player.id(), "--lesson", "1"));
    line.addAll(List.of("--handed", player.handed().word()));
    size(line, "--pelvis-width", player.pelvisWidthMm());
    size(line, "--pelvis-depth", player.pelvisDepthMm());
    size(line, "--stature", player.statureMm());
    size(line, "--worn-depth", player.wornDepthMm());
    line.add(folder.toString());
    for (int k = 0; k < ports.size(); k++) {
      UnitStream unit = lesson.units().get(k);
      String at = unit.point().trackedPoint() + "=" + ports.get(k);
      line.add(
          speech.isSetUp()
              ? at + "," + speech.words(unit.facts().nominalRateHz())
              : ports.get(k).toString());
    }
    if (speech.isSetUp()) {
      line.add("--configure");
    }
    return new ProcessBuilder(line).redirectErrorStream(true).redirectOutput(said.toFile()).start();
  }

  private static void size(List<String> line, String option, OptionalDouble mm) {
    mm.ifPresent(size -> line.addAll(List.of(option, Double.toString(size))));
  }

  private static void waitFor(Path said) throws IOException {
    double untilS = HostTime.steadyS() + BEGIN_S;
    while (!Files.readString(said).contains("recording ")) {
      if (HostTime.steadyS() > untilS) {
        throw new IOException("nothing was recorded: " + said);
      }
      HostTime.pause(50);
    }
    HostTime.pause(1000); // the ports are opened
  }

  private static void pauseUntil(double steadyS) {
    HostTime.pause(Math.max(0, Math.round(1000 * (steadyS - HostTime.steadyS()))));
  }

  /** Steps up to half a second early, swings one to three seconds after they are over. */
  private static List<Typed> typed(Recording lesson, RandomGenerator draw) {
    List<Typed> typed = new ArrayList<>();
    for (Mark mark : lesson.marks()) {
      boolean isStep = MarkWord.of(mark.trialType()).filter(MarkWord::isStep).isPresent();
      String club = mark.club().contains(" ") ? '"' + mark.club() + '"' : mark.club();
      typed.add(
          isStep
              ? new Typed(mark.onsetS() - 0.5 * draw.nextDouble(), mark.trialType())
              : new Typed(mark.endS() + 1 + 2 * draw.nextDouble(), mark.trialType() + " " + club));
    }
    typed.sort(Comparator.comparingDouble(Typed::atS));
    return typed;
  }
}
