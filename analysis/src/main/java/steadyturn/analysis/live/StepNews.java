package steadyturn.analysis.live;

import steadyturn.fusion.wear.StepResult;
import steadyturn.ingest.mark.MarkWord;

/**
 * What happened in a wear step that is being done.
 *
 * @param heldS how long it has been still by now, s; 0 where it is not a step of stillness
 */
public record StepNews(MarkWord step, What what, double heldS, StepResult result) {

  /** What a person is told. */
  public enum What {
    /** Still so far; there is more to come. */
    HOLDING,
    /** It was tried and did not do. */
    AGAIN,
    DONE
  }
}
