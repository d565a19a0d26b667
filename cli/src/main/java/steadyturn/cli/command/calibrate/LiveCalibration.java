package steadyturn.cli.command.calibrate;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import steadyturn.cli.command.live.PortOptions;
import steadyturn.cli.command.live.UnitChoice;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.words.Words;
import steadyturn.fusion.calibrate.CalibrationException;
import steadyturn.fusion.calibrate.GuidedStep;
import steadyturn.ingest.recording.dataset.SessionRun;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.UnitStream;
import steadyturn.ingest.serial.HostTime;

/** Leads a person through the steps with a live unit; what comes in is a recording first. */
final class LiveCalibration {

  /** Where the recordings of units on a table lie in an archive, apart from the players'. */
  private static final Path RECORDINGS = Path.of("sourcedata", "calibration");

  @Option(names = "--live", paramLabel = "UNIT", converter = UnitChoice.Converter.class)
  private Optional<UnitChoice> choice = Optional.empty();

  @Option(names = "--go-on")
  private boolean goOn;

  @Option(names = "--patience", paramLabel = "S")
  private double patienceS = 60;

  @Mixin private PortOptions portOptions;

  /** One reader for all steps: it may have read ahead. */
  private final BufferedReader keyboard =
      new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));

  boolean isAsked() {
    return choice.isPresent();
  }

  /**
   * Does the steps and gives back what was recorded, with a mark for everything taken.
   *
   * @param serialNumber where the unit does not tell its own
   */
  SessionRun run(
      List<GuidedStep> steps, Path archive, Optional<String> serialNumber, Console console)
      throws IOException {
    if (!goOn && !Boolean.getBoolean("steadyturn.typed")) {
      throw console.wrongUsage(
          "standard input is no terminal to press Enter at; --go-on goes from step to step by"
              + " itself");
    }
    Path root = archive.resolve(RECORDINGS);
    try (LiveTable table = LiveTable.open(root, choice.orElseThrow(), portOptions)) {
      if (serialNumber.isEmpty() && table.serialNumber().isBlank()) {
        throw new CalibrationException(
            choice.orElseThrow().path() + " tells no serial number; give it with --serial");
      }
      List<Mark> taken = new ArrayList<>();
      for (int k = 0; k < steps.size(); k++) {
        GuidedStep step = steps.get(k);
        say(console, "Step " + (k + 1) + " of " + steps.size() + ": " + step.task());
        waitForEnter(console);
        // a script's steps follow one another without a gap; a person's begin at Enter
        step.beginAnew(goOn ? endS(taken) : table.nowS());
        lead(step, table, console);
        taken.addAll(step.taken());
      }
      table.endListening();
      table.note(taken);
      return table.recorded();
    }
  }

  private static double endS(List<Mark> taken) {
    return taken.stream().mapToDouble(Mark::endS).max().orElse(0);
  }

  private void lead(GuidedStep step, LiveTable table, Console console) {
    double newsS = HostTime.steadyS();
    boolean wasWell = true;
    while (!step.isDone()) {
      LiveTable.pause();
      Optional<String> trouble = table.trouble();
      if (trouble.isPresent() == wasWell) {
        wasWell = trouble.isEmpty();
        console.warn(
            trouble
                .map(t -> Words.say("calibrate.trouble", t))
                .orElseGet(() -> Words.say("calibrate.again")));
        step.beginAnew(table.nowS() + 1e-6);
      }
      UnitStream recent = table.since(step.neededFromS());
      Optional<String> said = recent.size() == 0 ? Optional.empty() : step.look(recent);
      said.ifPresent(words -> say(console, "  " + words));
      if (said.isPresent() || (step.isUnderWay() && wasWell)) {
        newsS = HostTime.steadyS();
      }
      if (goOn && HostTime.steadyS() - newsS > patienceS) {
        throw new CalibrationException(gaveUp(step, trouble));
      }
    }
  }

  private String gaveUp(GuidedStep step, Optional<String> trouble) {
    return Words.say(
        "calibrate.gave-up",
        Math.round(patienceS),
        trouble.map(t -> " (" + t + ")").orElse(""),
        step.missing());
  }

  private static void say(Console console, String words) {
    console.err().println(words);
    console.err().flush();
  }

  private void waitForEnter(Console console) throws IOException {
    if (goOn) {
      return;
    }
    say(console, Words.say("calibrate.enter"));
    if (keyboard.readLine() == null) {
      throw new CalibrationException("standard input ended; --go-on needs none");
    }
  }
}
