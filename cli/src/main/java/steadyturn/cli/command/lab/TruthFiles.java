package steadyturn.cli.command.lab;

import java.io.IOException;
import java.io.Writer;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntToDoubleFunction;
import steadyturn.analysis.lab.truth.LessonTruth;
import steadyturn.analysis.lab.truth.SwingTruth;
import steadyturn.analysis.lab.truth.TrueMarkers;
import steadyturn.analysis.lab.truth.TrueMeasure;
import steadyturn.analysis.lab.truth.UnitTruth;
import steadyturn.analysis.lab.unit.UnitClock;
import steadyturn.analysis.measure.Decimals;
import steadyturn.cli.output.tsv.TsvReport;
import steadyturn.ingest.marker.TrcFile;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.recording.disk.ArchiveLock;
import steadyturn.ingest.recording.disk.WholeFile;
import steadyturn.ingest.recording.write.DatasetFiles;

/**
 * The truth of a simulated lesson in {@code derivatives/truth/}: one row a swing, measure and key
 * position, with the ids and units of the results.
 */
public final class TruthFiles {

  private static final String COLUMNS = "swing,club,kind,at,time,measure,value,unit";

  private TruthFiles() {}

  /**
   * Writes beside the recording of that label: the movement, and the clocks of the units.
   *
   * @param slowPpm how much too slow the clock of the k-th unit was made besides
   */
  public static void write(
      LessonTruth truth, RunLabel label, Path archive, IntToDoubleFunction slowPpm) {
    ArchiveLock.whileWriting(
        archive,
        () -> {
          Path folder = DatasetFiles.derivatives(archive, "truth", "1").resolve(label.folder());
          WholeFile.writeText(folder.resolve(label.id() + "_truth.tsv"), to -> rows(truth, to));
          WholeFile.writeText(
              folder.resolve(label.id() + "_clocks.tsv"), to -> clocks(truth.units(), to, slowPpm));
        });
  }

  /** Writes what cameras would have seen of the pelvis. */
  static void writeMarkers(LessonTruth truth, RunLabel label, Path archive, double lengthS) {
    Path folder = DatasetFiles.derivatives(archive, "truth", "1").resolve(label.folder());
    TrcFile.write(folder.resolve(label.id() + "_markers.trc"), TrueMarkers.of(truth, 0, lengthS));
  }

  /** By how much each unit's times lie late at its start, and how much too slow its clock runs. */
  private static void clocks(List<UnitTruth> units, Writer to, IntToDoubleFunction slowPpm)
      throws IOException {
    TsvReport.row(to, "unit", "start", "late", "slow");
    for (int k = 0; k < units.size(); k++) {
      UnitClock clock = units.get(k).clock();
      UnitClock axis = units.get(0).clock();
      TsvReport.row(
          to,
          units.get(k).point().trackedPoint(),
          Decimals.cell(clock.shownStartS(), 6),
          Decimals.cell(1000 * (clock.shownStartS() - axis.shownS(clock.startS())), 3),
          Decimals.cell(slowPpm.applyAsDouble(k) + 1e6 * (axis.skew() - clock.skew()), 2));
    }
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
