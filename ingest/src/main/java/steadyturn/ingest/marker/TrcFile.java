package steadyturn.ingest.marker;

import java.io.IOException;
import java.io.Writer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import steadyturn.ingest.recording.disk.WholeFile;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.recording.table.TextFile;

/**
 * Reads the open TRC text form: tab-separated, three lines of facts, a line of marker names, a line
 * of axes, then a line a frame with its number, its time and x, y, z of each marker. Source: the
 * public description of marker files in the OpenSim documentation (from memory).
 */
public final class TrcFile {

  private static final int FACTS = 1;
  private static final int NAMES = 3;
  private static final int FIRST_FRAME = 5;

  private TrcFile() {}

  /** Reads a file; what is missing in a cell is NaN. */
  public static MarkerTracks read(Path file) {
    List<String> lines = TextFile.read(file, new ArrayList<>()).lines().toList();
    if (lines.size() <= FIRST_FRAME || !lines.get(0).startsWith("PathFileType")) {
      throw RecordingException.at(
          file, 1, "is no TRC file: it begins with PathFileType and has frames. Export it as TRC.");
    }
    double scale = scaleM(file, lines);
    List<String> names =
        Arrays.stream(cells(lines.get(NAMES)))
            .skip(2)
            .map(String::strip)
            .filter(name -> !name.isEmpty())
            .toList();
    List<double[]> frames = new ArrayList<>();
    for (int i = FIRST_FRAME; i < lines.size(); i++) {
      if (!lines.get(i).isBlank()) {
        frames.add(frame(file, i + 1, lines.get(i), names.size()));
      }
    }
    return tracks(file, names, frames, scale);
  }

  /** Writes a file in mm. */
  public static void write(Path file, MarkerTracks tracks) {
    WholeFile.writeText(file, to -> write(file, tracks, to));
  }

  private static void write(Path file, MarkerTracks tracks, Writer to) throws IOException {
    int frames = tracks.timeS().length;
    double rateHz =
        frames < 2 ? 0 : (frames - 1) / (tracks.timeS()[frames - 1] - tracks.timeS()[0]);
    to.write("PathFileType\t4\t(X/Y/Z)\t" + file.getFileName() + "\n");
    to.write("DataRate\tCameraRate\tNumFrames\tNumMarkers\tUnits\n");
    to.write(
        String.format(
            Locale.ROOT,
            "%.2f\t%.2f\t%d\t%d\tmm%n",
            rateHz,
            rateHz,
            frames,
            tracks.names().size()));
    to.write("Frame#\tTime\t" + String.join("\t\t\t", tracks.names()) + "\t\t\n\t");
    for (int k = 1; k <= tracks.names().size(); k++) {
      to.write("\tX" + k + "\tY" + k + "\tZ" + k);
    }
    to.write("\n");
    for (int i = 0; i < frames; i++) {
      to.write(String.format(Locale.ROOT, "%d\t%.6f", i + 1, tracks.timeS()[i]));
      for (double[][] marker : tracks.placesM()) {
        for (double[] axis : marker) {
          to.write(
              Double.isNaN(axis[i]) ? "\t" : String.format(Locale.ROOT, "\t%.3f", 1000 * axis[i]));
        }
      }
      to.write("\n");
    }
  }

  private static MarkerTracks tracks(
      Path file, List<String> names, List<double[]> frames, double scale) {
    double[] timeS = frames.stream().mapToDouble(f -> f[0]).toArray();
    for (int i = 1; i < timeS.length; i++) {
      if (!(timeS[i] > timeS[i - 1])) {
        throw RecordingException.of(
            file, "has times that do not rise (frame " + (i + 1) + "). Export it anew.");
      }
    }
    double[][][] places = new double[names.size()][3][timeS.length];
    for (int marker = 0; marker < names.size(); marker++) {
      for (int axis = 0; axis < 3; axis++) {
        for (int i = 0; i < timeS.length; i++) {
          places[marker][axis][i] = scale * frames.get(i)[1 + 3 * marker + axis];
        }
      }
    }
    return new MarkerTracks(names, timeS, places);
  }

  private static double scaleM(Path file, List<String> lines) {
    String[] keys = cells(lines.get(FACTS));
    int at = Arrays.asList(keys).indexOf("Units");
    String[] facts = cells(lines.get(FACTS + 1));
    String unit = at >= 0 && at < facts.length ? facts[at].strip().toLowerCase(Locale.ROOT) : "";
    return switch (unit) {
      case "mm" -> 1e-3;
      case "cm" -> 1e-2;
      case "m" -> 1;
      default ->
          throw RecordingException.at(
              file, FACTS + 2, "has the unit \"" + unit + "\". Write mm, cm or m under Units.");
    };
  }

  /** Time, then x, y, z of each marker. */
  private static double[] frame(Path file, int line, String text, int markers) {
    String[] cells = cells(text);
    double[] frame = new double[1 + 3 * markers];
    for (int i = 0; i < frame.length; i++) {
      String cell = i + 1 < cells.length ? cells[i + 1].strip() : "";
      frame[i] = number(file, line, cell);
    }
    if (Double.isNaN(frame[0])) {
      throw RecordingException.at(file, line, "has no time. Export it anew.");
    }
    return frame;
  }

  private static double number(Path file, int line, String cell) {
    if (cell.isEmpty()) {
      return Double.NaN;
    }
    try {
      return Double.parseDouble(cell);
    } catch (NumberFormatException e) {
      throw RecordingException.at(
          file, line, "\"" + cell + "\" is no number. Export it with a decimal point.");
    }
  }

  private static String[] cells(String line) {
    return line.split("\t", -1);
  }
}
