package steadyturn.cli.report;

import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.synthetic.LessonTruth;
import steadyturn.analysis.synthetic.PelvisTruth;
import steadyturn.analysis.synthetic.SwingTruth;
import steadyturn.ingest.recording.DatasetFiles;
import steadyturn.ingest.recording.RunLabel;

/**
 * The truth of a simulated lesson in {@code derivatives/truth/}: one row a swing, key position and
 * quantity, in the units and with the ids of the results.
 */
public final class TruthFiles {

  private static final List<String> COLUMNS =
      List.of("swing", "club", "kind", "at", "time", "measure", "value", "unit");

  private TruthFiles() {}

  /** Writes beside the recording of that label. */
  public static void write(LessonTruth truth, RunLabel label, Path archive) throws IOException {
    Path folder = DatasetFiles.derivatives(archive, "truth", "1").resolve(label.folder());
    Files.createDirectories(folder);
    try (Writer to = Files.newBufferedWriter(folder.resolve(label.id() + "_truth.tsv"))) {
      TsvReport.row(to, COLUMNS);
      for (SwingTruth swing : truth.swings()) {
        for (Map.Entry<SwingEvent, Double> event : swing.eventsS().entrySet()) {
          position(to, swing, event.getKey(), event.getValue());
        }
      }
    }
  }

  private static void position(Writer to, SwingTruth swing, SwingEvent event, double timeS)
      throws IOException {
    PelvisTruth pelvis = swing.at(timeS);
    double tiltRad = swing.address().tiltRad() + pelvis.tiltRad();
    double sideTiltRad = swing.address().sideTiltRad() + pelvis.sideTiltRad();
    row(to, swing, event, timeS, Measure.PELVIS_TURN, Math.toDegrees(pelvis.turnRad()));
    row(to, swing, event, timeS, Measure.PELVIS_SLIDE, 1000 * pelvis.slideM());
    row(to, swing, event, timeS, Measure.PELVIS_THRUST, 1000 * pelvis.thrustM());
    row(to, swing, event, timeS, Measure.PELVIS_LIFT, 1000 * pelvis.liftM());
    row(to, swing, event, timeS, Measure.PELVIS_TILT, Math.toDegrees(tiltRad));
    row(to, swing, event, timeS, Measure.PELVIS_SIDETILT, Math.toDegrees(sideTiltRad));
    row(to, swing, event, timeS, Measure.WRIST_COCK, Math.toDegrees(cockRad(swing, timeS)));
  }

  /** Since address, as the results give it. */
  private static double cockRad(SwingTruth swing, double timeS) {
    double addressS = swing.eventS(SwingEvent.ADDRESS).orElse(timeS);
    return swing.cockRad(timeS) - swing.cockRad(addressS);
  }

  private static void row(
      Writer to, SwingTruth swing, SwingEvent event, double timeS, Measure measure, double value)
      throws IOException {
    TsvReport.row(
        to,
        List.of(
            Integer.toString(swing.number()),
            swing.club(),
            swing.kind().word(),
            event.word(),
            Decimals.cell(timeS, Decimals.OF_TIME_S),
            measure.id(),
            Decimals.cell(value, Decimals.OF_VALUE),
            measure.unit()));
  }
}
