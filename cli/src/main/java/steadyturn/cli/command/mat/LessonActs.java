package steadyturn.cli.command.mat;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Optional;
import java.util.function.Consumer;
import steadyturn.cli.command.rehearsal.RehearsedPlayer;
import steadyturn.cli.words.Words;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.sample.BodyPoint;

/**
 * Everything a page may ask for, by its name; what is not in its place is refused with a sentence.
 */
enum LessonActs {
  BEGIN {
    @Override
    Optional<String> act(LessonRoom room, JsonNode with) {
      return room.stage() == LessonStage.WHO ? room.begin(with) : LATER;
    }
  },
  AIM {
    @Override
    Optional<String> act(LessonRoom room, JsonNode with) {
      room.aim(with);
      return DONE;
    }
  },
  /** A unit is worn somewhere, or all are told apart anew. */
  WEAR {
    @Override
    Optional<String> act(LessonRoom room, JsonNode with) {
      Optional<BodyPoint> point =
          BodyPoint.ofTrackedPoint(with.path("point").asText().replace('-', '_'));
      room.table()
          .ifPresent(
              table ->
                  point.ifPresentOrElse(
                      at -> table.wear(with.path("place").asText(), at), table::forget));
      return DONE;
    }
  },
  RECORD {
    @Override
    Optional<String> act(LessonRoom room, JsonNode with) {
      return room.stage() == LessonStage.UNITS ? room.record() : LATER;
    }
  },
  /** Goes to another stage of a lesson that is recorded. */
  GO {
    @Override
    Optional<String> act(LessonRoom room, JsonNode with) {
      LessonStage to = LessonStage.of(with.path("to").asText());
      if (!to.isRecorded() || room.session().isEmpty()) {
        return LATER;
      }
      room.enter(to);
      return DONE;
    }
  },
  /** Begins a drill by its name; without one the drill is over. */
  DRILL {
    @Override
    Optional<String> act(LessonRoom room, JsonNode with) {
      if (room.session().isEmpty() || room.stage() != LessonStage.DRILL) {
        return LATER;
      }
      room.drills().begin(with.path("name").asText(), room.session());
      return DONE;
    }
  },
  STEP {
    @Override
    Optional<String> act(LessonRoom room, JsonNode with) {
      Optional<MarkWord> step = MarkWord.of(with.path("word").asText()).filter(MarkWord::isStep);
      Optional<MatSession> session = room.session();
      if (session.isEmpty() || step.isEmpty()) {
        return LATER;
      }
      GuidedSteps steps = session.get().steps();
      switch (with.path("what").asText()) {
        case "begin" -> {
          steps.begin(step.get());
          room.rehearsed().ifPresent(player -> player.wish(step.get()));
        }
        case "idle" -> steps.begin(step.get()); // in a rehearsal: the player does nothing
        case "end" -> steps.end();
        default -> steps.leave(step.get());
      }
      return DONE;
    }
  },
  CLUB {
    @Override
    Optional<String> act(LessonRoom room, JsonNode with) {
      String club = with.path("club").asText().strip();
      room.notes().put("club", club);
      room.session()
          .ifPresent(its -> its.live().recorder().markNow(MarkWord.CLUB.word(), club, ""));
      return DONE;
    }
  },
  DISCARD {
    @Override
    Optional<String> act(LessonRoom room, JsonNode with) {
      return ofBall(room, with, id -> room.tell(room.board().discard(id)));
    }
  },
  NOTE {
    @Override
    Optional<String> act(LessonRoom room, JsonNode with) {
      return ofBall(
          room, with, id -> room.tell(room.board().note(id, with.path("note").asText().strip())));
    }
  },
  MODEL {
    @Override
    Optional<String> act(LessonRoom room, JsonNode with) {
      return ofBall(room, with, id -> room.board().model(id).forEach(room::tell));
    }
  },
  UNDO {
    @Override
    Optional<String> act(LessonRoom room, JsonNode with) {
      room.board().undo().ifPresent(room::tell);
      return DONE;
    }
  },
  READ {
    @Override
    Optional<String> act(LessonRoom room, JsonNode with) {
      room.troubles().read();
      return DONE;
    }
  },
  FINISH {
    @Override
    Optional<String> act(LessonRoom room, JsonNode with) {
      if (room.session().isEmpty()) {
        return LATER;
      }
      room.finish();
      return DONE;
    }
  },
  ANOTHER {
    @Override
    Optional<String> act(LessonRoom room, JsonNode with) {
      room.another();
      return DONE;
    }
  },
  /** What the virtual player is to do. */
  REHEARSE {
    @Override
    Optional<String> act(LessonRoom room, JsonNode with) {
      room.rehearsed().ifPresent(player -> rehearse(player, with));
      return DONE;
    }
  },
  UNKNOWN {
    @Override
    Optional<String> act(LessonRoom room, JsonNode with) {
      return LATER;
    }
  };

  private static final double PULLED_S = 4;
  private static final Optional<String> DONE = Optional.empty();
  private static final Optional<String> LATER = Optional.of(Words.say("mat.not-now"));

  abstract Optional<String> act(LessonRoom room, JsonNode with);

  static LessonActs of(String name) {
    for (LessonActs act : values()) {
      if (act.name().toLowerCase(java.util.Locale.ROOT).equals(name)) {
        return act;
      }
    }
    return UNKNOWN;
  }

  private static Optional<String> ofBall(LessonRoom room, JsonNode with, Consumer<String> does) {
    String id = with.path("id").asText();
    if (!room.board().has(id)) {
      return LATER;
    }
    does.accept(id);
    return DONE;
  }

  private static void rehearse(RehearsedPlayer player, JsonNode with) {
    switch (with.path("what").asText()) {
      case "hit" -> player.wish(MarkWord.HIT);
      case "restless" -> player.beRestless();
      case "slip" -> player.slip(0);
      case "pull" -> player.pull(0, PULLED_S);
      case "move" -> player.move(Math.max(0, Math.min(2, with.path("unit").asInt())));
      default -> {}
    }
  }
}
