package steadyturn.analysis.live;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import steadyturn.analysis.lesson.WornSteps;
import steadyturn.fusion.wear.StepResult;
import steadyturn.fusion.wear.StepSearch.Attempt;
import steadyturn.ingest.mark.MarkStretches;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Recording;

/**
 * Watches a wear step while it is done, by the code that reads it afterwards. One step at a time;
 * looked at every now and then. Times are those of the samples.
 */
public final class StepCoach {

  /** Before a movement its rest is seen, s. */
  private static final double BEFORE_S = 1.5;

  /** A step of stillness looks back so far: two seconds, and what came since the last look. */
  private static final double STILL_BACK_S = 3;

  private static final double COUNTED_S = 0.5;
  private static final double STILL_S = 2;

  /** Where a stretch is tried; the same places as when it is looked for afterwards, s. */
  private static final double HOP_S = 0.1;

  private final LatestSamples samples;
  private final Consumer<Mark> found;
  private WornSteps worn = WornSteps.NONE;
  private Optional<MarkWord> step = Optional.empty();
  private double sinceS;
  private double heldS;
  private double toldOfS;

  /**
   * A coach.
   *
   * @param found is told in which stretch a step was done
   */
  public StepCoach(LatestSamples samples, Consumer<Mark> found) {
    this.samples = samples;
    this.found = found;
  }

  /**
   * The steps that these units can show, in their order; the tilt, which needs a ruler, is only
   * asked for.
   */
  public static List<MarkWord> shownBy(List<BodyPoint> worn) {
    boolean hasPelvis = worn.contains(BodyPoint.PELVIS);
    boolean hasWrist = worn.contains(BodyPoint.LEAD_FOREARM) && worn.size() > (hasPelvis ? 2 : 1);
    return MarkWord.steps().stream()
        .filter(step -> step != MarkWord.TILT)
        .filter(
            step ->
                (step == MarkWord.NEUTRAL_WRIST || step == MarkWord.COCKING) ? hasWrist : hasPelvis)
        .toList();
  }

  /** Begins to watch a step; one that was under way is left. */
  public void begin(MarkWord begun, double atS) {
    step = Optional.of(begun);
    sinceS = atS;
    heldS = 0;
    toldOfS = atS;
    samples.keepFrom(atS - BEFORE_S);
  }

  /** The step that is under way. */
  public Optional<MarkWord> step() {
    return step;
  }

  /**
   * How the step went of which the end was noted; it is over.
   *
   * @return none where no step was under way
   */
  public Optional<StepNews> end(double atS) {
    if (step.isEmpty()) {
      return Optional.empty();
    }
    MarkWord word = step.get();
    Recording seen = since(sinceS - BEFORE_S);
    Mark mark = open(sinceS, atS);
    Optional<Attempt> attempt = worn.look(seen, mark, true);
    if (attempt.filter(a -> a.result().used()).isPresent()) {
      return Optional.of(done(word, seen, attempt.get()));
    }
    leave();
    StepResult result = attempt.map(Attempt::result).orElseGet(() -> worn.judged(seen, mark));
    return Optional.of(new StepNews(word, StepNews.What.AGAIN, 0, result));
  }

  private void leave() {
    step = Optional.empty();
    samples.keepFrom(Double.POSITIVE_INFINITY);
  }

  /** What is new; a step that is done is over. */
  public Optional<StepNews> look(double nowS) {
    if (step.isEmpty()) {
      return Optional.empty();
    }
    if (nowS - sinceS > MarkStretches.LONGEST_STEP_S) {
      return end(nowS);
    }
    double toS = Math.max(sinceS, samples.heardToS(nowS));
    return isStill(step.get()) ? lookStill(step.get(), toS) : lookMoved(step.get(), toS);
  }

  private static boolean isStill(MarkWord word) {
    return word != MarkWord.BOW && word != MarkWord.COCKING && word != MarkWord.TURN_ON_SPOT;
  }

  private Optional<StepNews> lookStill(MarkWord word, double nowS) {
    double hops = Math.floor((nowS - STILL_BACK_S - sinceS) / HOP_S);
    double fromS = sinceS + Math.max(0, hops) * HOP_S;
    Recording seen = since(fromS);
    Optional<Attempt> attempt = worn.look(seen, open(fromS, nowS), false);
    if (attempt.filter(a -> a.result().used()).isPresent()) {
      return Optional.of(done(word, seen, attempt.get()));
    }
    double before = heldS;
    heldS = heldS(seen, nowS);
    if (heldS > before) {
      return Optional.of(
          new StepNews(word, StepNews.What.HOLDING, heldS, StepResult.good(word.word(), 0, 0, "")));
    }
    boolean isBroken = before >= 2 * COUNTED_S && heldS == 0;
    return attempt
        .filter(a -> isBroken)
        .map(a -> new StepNews(word, StepNews.What.AGAIN, 0, a.result()));
  }

  /** For how many half seconds up to now the step would do, s. */
  private double heldS(Recording seen, double nowS) {
    double held = 0;
    while (held + COUNTED_S < STILL_S && nowS - held - COUNTED_S >= sinceS) {
      double lengthS = held + COUNTED_S;
      Mark tail = new Mark(nowS - lengthS, lengthS, step.orElseThrow().word(), "", "");
      if (!worn.judged(seen, tail).used()) {
        return held;
      }
      held = lengthS;
    }
    return held;
  }

  private Optional<StepNews> lookMoved(MarkWord word, double nowS) {
    Recording seen = since(sinceS - BEFORE_S);
    Optional<Attempt> attempt = worn.look(seen, open(sinceS, nowS), false);
    if (attempt.filter(a -> a.result().used()).isPresent()) {
      return Optional.of(done(word, seen, attempt.get()));
    }
    Optional<Attempt> tried = attempt.filter(a -> a.toS() > toldOfS);
    tried.ifPresent(a -> toldOfS = a.toS());
    return tried.map(a -> new StepNews(word, StepNews.What.AGAIN, 0, a.result()));
  }

  private StepNews done(MarkWord word, Recording seen, Attempt attempt) {
    Mark laid = attempt.laid(open(sinceS, attempt.toS()));
    worn = worn.and(seen, laid);
    found.accept(laid);
    leave();
    return new StepNews(word, StepNews.What.DONE, STILL_S, attempt.result());
  }

  private Recording since(double fromS) {
    return samples.between(fromS, Double.POSITIVE_INFINITY, List.of());
  }

  private Mark open(double fromS, double toS) {
    return new Mark(fromS, 0, step.orElseThrow().word(), "", "").openFor(toS - fromS);
  }
}
