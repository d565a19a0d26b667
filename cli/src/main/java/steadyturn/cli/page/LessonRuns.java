package steadyturn.cli.page;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import steadyturn.analysis.coach.drill.DrillScore;
import steadyturn.analysis.coach.drill.Rehearsal;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.lesson.Notice;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.lesson.UnitResult;
import steadyturn.analysis.measure.Curve;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;

/**
 * The recordings of one lesson laid end to end on one time axis, so that swings and marks of short
 * recordings can be held against one another; swings are numbered through.
 */
public final class LessonRuns {

  /** Longer than any recording. */
  private static final double APART_S = DrillScore.APART_S;

  private final Player player;
  private final String date;
  private final List<SwingResult> swings = new ArrayList<>();
  private final List<Mark> marks = new ArrayList<>();
  private final List<Rehearsal> rehearsals = new ArrayList<>();
  private final Set<Notice> notices = new LinkedHashSet<>();
  private final List<UnitResult> units = new ArrayList<>();
  private int runs;

  /**
   * A lesson without recordings yet.
   *
   * @param date the day, or an empty string where it was not noted
   */
  public LessonRuns(Player player, String date) {
    this.player = player;
    this.date = date;
  }

  /** Adds the next recording with the marks noted and the rehearsals seen while it ran. */
  public void add(LessonResult result, List<Mark> itsMarks, List<Rehearsal> itsRehearsals) {
    double laterS = runs * APART_S;
    runs++;
    itsRehearsals.forEach(t -> rehearsals.add(t.later(laterS)));
    result.swings().forEach(s -> swings.add(later(s, laterS, swings.size() + 1)));
    for (Mark m : itsMarks) {
      marks.add(new Mark(m.onsetS() + laterS, m.durationS(), m.trialType(), m.club(), m.note()));
    }
    notices.addAll(result.notices());
    units.addAll(result.units());
  }

  /** Adds what a reader should know of the lesson; none is left out. */
  public void note(Reason reason) {
    if (!reason.isNone()) {
      notices.add(new Notice("", reason));
    }
  }

  private static SwingResult later(SwingResult s, double laterS, int number) {
    return new SwingResult(
        number,
        s.club(),
        s.kind(),
        s.flags(),
        s.events().stream()
            .map(e -> new EventTime(e.event(), e.timeS() + laterS, e.sdS(), e.grade(), e.why()))
            .toList(),
        s.measures(),
        s.curves().stream().map(c -> later(c, laterS)).toList(),
        s.note());
  }

  private static Curve later(Curve c, double laterS) {
    return new Curve(
        c.id(), c.unit(), c.timeS().stream().map(t -> t + laterS).toList(), c.value(), c.sd());
  }

  /** How the drills marked in these recordings went. */
  public List<DrillScore> scores(Teaching teaching) {
    return DrillScore.of(teaching, marks, swings, rehearsals);
  }

  String date() {
    return date;
  }

  /** The units of all recordings. */
  public Stream<UnitResult> units() {
    return units.stream();
  }

  public Player player() {
    return player;
  }

  List<SwingResult> swings() {
    return swings;
  }

  /** Balls struck that count, repetitions of drills apart; else the practice swings. */
  List<SwingResult> hits() {
    List<SwingResult> hits = of(SwingKind.HIT);
    return hits.isEmpty() ? of(SwingKind.PRACTICE) : hits;
  }

  List<SwingResult> of(SwingKind kind) {
    return swings.stream().filter(s -> s.kind() == kind && s.counts()).toList();
  }

  /** The club of every ball struck, drill repetitions apart. */
  public List<String> clubsHit() {
    return hits().stream().map(SwingResult::club).toList();
  }

  List<Mark> marks() {
    return marks;
  }

  List<Rehearsal> rehearsals() {
    return rehearsals;
  }

  List<Notice> notices() {
    return List.copyOf(notices);
  }
}
