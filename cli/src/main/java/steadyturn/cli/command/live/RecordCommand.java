package steadyturn.cli.command.live;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.live.LiveLesson;
import steadyturn.cli.lesson.PlayerSizes;
import steadyturn.cli.lesson.TeachingChoice;
import steadyturn.cli.output.table.BallAnswer;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.terminal.HangUp;
import steadyturn.fusion.calibrate.CalibrationStore;
import steadyturn.ingest.live.LiveMark;
import steadyturn.ingest.live.LiveRecorder;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.serial.HostTime;
import steadyturn.ingest.serial.SerialPortSource;

/** Records live units into a dataset. */
@Command(name = "record", sortOptions = false)
public final class RecordCommand implements Callable<Integer> {

  private static final long LOOK_EVERY_MS = 500;
  private static final long LAST_WORDS_S = 20;

  @Mixin private Console console;

  @Parameters(index = "0", paramLabel = "DIR")
  private Path root = Path.of("");

  @Parameters(
      index = "1..*",
      arity = "1..*",
      paramLabel = "UNIT",
      converter = UnitChoice.Converter.class)
  private List<UnitChoice> units = List.of();

  @Option(names = "--player", required = true, paramLabel = "LABEL")
  private String player = "";

  @Option(names = "--handed", required = true, paramLabel = "right|left")
  private Handedness handed = Handedness.RIGHT;

  @Option(names = "--lesson", paramLabel = "LABEL")
  private String lesson = LocalDate.now(ZoneId.systemDefault()).toString().replace("-", "");

  @Mixin private PlayerSizes sizes;

  @Mixin private TeachingChoice teachingChoice;

  @Option(names = "--baud", paramLabel = "N")
  private int baud = SerialPortSource.BAUD;

  @Option(names = "--seconds", paramLabel = "S")
  private double lengthS = Double.POSITIVE_INFINITY;

  @Option(names = "--typed")
  private boolean isTyped = Boolean.getBoolean("steadyturn.terminal");

  private final CountDownLatch isEnded = new CountDownLatch(1);

  @Override
  public Integer call() throws IOException {
    if (!RunLabel.isLabel(player) || !RunLabel.isLabel(lesson)) {
      throw console.wrongUsage("--player and --lesson take letters and digits only");
    }
    UnitChoice.requireApart(units, console);
    Teaching teaching = teachingChoice.read();
    Player who = sizes.of(player, handed, console);
    LiveRecorder recorder = LiveRecorder.start(root, who, lesson);
    CountDownLatch isSaid = new CountDownLatch(1);
    Thread atEnd = new Thread(() -> endFromOutside(recorder, isSaid), "end of recording");
    Runtime.getRuntime().addShutdownHook(atEnd);
    LivePorts ports = new LivePorts();
    LocalDateTime zero = recorder.timeOfDay(HostTime.steadyS());
    LiveLesson answered =
        new LiveLesson(
            recorder.label().id(),
            who,
            CalibrationStore.of(root)::applyTo,
            new BallVoice(new BallAnswer(player, teaching), this::say));
    recorder.tellMarks(mark -> answered.mark(mark.since(zero)));
    try {
      ports.open(recorder, units, baud, () -> new LessonFeed(answered, zero));
      if (isTyped) {
        readMarks(recorder);
      }
      console.out().println("recording " + recorder.label().id() + " into " + root);
      console.out().flush();
      watch(recorder, ports);
    } finally {
      ports.close();
      recorder.close();
      answered.close();
    }
    boolean isWell = say(recorder, ports);
    isSaid.countDown();
    return isWell ? Failures.DONE : Failures.FAILED;
  }

  /** Ctrl-C, the end of the terminal, the end of the machine: the command says its last words. */
  private void endFromOutside(LiveRecorder recorder, CountDownLatch isSaid) {
    isEnded.countDown();
    try {
      if (!isSaid.await(LAST_WORDS_S, TimeUnit.SECONDS)) {
        recorder.close();
      }
    } catch (InterruptedException e) {
      recorder.close();
    }
  }

  private void say(List<String> lines) {
    console.status("");
    lines.forEach(console.out()::println);
    console.out().flush();
  }

  /** What is on the disk, and what is not; whether all is well. */
  private boolean say(LiveRecorder recorder, LivePorts ports) {
    ports.show(console, recorder);
    console.status("");
    console.out().println(ports.summary());
    recorder.stopped().ifPresent(console::warn);
    if (recorder.missing() > 0) {
      console.warn(recorder.missing() + " samples or marks were taken but are not on the disk");
    }
    if (recorder.kept() == 0) {
      console.warn("nothing was recorded: no unit sent a sample that could be kept");
    }
    console.out().flush();
    return recorder.stopped().isEmpty()
        && recorder.missing() == 0
        && recorder.kept() > 0
        && ports.nobodyGivenUp();
  }

  private void watch(LiveRecorder recorder, LivePorts ports) {
    double untilS = HostTime.steadyS() + lengthS;
    HangUp terminal = new HangUp();
    try {
      while (recorder.stopped().isEmpty()
          && HostTime.steadyS() < untilS
          && !terminal.isGone()
          && !isEnded.await(LOOK_EVERY_MS, TimeUnit.MILLISECONDS)) {
        ports.show(console, recorder);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void readMarks(LiveRecorder recorder) {
    Thread reader = new Thread(() -> takeLines(recorder), "marks");
    reader.setDaemon(true);
    reader.start();
  }

  private void takeLines(LiveRecorder recorder) {
    try (BufferedReader in =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8))) {
      String line = in.readLine();
      while (line != null && isEnded.getCount() > 0) {
        takeLine(line.strip(), recorder);
        line = in.readLine();
      }
    } catch (IOException e) {
      console.warn("marks can no longer be typed: " + e.getMessage());
    }
  }

  private void takeLine(String line, LiveRecorder recorder) {
    if (line.toLowerCase(Locale.ROOT).equals("quit")) {
      isEnded.countDown();
    } else if (!line.isEmpty()) {
      String[] words = line.split(" ", 3);
      recorder.mark(
          new LiveMark(
              LocalDateTime.now(ZoneId.systemDefault()),
              0,
              words[0],
              words.length > 1 ? words[1] : "",
              words.length > 2 ? words[2] : ""));
    }
  }
}
