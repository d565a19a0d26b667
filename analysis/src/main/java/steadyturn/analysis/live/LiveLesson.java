package steadyturn.analysis.live;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.function.UnaryOperator;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.lesson.GrowingLesson;
import steadyturn.analysis.lesson.Notice;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.limits.BodyReason;
import steadyturn.analysis.swing.FaultReason;
import steadyturn.analysis.swing.UnplacedMarks;
import steadyturn.ingest.mark.MarkStretches;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.reason.ReasonCode;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;

/**
 * Follows a lesson and answers every ball. Samples may come by any threads and are only laid aside;
 * another thread looks when a finish is held, and again when all of a swing was seen. Only the last
 * half minute is kept, so a long lesson takes no more memory than a short one. Times are s on one
 * axis of the lesson, whose zero is the caller's choice.
 */
public final class LiveLesson implements AutoCloseable {

  /** A swing's address, and the rest before it, begin so long before its end at most, s. */
  private static final double MARGIN_S = 10;

  /** Where the wrong side was given no swing is found. */
  private static final Set<ReasonCode> SIDES = Set.of(BodyReason.SIDE, BodyReason.OTHER_SIDE);

  /** After so long without a swing a piece is cut, s. */
  private static final double PIECE_S = 30;

  private final LiveEvents events;
  private final GrowingLesson lesson;
  private final Executor worker;
  private CompletableFuture<Void> work = CompletableFuture.completedFuture(null);
  private final FinishGate gate = new FinishGate();
  private final LatestSamples samples;
  private final List<Mark> marks = new ArrayList<>();
  private final List<Mark> clubs = new ArrayList<>();
  private volatile double nowS = Double.NEGATIVE_INFINITY;
  private double cutS = Double.NaN;
  private volatile boolean isOver;
  private int told;
  private final Set<ReasonCode> sidesTold = new HashSet<>();

  /**
   * A lesson that begins.
   *
   * @param id what the recording is called
   * @param calibrated what makes the samples of a piece as true as those read from its files
   */
  public LiveLesson(
      String id, Player player, UnaryOperator<Recording> calibrated, LiveEvents events) {
    this(id, player, calibrated, events, AnalysisSettings.defaults().withoutCurves());
  }

  /**
   * The same.
   *
   * @param settings with curves where the course of a swing is to be shown
   */
  public LiveLesson(
      String id,
      Player player,
      UnaryOperator<Recording> calibrated,
      LiveEvents events,
      AnalysisSettings settings) {
    this(id, player, calibrated, events, settings, LiveLesson::inAThreadOfItsOwn);
  }

  /**
   * The same.
   *
   * @param worker does the looking, one look after the other
   */
  public LiveLesson(
      String id,
      Player player,
      UnaryOperator<Recording> calibrated,
      LiveEvents events,
      Executor worker) {
    this(id, player, calibrated, events, AnalysisSettings.defaults().withoutCurves(), worker);
  }

  private LiveLesson(
      String id,
      Player player,
      UnaryOperator<Recording> calibrated,
      LiveEvents events,
      AnalysisSettings settings,
      Executor worker) {
    this.worker = worker;
    samples = new LatestSamples(id, player, calibrated);
    this.events = events;
    lesson = new GrowingLesson(player, settings);
  }

  /** Takes what was recorded of the lesson before: its wear steps hold on. */
  public void before(Iterable<Recording> earlier) {
    later(() -> earlier.forEach(lesson::remember));
  }

  /** The samples of the last half minute, for whoever watches a step. */
  public LatestSamples samples() {
    return samples;
  }

  /** As {@link LatestSamples#unit}. */
  public void unit(UnitFacts facts, double startS) {
    samples.unit(facts, startS);
  }

  /**
   * Takes one sample of a unit that was laid on the axis.
   *
   * @param latencyS s since the unit's first sample
   * @param accelMps2 x, y, z; not kept
   * @param gyroRadPerS x, y, z; not kept
   */
  public synchronized void sample(
      BodyPoint point, double latencyS, double[] accelMps2, double[] gyroRadPerS) {
    double timeS = samples.add(point, latencyS, accelMps2, gyroRadPerS);
    nowS = Math.max(nowS, timeS);
    cutS = Double.isNaN(cutS) ? timeS : cutS;
    FinishGate.Sight sight = gate.sample(point, timeS, gyroRadPerS);
    if (sight == FinishGate.Sight.HELD) {
      double untilS = nowS;
      long arrivedNs = System.nanoTime();
      later(() -> tell(lesson.answer(piece(untilS, false)), arrivedNs));
    } else if (sight == FinishGate.Sight.OVER
        || (gate.isIdle() && nowS - cutS > PIECE_S && !isStepOpen())) {
      cut();
    }
  }

  /** Takes a mark: a step that was only begun reaches to the next one. */
  public synchronized void mark(Mark mark) {
    marks.add(mark);
    if (!mark.club().isEmpty()) {
      clubs.add(mark);
    }
  }

  /** Takes a mark back; the club that held before it holds on. */
  public synchronized void unmark(Mark mark) {
    marks.remove(mark);
    if (clubs.remove(mark)) {
      String before = clubs.isEmpty() ? "" : clubs.get(clubs.size() - 1).club();
      marks.add(new Mark(mark.onsetS(), 0, MarkWord.CLUB.word(), before, ""));
    }
  }

  /** Takes where in its stretch a step that was watched was done: it is looked for no more. */
  public synchronized void found(Mark step) {
    marks.removeIf(
        mark ->
            mark.durationS() == 0
                && mark.trialType().equals(step.trialType())
                && mark.onsetS() <= step.onsetS());
    marks.add(step);
  }

  private synchronized void cut() {
    double untilS = Math.nextUp(nowS);
    cutS = untilS;
    long arrivedNs = System.nanoTime();
    later(() -> settle(untilS, arrivedNs));
  }

  /** On the worker: all that belongs to the swings before this instant was seen. */
  private void settle(double untilS, long arrivedNs) {
    List<SwingResult> latest = lesson.settle(piece(untilS, true));
    List<Notice> notices = lesson.notices();
    tell(latest, arrivedNs);
    lesson.unplaced(isOver ? Double.POSITIVE_INFINITY : untilS - MARGIN_S).forEach(events::noticed);
    // units on a table, or being strapped on, look like much, but not like another side's swing
    notices.stream()
        .filter(notice -> !latest.isEmpty() || isFreshOfSide(notice))
        .forEach(events::noticed);
    if (!latest.isEmpty()) {
      events.revised(latest);
    }
  }

  /** Said once: it is true of all balls. */
  private boolean isFreshOfSide(Notice notice) {
    return SIDES.contains(notice.reason().code()) && sidesTold.add(notice.reason().code());
  }

  private void tell(List<SwingResult> results, long arrivedNs) {
    for (SwingResult swing : results) {
      if (swing.number() > told) {
        told = swing.number();
        events.measured(swing, (System.nanoTime() - arrivedNs) * 1e-9);
      }
    }
  }

  /**
   * What is kept, up to an instant.
   *
   * @param isLast whether what no later piece needs is let go
   */
  private Recording piece(double untilS, boolean isLast) {
    Recording piece = samples.between(Double.NEGATIVE_INFINITY, untilS, marksBefore(untilS));
    if (isLast) {
      letGo(untilS);
    }
    return piece;
  }

  /** A step that is still under way is read when it is over. */
  private synchronized List<Mark> marksBefore(double untilS) {
    return MarkStretches.of(marks).stream()
        .filter(mark -> mark.onsetS() < untilS && !isGoingOn(mark, untilS))
        .toList();
  }

  private synchronized void letGo(double untilS) {
    double keptFromS = untilS - MARGIN_S;
    double neededS =
        MarkStretches.of(marks).stream()
            .filter(mark -> mark.onsetS() < untilS && isGoingOn(mark, untilS))
            .mapToDouble(mark -> mark.onsetS() - MARGIN_S)
            .min()
            .orElse(keptFromS);
    marks.removeIf(
        mark -> mark.onsetS() < (isOfSwing(mark) ? keptFromS - UnplacedMarks.WITHIN_S : neededS));
    samples.dropBefore(Math.min(keptFromS, neededS));
  }

  private static boolean isGoingOn(Mark mark, double atS) {
    return mark.open() && mark.endS() > atS;
  }

  /** Notes of swings are laid on the nearest one; steps and clubs hold on by themselves. */
  private static boolean isOfSwing(Mark mark) {
    return MarkWord.of(mark.trialType())
        .filter(word -> word.isStep() || word == MarkWord.CLUB || word == MarkWord.DONE)
        .isEmpty();
  }

  /** Whether a step is under way; it is read whole. */
  private boolean isStepOpen() {
    return MarkStretches.of(marks).stream().anyMatch(mark -> isGoingOn(mark, nowS));
  }

  /** One look after the other, whatever a piece does to it. */
  private synchronized void later(Runnable look) {
    work =
        work.thenRunAsync(
            () -> {
              try {
                look.run();
              } catch (RuntimeException | StackOverflowError e) {
                events.noticed(
                    new Notice("", Reason.of(FaultReason.SWING, nowS, e.toString(), "")));
              }
            },
            worker);
  }

  private static void inAThreadOfItsOwn(Runnable look) {
    Thread thread = new Thread(look, "live lesson");
    thread.setDaemon(true);
    thread.start();
  }

  /** Looks at what is left and waits until everything was told. */
  @Override
  public void close() {
    isOver = true;
    if (!Double.isNaN(cutS)) {
      cut();
    }
    work.join();
  }
}
