package steadyturn.cli.command.mat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import steadyturn.cli.output.json.Json;
import steadyturn.ingest.recording.dataset.Participants;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;

/** The players of an archive, under the names that they write themselves. */
record Players(Path root, LessonNotes notes) {

  private static final double SMALLEST_MM = 50;
  private static final double LARGEST_MM = 2500;

  /** Labels of all players that the archive knows, by name. */
  List<String> labels() {
    return Participants.labels(root);
  }

  String name(String label) {
    String written = notes.of("names", label).path("name").asText();
    return written.isEmpty() ? label : written;
  }

  /** Whether there is a player of that label whose side is known. */
  boolean has(String label) {
    return Participants.handedness(root, label).isPresent();
  }

  Player known(String label) {
    return Participants.player(root, label, new ArrayList<>());
  }

  /** Adds a player as the page tells; the archive gets them with the first recording. */
  Player add(JsonNode told) {
    String name = told.path("name").asText().strip();
    String label = label(name);
    ObjectNode its = Json.object().put("name", name);
    if (told.path("consent").asBoolean()) {
      its.put("consent", LocalDate.now(ZoneId.systemDefault()).toString());
    }
    notes.put("names", label, its);
    Handedness side =
        told.path("handed").asText().equals("left") ? Handedness.LEFT : Handedness.RIGHT;
    return new Player(label, side, size(told, "width"), size(told, "depth"), size(told, "stature"));
  }

  /** A lesson's label: the day; a letter behind it for a second lesson of the same player. */
  String freeLesson(String label, String day) {
    String free = day;
    for (char letter = 'b'; isThere(label, free); letter++) {
      free = day + letter;
    }
    return free;
  }

  private boolean isThere(String label, String lesson) {
    return Files.exists(root.resolve("sub-" + label).resolve("ses-" + lesson));
  }

  /** A size in mm; none for what is no size of a person. */
  private static OptionalDouble size(JsonNode told, String what) {
    double mm = told.path(what).asDouble();
    return mm >= SMALLEST_MM && mm <= LARGEST_MM ? OptionalDouble.of(mm) : OptionalDouble.empty();
  }

  /** Letters and digits of a name, unlike any label that is there. */
  private String label(String name) {
    String plain =
        Normalizer.normalize(name, Normalizer.Form.NFD)
            .replaceAll("[^0-9A-Za-z]", "")
            .toLowerCase(Locale.ROOT);
    String base = plain.isEmpty() ? "player" : plain;
    String label = base;
    for (int copy = 2;
        labels().contains(label) || !notes.of("names", label).isMissingNode();
        copy++) {
      label = base + copy;
    }
    return label;
  }
}
