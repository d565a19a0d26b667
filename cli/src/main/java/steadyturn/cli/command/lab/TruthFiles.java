package steadyturn.cli.command.lab;

import java.io.IOException;
import java.io.Writer;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import steadyturn.analysis.lab.truth.LessonTruth;
import steadyturn.analysis.lab.truth.SwingTruth;
import steadyturn.analysis.lab.truth.TrueMeasure;
import steadyturn.cli.output.Decimals;
import steadyturn.cli.output.tsv.TsvReport;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.recording.disk.WholeFile;
import steadyturn.ingest.recording.write.DatasetFiles;

/**
 * The truth of a simulated lesson in {@code derivatives/truth/}: one row a swing, measure and key
 * position, with the ids and units of the results.
 */
public final class TruthFiles {

  private static final String COLUMNS = "swing,club,kind,at,time,measure,value,unit";

  private TruthFiles() {}

  /** Writes beside the recording of that label. */
  public static void write(LessonTruth truth, RunLabel label, Path archive) {
    Path folder = DatasetFiles.derivatives(archive, "truth", "1").resolve(label.folder());
    WholeFile.writeText(folder.resolve(label.id() + "_truth.tsv"), to -> rows(truth, to));
  }

  private static void rows(LessonTruth truth, Writer to) throws IOException {
    TsvReport.row(to, (Object[]) COLUMNS.split(",", -1));
    for (SwingTruth swing : truth.swings()) {
      Map<String, Double> timesS = new HashMap<>();
      swing.eventsS().forEach((event, timeS) -> timesS.put(event.word(), timeS));
      for (TrueMeasure measure : swing.truthMeasures()) {
        row(to, swing, measure, timesS.getOrDefault(measure.at(), Double.NaN));
      }
    }
  }

  private static void row(Writer to, SwingTruth swing, TrueMeasure measure, double timeS)
      throws IOException {
    TsvReport.row(
        to,
        swing.number(),
        swing.club(),
        swing.kind().word(),
        measure.at(),
        Decimals.cell(timeS, Decimals.OF_TIME_S),
        measure.measure().id(),
        Decimals.cell(measure.value(), Decimals.OF_VALUE),
        measure.measure().unit());
  }
}
