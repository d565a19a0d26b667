package steadyturn.fusion.wear;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * The wear steps of the lead arm found in a recording's marks, folded into the alignment: the
 * neutral pose first, then the cocking.
 *
 * @param results how each step went, in order of time
 */
public record WristSteps(WristAlignment alignment, List<StepResult> results) {

  public WristSteps {
    results = List.copyOf(results);
  }

  /** Before any step: the units as drawn. */
  public static final WristSteps NONE = new WristSteps(WristAlignment.nominal(), List.of());

  /**
   * Folds all steps of one recording into what earlier recordings of the session gave.
   *
   * @param before alignment so far, {@link WristAlignment#nominal} at the start of a session
   */
  public static WristSteps of(Recording recording, RestBiases biases, WristAlignment before) {
    WristSteps steps = new WristSteps(before, List.of());
    for (Mark mark : recording.marks()) {
      steps = steps.and(recording, biases, mark);
    }
    return steps;
  }

  /** With one more mark read; marks that are no step of the lead arm change nothing. */
  public WristSteps and(Recording recording, RestBiases biases, Mark mark) {
    Optional<UnitStream> forearm = recording.unit(BodyPoint.LEAD_FOREARM);
    Optional<UnitStream> hand = recording.unit(BodyPoint.LEAD_HAND);
    if (forearm.isEmpty() || hand.isEmpty()) {
      return this;
    }
    return switch (mark.trialType()) {
      case "neutral-wrist" -> pose(forearm.get(), hand.get(), mark);
      case "cocking" -> cocking(forearm.get(), hand.get(), biases, mark);
      default -> this;
    };
  }

  private WristSteps pose(UnitStream forearm, UnitStream hand, Mark mark) {
    NeutralWrist pose =
        NeutralWrist.of(WristAlignment.nominal(), forearm, hand, mark.onsetS(), mark.endS());
    return with(pose.result().used() ? pose.alignment() : alignment, pose.result());
  }

  private WristSteps cocking(UnitStream forearm, UnitStream hand, RestBiases biases, Mark mark) {
    CockingStep step =
        CockingStep.of(
            alignment,
            forearm,
            biases.radPerS(BodyPoint.LEAD_FOREARM),
            hand,
            biases.radPerS(BodyPoint.LEAD_HAND),
            mark.onsetS(),
            mark.endS());
    return with(step.alignment(), step.result());
  }

  private WristSteps with(WristAlignment next, StepResult result) {
    List<StepResult> all = new ArrayList<>(results);
    all.add(result);
    return new WristSteps(next, all);
  }
}
