package steadyturn.cli.command.lab;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import steadyturn.analysis.lab.LessonSimulator;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.analysis.lab.LongLesson;
import steadyturn.analysis.lab.SyntheticLesson;
import steadyturn.analysis.lab.body.PlayerStyle;
import steadyturn.analysis.lab.unit.UnitGrade;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.ingest.recording.RecordingReader;
import steadyturn.ingest.recording.dataset.Archive;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.recording.write.RecordingWriter;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Recording;

/** Writes a lesson that never happened, with the truth of every swing beside it. */
@Command(name = "simulate", sortOptions = false)
public final class SimulateCommand implements Callable<Integer> {

  /** Every simulated lesson happens at this time, so that the files are the same every time. */
  private static final LocalDateTime START = LocalDateTime.of(2000, 1, 1, 10, 0);

  /** Of one unit, 30 MB in memory. */
  private static final int SAMPLES_AT_A_TIME = 500_000;

  enum Style {
    MIXED,
    STEADY_TURNER,
    SLIDER,
    EARLY_RELEASE,
    LATE_RELEASE,
    FAST_TEMPO;

    PlayerStyle style() {
      return switch (this) {
        case MIXED -> PlayerStyle.mixed();
        case STEADY_TURNER -> PlayerStyle.steadyTurner();
        case SLIDER -> PlayerStyle.slider();
        case EARLY_RELEASE -> PlayerStyle.earlyRelease();
        case LATE_RELEASE -> PlayerStyle.lateRelease();
        case FAST_TEMPO -> PlayerStyle.fastTempo();
      };
    }

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  @Mixin private Console console;

  @Mixin private SerialPlay serial;

  @Option(names = "--out", paramLabel = "DIR")
  private Path out = Path.of("");

  @Option(names = "--swings", paramLabel = "N")
  private int swings = 10;

  @Option(names = "--practice", paramLabel = "N")
  private int practice;

  @Option(names = "--waggles", paramLabel = "N")
  private int waggles = 2;

  @Option(names = "--handed", paramLabel = "right|left")
  private Handedness handed = Handedness.RIGHT;

  @Option(names = "--seed", paramLabel = "N")
  private long seed = 1;

  @Option(names = "--club", paramLabel = "CLUB", split = ",")
  private List<String> clubs = List.of("7-iron");

  @Option(names = "--style", paramLabel = "STYLE")
  private Style style = Style.MIXED;

  @Option(names = "--rate", paramLabel = "HZ")
  private double rateHz = 500;

  @Option(names = "--unit", paramLabel = "GRADE")
  private UnitGrade unit = UnitGrade.CALIBRATED;

  @Option(names = "--cameras")
  private boolean cameras;

  @Option(names = "--player", paramLabel = "LABEL")
  private String player = "p01";

  @Option(names = "--lesson", paramLabel = "LABEL")
  private String lesson = "simulated";

  @Override
  public Integer call() throws IOException {
    if (swings < 0 || practice < 0 || swings + practice == 0) {
      throw console.wrongUsage("--swings and --practice must give at least one swing");
    }
    if (!RunLabel.isLabel(player) || !RunLabel.isLabel(lesson)) {
      throw console.wrongUsage("--player and --lesson take letters and digits only");
    }
    if (serial.isAsked()) {
      return play();
    }
    if (out.toString().isEmpty()) {
      throw console.wrongUsage("--out or --serial is needed");
    }
    LongLesson simulated = LessonSimulator.inPieces(spec(), seed, SAMPLES_AT_A_TIME);
    RunLabel label = RunLabel.lesson(player, lesson);
    double lengthS =
        RecordingWriter.into(out, "Simulated golf lessons")
            .write(simulated.recording(), simulated.units(), label, START);
    TruthFiles.write(simulated.truth(), label, out, k -> 0);
    if (cameras) {
      TruthFiles.writeMarkers(simulated.truth(), label, out, lengthS);
    }
    console
        .out()
        .printf(
            Locale.ROOT,
            "%s: %d hits and %d practice swings, %.0f s, seed %d; truth in %s%n",
            label.id(),
            swings,
            practice,
            lengthS,
            seed,
            out.resolve("derivatives").resolve("truth"));
    return Failures.DONE;
  }

  /**
   * Plays a recorded lesson, or a simulated one whose truth is written where {@code --out} says.
   */
  private int play() throws IOException {
    if (!serial.from().toString().isEmpty()) {
      Recording recorded =
          RecordingReader.read(Archive.open(serial.from()).sessions().get(0).runs().get(0))
              .recording();
      return serial.play(recorded, seed, console);
    }
    SyntheticLesson simulated = LessonSimulator.simulate(spec(), seed);
    if (!out.toString().isEmpty()) {
      TruthFiles.write(simulated.truth(), RunLabel.lesson(player, lesson), out, serial::skewPpm);
    }
    return serial.play(simulated.recording(), seed, console);
  }

  private LessonSpec spec() {
    return LessonSpec.standard()
        .withHits(swings)
        .withPractices(practice)
        .withWaggles(waggles)
        .withHanded(handed)
        .withClubs(clubs)
        .withPlayer(style.style())
        .withPlayerId(player)
        .withRateHz(rateHz)
        .withUnitGrade(unit);
  }
}
