package steadyturn.cli.command.mat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.coach.Advice;
import steadyturn.analysis.coach.RuleFinding;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.cli.command.lesson.FinishedLesson;
import steadyturn.cli.output.json.Json;
import steadyturn.cli.page.Sheet;
import steadyturn.cli.page.reader.Audience;
import steadyturn.cli.page.reader.Letter;
import steadyturn.cli.words.Words;
import steadyturn.fusion.wear.pelvis.LeverArm;
import steadyturn.ingest.sample.Player;

/** The end of a lesson: what {@code analyze} says of it, and the pages to send. */
record Closing(FinishedLesson lesson, Teaching teaching, Players players, LessonNotes notes) {

  private static final double USUAL_HALF_MM = 86.5;

  /** Half the distance between the hip centres, for the drawing. */
  static double halfHipsMm(Player player) {
    return player.pelvisWidthMm().isPresent()
        ? LeverArm.hipHalfDistanceMm(player.pelvisWidthMm().getAsDouble())
        : USUAL_HALF_MM;
  }

  ObjectNode json() {
    Optional<Advice> advice = lesson.sheet(teaching).map(Sheet::advice);
    Optional<RuleFinding> first = advice.flatMap(Advice::priority);
    ObjectNode node = Json.object();
    node.put("swings", lesson.results().stream().mapToInt(run -> run.swings().size()).sum());
    node.put(
        "left",
        lesson.results().stream()
            .flatMap(run -> run.swings().stream())
            .filter(swing -> !swing.counts())
            .count());
    node.put(
        "work", first.map(f -> Words.say("finding." + f.rule().name() + ".player")).orElse(""));
    node.put("aim", first.map(f -> Words.say("finding." + f.rule().name() + ".aim")).orElse(""));
    node.put(
        "good",
        advice.stream()
            .flatMap(its -> its.good().stream())
            .findFirst()
            .map(f -> Words.say("good." + f.rule().name() + ".player"))
            .orElse(""));
    List<String> recordings = lesson.results().stream().map(run -> run.recording()).toList();
    return node.put("recordings", String.join(", ", recordings));
  }

  /** The page for player or teacher. */
  Optional<String> page(String name) {
    Letter letter = new Letter(players.name(notes.kept("player")), "", notes.kept("words"));
    return switch (name) {
      case "player" -> lesson.page(teaching, Audience.PLAYER, letter);
      case "teacher" -> lesson.page(teaching, Audience.TEACHER, letter);
      default -> Optional.empty();
    };
  }

  List<SwingResult> swings() {
    return lesson.results().stream().flatMap(run -> run.swings().stream()).toList();
  }
}
