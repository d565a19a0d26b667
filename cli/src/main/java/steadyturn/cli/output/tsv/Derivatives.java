package steadyturn.cli.output.tsv;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import java.io.IOException;
import java.io.Writer;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.swing.EventTime;
import steadyturn.cli.output.Decimals;
import steadyturn.cli.words.Words;
import steadyturn.ingest.recording.disk.ArchiveLock;
import steadyturn.ingest.recording.disk.WholeFile;

/**
 * Results as files of an archive, in {@code derivatives/steadyturn/}: for each recording the values
 * and the times of the key positions, each a TSV file with a JSON file that explains its columns.
 */
public final class Derivatives {

  private static final Pattern ENTITIES = Pattern.compile("(sub-[^_]+)(?:_(ses-[^_]+))?_.*");

  private static final ObjectMapper JSON =
      new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

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
    Path folder = archive.resolve("derivatives").resolve("steadyturn");
    Derivatives files = new Derivatives(folder);
    files.json("dataset_description.json", description());
    for (LessonResult result : results) {
      files.measures(result);
      files.keyPositions(result);
    }
    return folder;
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
    TsvReport.row(to, List.of("swing", "event", "time", "sd", "grade", "why"));
    for (SwingResult swing : result.swings()) {
      for (EventTime event : swing.events()) {
        TsvReport.row(to, cells(swing, event));
      }
    }
  }

  private static List<String> cells(SwingResult swing, EventTime event) {
    return List.of(
        Integer.toString(swing.number()),
        event.event().word(),
        Decimals.cell(event.timeS(), Decimals.OF_TIME_S),
        Decimals.cell(event.sdS(), Decimals.OF_TIME_S),
        event.grade().word(),
        Words.english().text(event.why()));
  }

  /** Subject and session folders as in the raw archive; other names lie flat. */
  private static String place(String recording) {
    Matcher entities = ENTITIES.matcher(recording);
    if (!entities.matches()) {
      return recording.replaceAll("[^A-Za-z0-9._-]+", "-");
    }
    String session = entities.group(2) == null ? "" : entities.group(2) + "/";
    String inside = entities.group(1) + "/" + session + "motion/";
    return inside + recording;
  }

  private void json(String name, Map<String, ?> content) {
    WholeFile.writeText(
        folder.resolve(name), to -> to.write(JSON.writeValueAsString(content) + "\n"));
  }

  private static Map<String, Object> description() {
    Map<String, Object> description = new LinkedHashMap<>();
    description.put("Name", "Turn, slide and release, computed from the raw recordings");
    description.put("BIDSVersion", "1.10.0");
    description.put("DatasetType", "derivative");
    description.put("GeneratedBy", List.of(Map.of("Name", "Steadyturn")));
    return description;
  }
}
