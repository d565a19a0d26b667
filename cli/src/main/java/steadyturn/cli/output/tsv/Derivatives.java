package steadyturn.cli.output.tsv;

import java.io.IOException;
import java.io.Writer;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Decimals;
import steadyturn.analysis.swing.EventTime;
import steadyturn.cli.words.Words;
import steadyturn.ingest.recording.disk.ArchiveLock;
import steadyturn.ingest.recording.disk.WholeFile;
import steadyturn.ingest.recording.table.JsonText;
import steadyturn.ingest.recording.write.DatasetFiles;

/**
 * Results as files of an archive, in {@code derivatives/steadyturn/}: for each recording the values
 * and the times of the key positions, each a TSV file with a JSON file that explains its columns.
 */
public final class Derivatives {

  private final Path folder;

  private Derivatives(Path folder) {
    this.folder = folder;
  }

  /**
   * Writes into {@code archive/derivatives/steadyturn}, over what an earlier analysis of the same
   * recordings left there; returns that folder.
   *
   * @throws IOException when two recordings have one name: one's results would be lost
   */
  public static Path write(List<LessonResult> results, Path archive) throws IOException {
    Set<String> names = new HashSet<>();
    for (LessonResult result : results) {
      if (!names.add(result.recording())) {
        throw new IOException(
            result.recording()
                + " is the name of two recordings; analyze the archives one by one, each with an"
                + " --out of its own");
      }
    }
    return ArchiveLock.whileWriting(archive, () -> writeAlone(results, archive));
  }

  private static Path writeAlone(List<LessonResult> results, Path archive) {
    Derivatives files = new Derivatives(DatasetFiles.derivatives(archive, "steadyturn", "0.1"));
    for (LessonResult result : results) {
      files.measures(result);
      files.keyPositions(result);
    }
    return files.folder;
  }

  private void measures(LessonResult result) {
    String name = place(result.recording()) + "_measures";
    WholeFile.writeText(folder.resolve(name + ".tsv"), to -> TsvReport.write(List.of(result), to));
    json(name + ".json", MeasureColumns.explained(result));
  }

  private void keyPositions(LessonResult result) {
    String name = place(result.recording()) + "_keypositions";
    WholeFile.writeText(folder.resolve(name + ".tsv"), to -> keyPositions(result, to));
    json(name + ".json", MeasureColumns.keyPositions());
  }

  private static void keyPositions(LessonResult result, Writer to) throws IOException {
    TsvReport.row(to, MeasureColumns.OF_KEY_POSITIONS.toArray());
    for (SwingResult swing : result.swings()) {
      for (EventTime event : swing.events()) {
        TsvReport.row(
            to,
            swing.number(),
            event.event().word(),
            Decimals.cell(event.timeS(), Decimals.OF_TIME_S),
            Decimals.cell(event.sdS(), Decimals.OF_TIME_S),
            event.grade().word(),
            Words.english().text(event.why()));
      }
    }
  }

  private static String place(String recording) {
    String folder = RunPlace.folder(recording);
    return folder.isEmpty() ? recording.replaceAll("[^A-Za-z0-9._-]+", "-") : folder + recording;
  }

  private void json(String name, Map<String, ?> content) {
    WholeFile.write(folder.resolve(name), JsonText.of(content));
  }
}
