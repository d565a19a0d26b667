package steadyturn.analysis.lesson;

import java.util.List;
import java.util.Optional;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.wear.StepResult;
import steadyturn.fusion.wear.StepSearch;
import steadyturn.fusion.wear.wrist.WristSteps;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Recording;

/** The wear steps of pelvis and lead arm while they are done, read as the lesson reads them. */
public final class WornSteps {

  /** Before any step. */
  public static final WornSteps NONE = new WornSteps(PelvisSteps.NONE, WristSteps.NONE);

  private final PelvisSteps pelvis;
  private final WristSteps wrist;

  private WornSteps(PelvisSteps pelvis, WristSteps wrist) {
    this.pelvis = pelvis;
    this.wrist = wrist;
  }

  /**
   * How a step stands; none before anything was seen that could be one.
   *
   * @param isOver whether its stretch grows no more
   */
  public Optional<StepSearch.Attempt> look(Recording soFar, Mark mark, boolean isOver) {
    return soFar
        .unit(BodyPoint.PELVIS)
        .flatMap(unit -> pelvis.look(soFar, unit, mark, isOver))
        .or(() -> wrist.look(soFar, RestBiases.of(soFar), mark, isOver));
  }

  /** The verdict on a step in its stretch; one that no unit saw is to be done again. */
  public StepResult judged(Recording seen, Mark mark) {
    WornSteps next = settledAnd(seen, mark);
    List<StepResult> all =
        next.wrist.results().isEmpty() ? next.pelvis.results() : next.wrist.results();
    return all.stream()
        .filter(result -> result.step().equals(mark.trialType()))
        .reduce((one, later) -> later)
        .orElseGet(() -> StepSearch.unseen(mark));
  }

  /** With a step taken from a stretch in which it did. */
  public WornSteps and(Recording seen, Mark found) {
    return settledAnd(seen, found);
  }

  private WornSteps settledAnd(Recording seen, Mark mark) {
    PelvisSteps hips =
        seen.unit(BodyPoint.PELVIS)
            .map(unit -> pelvis.and(seen, unit, pelvis.settled(seen, unit, mark)))
            .orElse(pelvis);
    return new WornSteps(hips, WristSteps.of(seen.with(List.of(mark)), RestBiases.of(seen), wrist));
  }
}
