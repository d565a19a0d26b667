package steadyturn.ingest.archive;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import steadyturn.ingest.recording.Lessons;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.recording.write.RecordingWriter;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;

/**
 * Mika Sand (lessons 01 and 02), mikado (another player whose label begins alike, lesson 01, with a
 * note about Mika), pages, a table, a calibration and a package that name Mika.
 */
final class SmallArchive {

  private SmallArchive() {}

  static void write(Path root) throws IOException {
    RecordingWriter writer = RecordingWriter.into(root, "Lessons of the test range");
    for (String lesson : List.of("01", "02")) {
      writer.write(
          recording("mika", "good"), RunLabel.lesson("mika", lesson), Lessons.NINE_O_CLOCK);
    }
    writer.write(
        recording("mikado", "as Mika did; better than mika sand"),
        RunLabel.lesson("mikado", "01"),
        Lessons.NINE_O_CLOCK.plusDays(7));
    PlayerBook.showAs(root, "mika", "Mika Sand");
    PlayerBook.agreed(root, "mika", new Consent(LocalDate.of(2025, 3, 31), "Jo Sand"));
    put(root, "derivatives/steadyturn/sub-mika/ses-01/sub-mika_ses-01_swings.tsv", "turn\n1\n");
    put(root, "derivatives/pages/sub-mika_progress.html", "<p>Mika Sand</p>");
    put(root, "derivatives/pages/clubs.html", "<p>sub-mika and sub-mikado</p>");
    put(
        root,
        "derivatives/all.tsv",
        "participant_id\tnote\nsub-mika\tgood\nsub-mikado\tMIKA SAND helped\n");
    put(
        root,
        "derivatives/steadyturn/calibration/unit-7_date-2025-03-31_calibration.json",
        "{\"From\" : \"sub-mika_ses-01_task-swing\", \"Figures\" : {\"a\" : 1.25},"
            + " \"Runs\" : [\"sub-mika\", \"sub-mikado\"]}");
    put(root, "derivatives/gift.zip", "PK\0\0 sub-mika/ses-01/x.tsv");
    put(root, "README.md", "Mika and mikado play here.\n");
    put(root, "derivatives/.page.html.999999999-1.part", "Mika");
  }

  private static Recording recording(String label, String note) {
    return new Recording(
        label,
        Player.unmeasured(label, Handedness.RIGHT),
        Lessons.pelvisOnly(10, 1).units(),
        List.of(new Mark(0, 0, "note", "", note)));
  }

  private static void put(Path root, String name, String text) throws IOException {
    Path file = root.resolve(name);
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
  }

  /** Files, hidden ones too, whose name or bytes hold a text, capitals or not. */
  static List<String> holding(Path root, String text) throws IOException {
    String plain = text.toLowerCase(java.util.Locale.ROOT);
    try (Stream<Path> all = Files.walk(root)) {
      return all.filter(
              f ->
                  String.valueOf(root.relativize(f))
                          .toLowerCase(java.util.Locale.ROOT)
                          .contains(plain)
                      || (Files.isRegularFile(f)
                          && new String(ArchiveWalk.bytes(f), StandardCharsets.ISO_8859_1)
                              .toLowerCase(java.util.Locale.ROOT)
                              .contains(plain)))
          .map(f -> root.relativize(f).toString())
          .sorted()
          .toList();
    }
  }
}
