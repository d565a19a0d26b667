package steadyturn.ingest.recording.dataset;

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
    StringBuilder text = new StringBuilder("onset\tduration\ttrial_type\tclub\tnote\n");
    for (Mark mark : marks) {
      text.append(
          String.format(
              Locale.ROOT,
              "%.6f\t%.6f\t%s\t%s\t%s%n",
              mark.onsetS(),
              mark.open() ? 0 : mark.durationS(),
              TableText.clean(mark.trialType()),
              TableText.clean(mark.club()),
              TableText.clean(mark.note())));
    }
    WholeFile.write(
        folder.resolve(label.fileName(tracksys, "events.tsv")),
        text.toString().replace(System.lineSeparator(), "\n"));
    WholeFile.write(
        folder.resolve(label.fileName(tracksys, "events.json")),
        Shipped.text(EventsFile.class, "events.json"));
  }
}
