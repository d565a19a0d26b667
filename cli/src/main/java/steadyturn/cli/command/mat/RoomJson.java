package steadyturn.cli.command.mat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.List;
import java.util.Optional;
import steadyturn.cli.command.rehearsal.RehearsedPlayer;
import steadyturn.cli.output.json.Json;
import steadyturn.ingest.archive.PlayerEntry;
import steadyturn.ingest.mark.MarkWord;

/** What a page shows beside the balls, as it is told to every page when something of it changes. */
final class RoomJson {

  private RoomJson() {}

  static ObjectNode of(LessonRoom room) {
    LessonNotes notes = room.notes();
    LessonStage stage = room.stage();
    ObjectNode node = Json.object().put("stage", stage.word());
    node.put("isRehearsed", room.rehearsed().isPresent());
    node.put("isBusy", room.rehearsed().filter(RehearsedPlayer::isBusy).isPresent());
    for (String key : List.of("goal", "words", "club", "lesson")) {
      node.put(key, notes.kept(key));
    }
    node.put("player", room.player().map(its -> room.players().name(its.id())).orElse(""));
    room.player()
        .ifPresent(
            its ->
                node.put("handed", its.handed().word()).put("halfHipsMm", Closing.halfHipsMm(its)));
    if (stage == LessonStage.WHO) {
      room.rehearsed().ifPresent(its -> node.put("virtual", its.facts().handed().word()));
      node.put("asked", room.options().player());
      Json.list(node, "players", room.players().all(), RoomJson::player);
    }
    Goals goals = new Goals(room.options().teaching());
    Json.list(node, "goals", goals.teaching().findings(), goals::json);
    room.table().ifPresent(units -> node.set("units", units.json()));
    if (stage == LessonStage.DRILL) {
      Json.list(node, "drills", goals.drills(notes.kept("goal")), Goals::json);
      room.drills().now().ifPresent(its -> node.set("drill", its.json()));
    }
    Json.list(node, "difference", room.difference(), TextNode::valueOf);
    Optional<MatSession> session = room.session();
    session.ifPresent(its -> node.set("steps", its.steps().json(stage == LessonStage.TABLE)));
    node.put("isTableDone", session.filter(s -> s.steps().isDone(MarkWord.TABLE_REST)).isPresent());
    room.troubles()
        .json(node, session.map(its -> room.troubles().now(its.live())).orElseGet(List::of));
    room.closing().ifPresent(its -> node.set("closing", its.json()));
    return node;
  }

  private static ObjectNode player(PlayerEntry player) {
    return Json.object()
        .put("label", player.label())
        .put("name", player.shownName())
        .put("agreed", player.consent().isPresent());
  }
}
