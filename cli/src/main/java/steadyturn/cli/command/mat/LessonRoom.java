package steadyturn.cli.command.mat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.cli.command.lesson.FinishedLesson;
import steadyturn.cli.command.live.UnitChoice;
import steadyturn.cli.command.rehearsal.RehearsedPlayer;
import steadyturn.cli.live.Shown;
import steadyturn.cli.output.json.Json;
import steadyturn.cli.output.table.BallAnswer;
import steadyturn.cli.words.Words;
import steadyturn.ingest.sample.Player;

/**
 * One lesson and where it is in its course. Every change comes in by {@link #act}; what changes is
 * told to all pages. Whatever a page does, the recording goes on.
 */
final class LessonRoom implements Shown {

  private final MatOptions options;
  private final LessonNotes notes;
  private final Players players;
  private final Goals goals;
  private final Troubles troubles;
  private final Optional<RehearsedPlayer> rehearsed;
  private volatile Consumer<Told> tells = told -> {};
  private BallBoard board;
  private LessonStage stage = LessonStage.WHO;
  private Optional<Player> player = Optional.empty();
  private Optional<UnitTable> table = Optional.empty();
  private volatile Optional<MatSession> session = Optional.empty();
  private final DrillDesk drills;
  private Optional<Closing> closing = Optional.empty();
  private String lastTold = "";

  LessonRoom(MatOptions options, Optional<RehearsedPlayer> rehearsed) throws IOException {
    this.options = options;
    this.rehearsed = rehearsed;
    notes = LessonNotes.of(options.root());
    players = new Players(options.root());
    goals = new Goals(options.teaching());
    drills = new DrillDesk(options.teaching(), this::cue);
    troubles = new Troubles(options.root());
    board = freshBoard();
  }

  private BallBoard freshBoard() {
    return new BallBoard(
        new BallAnswer(notes.kept("player"), options.teaching()),
        notes,
        goals.main(notes.kept("goal")),
        new BallMarks(options.root(), notes, () -> session));
  }

  /** Names who is told, before the first page comes. */
  void tellsTo(Consumer<Told> pages) {
    tells = pages;
  }

  /** Goes on with a lesson that was broken off, where there is one of today. */
  synchronized void resume() {
    LessonStage was = LessonStage.of(notes.kept("stage"));
    String label = notes.kept("player");
    boolean isLate = !LessonDay.isToday(notes.kept("lesson"));
    if (was == LessonStage.WHO || was == LessonStage.CLOSING || isLate || !players.has(label)) {
      notes.forgetLesson();
      board = freshBoard();
      return;
    }
    player = Optional.of(players.known(label));
    FinishedLesson earlier =
        FinishedLesson.of(options.root(), label, notes.kept("lesson"), options.console());
    for (LessonResult run : earlier.results()) {
      run.swings().forEach(swing -> board.take(run.recording(), swing, ""));
    }
    List<UnitChoice> units = notes.list("units").stream().map(UnitChoice::of).toList();
    if (was == LessonStage.UNITS || units.isEmpty()) {
      enter(LessonStage.UNITS);
    } else {
      record(units).ifPresentOrElse(troubles::notice, () -> enter(was));
    }
  }

  @Override
  public synchronized Optional<String> act(String what, JsonNode with) {
    Optional<String> why = LessonActs.of(what).act(this, with);
    look(0);
    return why;
  }

  /** Somebody is chosen, and what the lesson is for. */
  Optional<String> begin(JsonNode with) {
    Optional<String> why = players.refusal(with);
    if (why.isPresent()) {
      return why;
    }
    Player chosen = players.chosen(with);
    notes.forgetLesson();
    notes.put("player", chosen.id());
    notes.put("lesson", players.freeLesson(chosen.id(), LessonDay.today()));
    aim(with);
    player = Optional.of(chosen);
    board = freshBoard();
    enter(LessonStage.UNITS);
    return Optional.empty();
  }

  void aim(JsonNode with) {
    notes.put("goal", with.path("goal").asText());
    notes.put("words", with.path("words").asText());
    board.showFirst(goals.main(notes.kept("goal")));
    tellBalls();
  }

  /** Enters a stage, with what it needs. */
  void enter(LessonStage next) {
    table.ifPresent(UnitTable::close);
    if (next != LessonStage.DRILL) {
      drills.end();
    }
    table =
        next == LessonStage.UNITS ? Optional.of(new UnitTable(options.units())) : Optional.empty();
    if (next == LessonStage.STEPS || next == LessonStage.CLOSING) {
      troubles.read(); // what is to be done about it is done there, or over
    }
    stage = next;
    notes.put("stage", stage.word());
  }

  MatOptions options() {
    return options;
  }

  Players players() {
    return players;
  }

  Optional<Player> player() {
    return player;
  }

  Optional<Closing> closing() {
    return closing;
  }

  Optional<UnitTable> table() {
    return table;
  }

  /** Records with the units that were told apart. */
  Optional<String> record() {
    List<UnitChoice> units = table.map(UnitTable::choices).orElse(List.of());
    if (units.isEmpty()) {
      return Optional.of(Words.say("mat.units.none"));
    }
    enter(LessonStage.TABLE); // lets go of the ports
    notes.put("units", units.stream().map(UnitChoice::word).toList());
    return record(units);
  }

  private Optional<String> record(List<UnitChoice> units) {
    try {
      MatSession.Setting setting =
          new MatSession.Setting(
              options.root(), player.orElseThrow(), notes.kept("lesson"), units, options.ports());
      session =
          Optional.of(
              MatSession.begin(
                  setting, notes, new RoomEvents(this), drills::sample, options.console()));
      return Optional.empty();
    } catch (IOException | RuntimeException e) {
      enter(LessonStage.UNITS);
      return Optional.of(String.valueOf(e.getMessage()));
    }
  }

  Optional<MatSession> session() {
    return session;
  }

  BallBoard board() {
    return board;
  }

  Troubles troubles() {
    return troubles;
  }

  Optional<RehearsedPlayer> rehearsed() {
    return rehearsed;
  }

  LessonNotes notes() {
    return notes;
  }

  LessonStage stage() {
    return stage;
  }

  DrillDesk drills() {
    return drills;
  }

  /** How the last drill went and what it brought. */
  List<String> difference() {
    return drills.difference(board.of(session.map(MatSession::run)));
  }

  private void cue(ObjectNode cue) {
    tells.accept(new Told("cue", cue));
  }

  void tell(ObjectNode ball) {
    tells.accept(new Told("ball", ball));
  }

  void tellBalls() {
    tells.accept(new Told("balls", balls()));
  }

  /** Ends the recording and reads it as {@code analyze} does. */
  void finish() {
    endSession();
    enter(LessonStage.CLOSING);
    FinishedLesson lesson =
        FinishedLesson.of(
            options.root(), notes.kept("player"), notes.kept("lesson"), options.console());
    for (LessonResult run : lesson.results()) {
      run.swings().forEach(swing -> board.take(run.recording(), swing, ""));
    }
    closing = Optional.of(new Closing(lesson, options.teaching(), players, notes));
    tellBalls();
  }

  void another() {
    endSession();
    closing = Optional.empty();
    player = Optional.empty();
    notes.forgetLesson();
    board = freshBoard();
    enter(LessonStage.WHO);
    tellBalls();
  }

  private void endSession() {
    drills.forget();
    Optional<MatSession> ending = session;
    session = Optional.empty();
    ending.ifPresent(its -> its.live().close());
  }

  /** Looks at units and steps; tells the pages where something changed. */
  synchronized void look(double sinceS) {
    table.ifPresent(units -> units.look(sinceS));
    session.ifPresent(its -> its.steps().look());
    drills.look();
    ObjectNode state = RoomJson.of(this);
    String text = state.toString();
    if (!text.equals(lastTold)) {
      lastTold = text;
      tells.accept(new Told("state", state));
    }
  }

  @Override
  public synchronized List<Told> all() {
    return List.of(new Told("state", RoomJson.of(this)), new Told("balls", balls()));
  }

  private ObjectNode balls() {
    ObjectNode node = Json.object();
    Json.list(node, "all", board.all(), ball -> ball);
    return node;
  }

  @Override
  public synchronized Optional<String> document(String name) {
    return closing.flatMap(its -> its.page(name));
  }

  /** The program ends; the lesson can go on later. */
  synchronized void close() {
    table.ifPresent(UnitTable::close);
    endSession();
  }
}
