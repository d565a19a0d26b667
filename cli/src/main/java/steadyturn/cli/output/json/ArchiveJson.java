package steadyturn.cli.output.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.Optional;
import steadyturn.ingest.archive.Consent;
import steadyturn.ingest.archive.LessonEntry;
import steadyturn.ingest.archive.PlayerEntry;
import steadyturn.ingest.sample.Handedness;

/** Who and what is in an archive, for scripts; what is not known is null. */
public final class ArchiveJson {

  private ArchiveJson() {}

  /** Leaves the writer open. */
  public static void players(List<PlayerEntry> players, Writer to) throws IOException {
    ObjectNode root = Json.root();
    Json.list(root, "players", players, ArchiveJson::player);
    Json.write(root, to);
  }

  /** Leaves the writer open. */
  public static void lessons(List<LessonEntry> lessons, Writer to) throws IOException {
    ObjectNode root = Json.root();
    Json.list(root, "lessons", lessons, ArchiveJson::lesson);
    Json.write(root, to);
  }

  private static ObjectNode player(PlayerEntry p) {
    ObjectNode node = Json.object().put("player", p.label()).put("shownName", p.shownName());
    text(node, "handed", p.handed().map(Handedness::word));
    text(node, "consentDate", p.consent().map(c -> c.day().toString()));
    text(node, "consentBy", p.consent().map(Consent::by));
    Json.list(node, "lessons", p.lessons(), ArchiveJson::lesson);
    return node;
  }

  private static ObjectNode lesson(LessonEntry lesson) {
    ObjectNode node = Json.object().put("player", lesson.player()).put("lesson", lesson.lesson());
    text(node, "day", lesson.day().map(Object::toString));
    return node.put("runs", lesson.runs()).put("bytes", lesson.bytes());
  }

  private static void text(ObjectNode node, String key, Optional<String> text) {
    text.ifPresentOrElse(known -> node.put(key, known), () -> node.putNull(key));
  }
}
