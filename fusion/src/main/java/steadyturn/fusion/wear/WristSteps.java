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

  /**
   * Folds the steps of one recording into what earlier recordings of the session gave.
   *
   * @param before alignment so far, {@link WristAlignment#nominal} at the start of a session
   */
  public static WristSteps of(Recording recording, RestBiases biases, WristAlignment before) {
    Optional<UnitStream> forearm = recording.unit(BodyPoint.LEAD_FOREARM);
    Optional<UnitStream> hand = recording.unit(BodyPoint.LEAD_HAND);
    if (forearm.isEmpty() || hand.isEmpty()) {
      return new WristSteps(before, List.of());
    }
    WristAlignment now = before;
    List<StepResult> results = new ArrayList<>();
    for (Mark mark : recording.marks()) {
      if (mark.trialType().equals("neutral-wrist")) {
        NeutralWrist pose =
            NeutralWrist.of(
                WristAlignment.nominal(), forearm.get(), hand.get(), mark.onsetS(), mark.endS());
        now = pose.result().used() ? pose.alignment() : now;
        results.add(pose.result());
      } else if (mark.trialType().equals("cocking")) {
        CockingStep cocking =
            CockingStep.of(
                now,
                forearm.get(),
                biases.radPerS(BodyPoint.LEAD_FOREARM),
                hand.get(),
                biases.radPerS(BodyPoint.LEAD_HAND),
                mark.onsetS(),
                mark.endS());
        now = cocking.alignment();
        results.add(cocking.result());
      }
    }
    return new WristSteps(now, results);
  }
}
