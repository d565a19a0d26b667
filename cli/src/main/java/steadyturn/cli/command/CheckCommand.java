package steadyturn.cli.command;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import steadyturn.cli.report.QualityReport;
import steadyturn.ingest.quality.RecordingQuality;
import steadyturn.ingest.quality.RecordingReport;
import steadyturn.ingest.quality.Verdict;
import steadyturn.ingest.recording.RecordingReader;
import steadyturn.ingest.recording.Session;
import steadyturn.ingest.recording.SessionRun;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;

/** Says for every unit of a recording whether it is good enough, and what to do if not. */
@Command(
    name = "check",
    description = {
      "Says for each unit of a recording whether it is fit for use, and what to do if not:",
      "rate, loss, gaps, saturation, noise, exchanged units, missing rest."
    },
    footer = {"", "Exit code 1 when a recording cannot be read or a unit is not usable."})
final class CheckCommand implements Callable<Integer> {

  @Mixin private Console console;

  @Parameters(
      arity = "1..*",
      paramLabel = "PATH",
      description = "An archive, a player's or a lesson's folder, or one motion table.")
  private List<Path> paths = List.of();

  @Override
  public Integer call() {
    Lessons lessons = Lessons.under(paths, console);
    lessons.each(lesson -> check(lesson, lessons));
    return lessons.allWell() ? Failures.DONE : Failures.FAILED;
  }

  private void check(Session lesson, Lessons lessons) {
    for (SessionRun run : lesson.runs()) {
      lessons.tried(
          () -> {
            RecordingReport report = RecordingQuality.judge(unitsOf(run));
            QualityReport.write(report, console.out());
            if (report.verdict() == Verdict.NOT_USABLE) {
              lessons.notWell();
            }
          });
    }
  }

  /** The side the player swings from does not matter here, so it need not be known. */
  private static Recording unitsOf(SessionRun run) {
    return new Recording(
        run.id(),
        Player.unmeasured(run.player(), Handedness.RIGHT),
        RecordingReader.readUnits(run),
        List.of());
  }
}
