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
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.ingest.live.LiveMark;
import steadyturn.ingest.live.LiveRecorder;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.serial.HostTime;
import steadyturn.ingest.serial.SerialPortSource;

/** Records live units into a dataset. */
@Command(
    name = "record",
    description = {
      "Records live units into DIR, which is a whole dataset at every moment.",
      "UNIT is [POINT=]PORT[,ADAPTER]: POINT where it is worn (pelvis, lead_forearm, lead_hand,",
      "club_shaft, thorax; a unit may tell it itself), ADAPTER when it cannot be found out.",
      "While it runs, type a mark and Enter: \"hit 7-iron thin\", \"practice\", \"quiet-stance\";",
      "\"quit\" or Ctrl-C ends the recording."
    },
    sortOptions = false)
public final class RecordCommand implements Callable<Integer> {

  @Mixin private Console console;

  @Parameters(index = "0", paramLabel = "DIR", description = "Dataset folder; made when needed.")
  private Path root = Path.of("");

  @Parameters(
      index = "1..*",
      arity = "1..*",
      paramLabel = "UNIT",
      converter = UnitChoice.Converter.class)
  private List<UnitChoice> units = List.of();

  @Option(names = "--player", required = true, paramLabel = "LABEL")
  private String player = "";

  @Option(
      names = "--handed",
      required = true,
      paramLabel = "right|left",
      description = "The side the player swings from.")
  private Handedness handed = Handedness.RIGHT;

  @Option(names = "--lesson", paramLabel = "LABEL", description = "Default: today's date.")
  private String lesson = LocalDate.now(ZoneId.systemDefault()).toString().replace("-", "");

  @Option(names = "--pelvis-width", paramLabel = "MM", description = "Between the hip bones.")
  private double widthMm;

  @Option(names = "--pelvis-depth", paramLabel = "MM", description = "Front to back.")
  private double depthMm;

  @Option(names = "--stature", paramLabel = "MM", description = "Standing height.")
  private double statureMm;

  @Option(names = "--baud", paramLabel = "N", description = "Default: ${DEFAULT-VALUE}.")
  private int baud = SerialPortSource.BAUD;

  @Option(names = "--seconds", paramLabel = "S", description = "End after so many seconds.")
  private double lengthS = Double.POSITIVE_INFINITY;

  @Option(
      names = "--typed",
      description = "Take typed marks although standard input is no terminal.")
  private boolean isTyped = Boolean.getBoolean("steadyturn.terminal");

  private volatile boolean isEnded;

  @Override
  public Integer call() throws IOException {
    if (!RunLabel.isLabel(player) || !RunLabel.isLabel(lesson)) {
      throw console.wrongUsage("--player and --lesson take letters and digits only");
    }
    LiveRecorder recorder = LiveRecorder.start(root, facts(), lesson);
    LivePorts ports = LivePorts.open(recorder, units, baud);
    Thread atEnd = new Thread(() -> end(ports, recorder), "end of recording");
    Runtime.getRuntime().addShutdownHook(atEnd);
    if (isTyped) {
      readMarks(recorder);
    }
    console.out().println("recording " + recorder.label().id() + " into " + root);
    console.out().flush();
    watch(recorder, ports);
    isEnded = true;
    end(ports, recorder);
    console.out().println(ports.summary());
    return recorder.stopped().isEmpty() ? Failures.DONE : failed(recorder);
  }

  private int failed(LiveRecorder recorder) {
    recorder.stopped().ifPresent(console::warn);
    return Failures.FAILED;
  }

  private Player facts() {
    return new Player(player, handed, size(widthMm), size(depthMm), size(statureMm));
  }

  private static OptionalDouble size(double mm) {
    return mm > 0 ? OptionalDouble.of(mm) : OptionalDouble.empty();
  }

  private void watch(LiveRecorder recorder, LivePorts ports) {
    double untilS = HostTime.steadyS() + lengthS;
    while (!isEnded && recorder.stopped().isEmpty() && HostTime.steadyS() < untilS) {
      try {
        Thread.sleep(500);
      } catch (InterruptedException e) {
        return;
      }
      ports.show(console, recorder.marks());
    }
  }

  private static void end(LivePorts ports, LiveRecorder recorder) {
    ports.close();
    recorder.close();
  }

  private void readMarks(LiveRecorder recorder) {
    Thread reader =
        new Thread(
            () -> {
              try (BufferedReader in =
                  new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8))) {
                String line = in.readLine();
                while (line != null && !isEnded) {
                  takeLine(line.strip(), recorder);
                  line = in.readLine();
                }
              } catch (IOException e) {
                console.warn("marks can no longer be typed: " + e.getMessage());
              }
            },
            "marks");
    reader.setDaemon(true);
    reader.start();
  }

  private void takeLine(String line, LiveRecorder recorder) {
    if (line.toLowerCase(Locale.ROOT).equals("quit")) {
      isEnded = true;
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
