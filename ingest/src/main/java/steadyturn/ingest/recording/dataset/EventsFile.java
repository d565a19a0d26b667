package steadyturn.ingest.recording.dataset;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import steadyturn.ingest.mark.MarkStretches;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.recording.disk.Shipped;
import steadyturn.ingest.recording.disk.WholeFile;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.recording.table.TableText;
import steadyturn.ingest.recording.table.TextTable;
import steadyturn.ingest.sample.Mark;

/** Notes on stretches of time: the events file of a run. */
public final class EventsFile {

  private static final String HEAD = "onset\tduration\ttrial_type\tclub\tnote";

  /** Nearer than this two swings cannot follow one another, s. */
  private static final double SAME_SWING_S = 0.5;

  private EventsFile() {}

  /** The marks by onset, moved by {@code byS} onto the common axis, each with its stretch. */
  public static List<Mark> read(Path file, double byS, List<String> notices) {
    TextTable table = TextTable.read(file, notices);
    if (!table.has("onset") || !table.has("duration")) {
      throw RecordingException.at(
          file, 1, "lacks a column onset or duration. An events file needs both, in s.");
    }
    List<Mark> marks = new ArrayList<>();
    Set<String> unknown = new LinkedHashSet<>();
    for (TextTable.Row row : table.rows()) {
      double onsetS = table.number(row, "onset");
      double durationS = table.number(row, "duration");
      String word = table.text(row, "trial_type");
      if (!word.isEmpty() && MarkWord.of(word).isEmpty()) {
        if (unknown.add(word)) {
          notices.add(unknown(file, row.line(), word));
        }
      } else if (Double.isNaN(onsetS) || durationS < 0) {
        notices.add(
            RecordingException.place(file, row.line(), "")
                + ": left out, an event needs an onset and a duration of 0 s or more.");
      } else {
        marks.add(
            new Mark(
                onsetS + byS,
                Double.isNaN(durationS) ? 0 : durationS,
                MarkWord.of(word).map(MarkWord::word).orElse(""),
                table.text(row, "club"),
                table.text(row, "note")));
      }
    }
    return MarkStretches.of(marks);
  }

  private static String unknown(Path file, long line, String word) {
    return RecordingException.place(file, line, "trial_type")
        + ": \""
        + word
        + "\" is no word known here, rows with it are left out. The nearest one is \""
        + MarkWord.nearest(word, MarkWord.words())
        + "\".";
  }

  /**
   * Writes marks as an events file with the sidecar that explains its columns.
   *
   * @param marks onsets in s since the first sample of the table the file belongs to
   */
  public static void write(Path folder, RunLabel label, String tracksys, List<Mark> marks) {
    StringBuilder text = new StringBuilder(HEAD + "\n");
    marks.forEach(mark -> text.append(line(mark)));
    WholeFile.write(folder.resolve(label.fileName(tracksys, "events.tsv")), text.toString());
    WholeFile.write(
        folder.resolve(label.fileName(tracksys, "events.json")),
        Shipped.text(EventsFile.class, "events.json"));
  }

  private static String line(Mark mark) {
    return String.format(
        Locale.ROOT,
        "%.6f\t%.6f\t%s\t%s\t%s\n",
        mark.onsetS(),
        mark.open() ? 0 : mark.durationS(),
        TableText.clean(mark.trialType()),
        TableText.clean(mark.club()),
        TableText.clean(mark.note()));
  }

  /**
   * Changes what a finished run says of one of its swings; every other row stays as it is, known or
   * not. Does nothing where the file has other columns than {@link #write} gives it.
   *
   * @param nearS onset of what is taken out: marks about a swing, within half a second
   * @param in what comes instead
   */
  public static void about(Path file, double nearS, List<Mark> in) throws IOException {
    List<String> lines = new ArrayList<>(Files.readAllLines(file));
    if (lines.isEmpty() || !lines.get(0).equals(HEAD)) {
      return;
    }
    lines.removeIf(line -> isAbout(line.split("\t", -1), nearS));
    in.forEach(mark -> lines.add(line(mark).strip()));
    WholeFile.write(file, String.join("\n", lines) + "\n");
  }

  private static boolean isAbout(String[] cells, double nearS) {
    boolean isAbout =
        cells.length > 2 && MarkWord.of(cells[2]).filter(MarkWord::isAbout).isPresent();
    return isAbout && Math.abs(Double.parseDouble(cells[0]) - nearS) < SAME_SWING_S;
  }
}
