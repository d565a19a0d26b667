package steadyturn.cli.command.mat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import steadyturn.cli.words.Words;
import steadyturn.ingest.archive.Consent;
import steadyturn.ingest.archive.PlayerBook;
import steadyturn.ingest.archive.PlayerEntry;
import steadyturn.ingest.recording.dataset.Participants;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;

/** The players of an archive, under the names that they write themselves. */
final class Players {

  private static final double SMALLEST_MM = 50;
  private static final double LARGEST_MM = 2500;

  private final Path root;
  private PlayerBook book;

  /** Reads who is there. */
  Players(Path root) {
    this.root = root;
    book = read();
  }

  private PlayerBook read() {
    return PlayerBook.read(root, new ArrayList<>());
  }

  /** Those of whom a lesson can be recorded. */
  List<PlayerEntry> all() {
    return book.players().stream().filter(player -> player.handed().isPresent()).toList();
  }

  String name(String label) {
    return book.of(label).map(PlayerEntry::shownName).orElse(label);
  }

  /** Whether there is a player of that label whose side is known. */
  boolean has(String label) {
    return book.of(label).flatMap(PlayerEntry::handed).isPresent();
  }

  Player known(String label) {
    return Participants.player(root, label, new ArrayList<>());
  }

  /** Why nobody can be recorded as the page tells; empty where somebody can. */
  Optional<String> refusal(JsonNode told) {
    String label = told.path("label").asText();
    if (label.isEmpty() && told.path("name").asText().isBlank()) {
      return Optional.of(Words.say("mat.who.nobody"));
    }
    if (!label.isEmpty() && !has(label)) {
      return Optional.of(Words.say("mat.who.unknown"));
    }
    return agreed(label) || consent(told).isPresent()
        ? Optional.empty()
        : Optional.of(Words.say("mat.who.unasked"));
  }

  /** Whom the page tells, known or new, with the consent that was given now. */
  Player chosen(JsonNode told) {
    String label = told.path("label").asText();
    Player chosen = label.isEmpty() ? add(told) : known(label);
    consent(told).filter(its -> !agreed(chosen.id())).ifPresent(its -> agree(chosen.id(), its));
    return chosen;
  }

  /** Adds a player as the page tells. */
  Player add(JsonNode told) {
    String name = told.path("name").asText().strip();
    boolean isLeft = told.path("handed").asText().equals(Handedness.LEFT.word());
    Player player =
        new Player(
            label(name),
            isLeft ? Handedness.LEFT : Handedness.RIGHT,
            size(told, "width"),
            size(told, "depth"),
            size(told, "stature"));
    Participants.add(root, player);
    PlayerBook.showAs(root, player.id(), name);
    book = read();
    return player;
  }

  /** Whether it is noted that a player agreed to be recorded. */
  private boolean agreed(String label) {
    return book.of(label).flatMap(PlayerEntry::consent).isPresent();
  }

  /**
   * Who agrees now, as the page tells: the player, or a parent by name; empty where nobody does.
   */
  static Optional<Consent> consent(JsonNode told) {
    LocalDate today = LocalDate.now(ZoneId.systemDefault());
    String parent = told.path("parent").asText().strip();
    return switch (told.path("consent").asText()) {
      case "player" -> Optional.of(new Consent(today, ""));
      case "parent" -> Optional.of(new Consent(today, parent)).filter(its -> !parent.isEmpty());
      default -> Optional.empty();
    };
  }

  private void agree(String label, Consent consent) {
    PlayerBook.agreed(root, label, consent);
    book = read();
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
    for (int copy = 2; book.of(label).isPresent(); copy++) {
      label = base + copy;
    }
    return label;
  }
}
