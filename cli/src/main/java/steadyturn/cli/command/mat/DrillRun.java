package steadyturn.cli.command.mat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import steadyturn.analysis.coach.drill.DrillRep;
import steadyturn.analysis.coach.drill.DrillScore;
import steadyturn.analysis.coach.drill.HalfSwings;
import steadyturn.analysis.coach.drill.Rehearsal;
import steadyturn.analysis.coach.drill.SlowTurns;
import steadyturn.analysis.coach.teaching.Drill;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.compare.ComparisonRow;
import steadyturn.analysis.compare.MeanDifference;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.live.LiveTurn;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.cli.command.live.LiveSession;
import steadyturn.cli.output.json.Json;
import steadyturn.cli.output.table.DrillTable;
import steadyturn.cli.words.Verdicts;
import steadyturn.cli.words.Words;
import steadyturn.ingest.live.LiveMark;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;

/**
 * A drill while it is done: the live turn for the cue, and each repetition judged afterwards by the
 * code that scores the recording. Repetitions are marked in the recording as they are found.
 */
final class DrillRun {

  /** A turn back of so much is tried as a repetition once the hips are back, deg (our choice). */
  private static final double TURNED_DEG = -15;

  private static final double BACK_DEG = -7.5;

  /** A repetition reaches so far around its turn, and is judged so long after it, s. */
  private static final double BEFORE_S = 1.5;

  private static final double AFTER_S = 1;
  private static final double JUDGED_AFTER_S = 2;
  private static final double SWING_AFTER_S = 0.8;

  /** A swing and a slow turn closer than this are one repetition, s. */
  private static final double SAME_S = 2;

  private static final double CUE_EVERY_S = 0.01;

  private final Drill drill;
  private final Teaching teaching;
  private final LiveSession live;
  private final LiveTurn turn;
  private final List<Mark> marks = new ArrayList<>();
  private final List<SwingResult> swings = new ArrayList<>();
  private final List<Rehearsal> rehearsals = new ArrayList<>();
  private double turnedAtS = Double.NaN;
  private double furthestDeg;
  private double backAtS = Double.NaN;

  DrillRun(Drill drill, Teaching teaching, LiveSession live) {
    this.drill = drill;
    this.teaching = teaching;
    this.live = live;
    double rateHz =
        live.ports().states().stream()
            .filter(unit -> unit.point().equals(Optional.of(BodyPoint.PELVIS)))
            .mapToDouble(unit -> unit.rateHz())
            .findFirst()
            .orElse(0);
    UnitFacts facts = UnitFacts.plain(BodyPoint.PELVIS, Math.max(50, Math.rint(rateHz)));
    turn = new LiveTurn(facts, live.player().handed().sign(), CUE_EVERY_S);
  }

  Drill drill() {
    return drill;
  }

  /**
   * Hears the pelvis, by the thread of its port.
   *
   * @return the live estimate of this sample with the time of day that it is of, ms, where it was
   *     asked for anew
   */
  Optional<ObjectNode> sample(BodyPoint point, double timeS, double[] accel, double[] gyro) {
    if (point != BodyPoint.PELVIS) {
      return Optional.empty();
    }
    turn.sample(timeS, accel, gyro);
    return turn.atS() == timeS ? Optional.of(cue(System.currentTimeMillis())) : Optional.empty();
  }

  private ObjectNode cue(long nowMs) {
    double lateS = live.nowS() - turn.atS();
    ObjectNode node = Json.object();
    Json.number(node, "turn", turn.turnDeg());
    return node.put("at", nowMs - 1000 * lateS);
  }

  /** Looks whether the hips turned back and came forward again; judges what they did. */
  synchronized void look() {
    double nowS = turn.atS();
    double deg = turn.turnDeg();
    if (deg < TURNED_DEG && (Double.isNaN(turnedAtS) || deg < furthestDeg)) {
      turnedAtS = nowS;
      furthestDeg = deg;
      backAtS = Double.NaN;
    } else if (!Double.isNaN(turnedAtS) && deg > BACK_DEG && Double.isNaN(backAtS)) {
      backAtS = nowS;
    } else if (nowS - backAtS > JUDGED_AFTER_S) {
      judge(mark(turnedAtS, backAtS + AFTER_S));
      turnedAtS = Double.NaN;
      backAtS = Double.NaN;
    }
  }

  private Mark mark(double turnedS, double toS) {
    double fromS = turnedS - BEFORE_S;
    return new Mark(fromS, toS - fromS, MarkWord.DRILL_REP.word(), "", drill.name());
  }

  /** A movement without a full swing. */
  private void judge(Mark mark) {
    Recording seen = live.lesson().samples().around(mark);
    List<Rehearsal> found = Rehearsal.together(SlowTurns.of(seen), new HalfSwings().of(seen));
    boolean isSwing =
        swings.stream().anyMatch(s -> Math.abs(s.timeS(SwingEvent.TOP) - turnedAtS) < SAME_S);
    if (!found.isEmpty() && !isSwing) {
      rehearsals.addAll(found);
      add(mark);
    }
  }

  /** A full swing was found while the drill was done. */
  synchronized void swing(SwingResult swing) {
    double topS = swing.timeS(SwingEvent.TOP);
    swings.removeIf(before -> before.number() == swing.number());
    swings.add(swing);
    boolean isMarked = marks.stream().anyMatch(m -> m.onsetS() < topS && topS < m.endS());
    if (Double.isFinite(topS) && !isMarked) {
      add(mark(topS, topS + SWING_AFTER_S));
    }
  }

  private void add(Mark mark) {
    marks.add(mark);
    live.recorder()
        .mark(
            new LiveMark(
                live.timeOfDay(mark.onsetS()),
                mark.durationS(),
                mark.trialType(),
                "",
                mark.note()));
  }

  /** How it went; with full swings around it also what it brought. */
  synchronized Optional<DrillScore> score(List<SwingResult> full) {
    List<SwingResult> all = new ArrayList<>(swings);
    full.stream()
        .filter(swing -> swings.stream().noneMatch(rep -> rep.number() == swing.number()))
        .forEach(all::add);
    return DrillScore.of(teaching, marks, all, rehearsals).stream().findFirst();
  }

  ObjectNode json() {
    ObjectNode node = Goals.json(drill);
    List<DrillRep> reps = score(List.of()).map(DrillScore::reps).orElse(List.of());
    Json.list(node, "reps", reps, this::json);
    return node;
  }

  private ObjectNode json(DrillRep rep) {
    ObjectNode node = Json.object();
    BigFigure.verdict(node, rep.value(), drill.low(), drill.high());
    node.set("big", BigFigure.of(rep.value()));
    return node;
  }

  /** What it was and what it brought, in sentences. */
  List<String> said(List<SwingResult> full) {
    return score(full).filter(its -> !its.reps().isEmpty()).stream()
        .flatMap(its -> Stream.of(DrillTable.went(its), brought(its)).filter(s -> !s.isEmpty()))
        .toList();
  }

  private static String brought(DrillScore score) {
    if (score.effect().isEmpty()) {
      return "";
    }
    ComparisonRow row = score.effect().get();
    if (row.difference().isEmpty()) {
      return Words.say("drills.effect.few");
    }
    Measure measure = row.what().measure();
    MeanDifference d = row.difference().get();
    return Words.say(
        "mat.drill.brought",
        Goals.rowName(row.what()),
        BigFigure.amount(measure, row.first().mean(), true),
        BigFigure.amount(measure, row.second().mean(), true),
        BigFigure.change(measure, d.value(), d.low(), d.high()),
        PageUnits.in(Verdicts.of(row, Words.inUse())));
  }
}
