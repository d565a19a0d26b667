package steadyturn.fusion.wear.wrist;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.wear.StepResult;
import steadyturn.fusion.wear.StepSearch;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * The wear steps of the lead arm found in a recording's marks, folded into the alignment: the
 * neutral pose first, then the cocking.
 *
 * @param alignment of forearm and hand
 * @param shaft of forearm and club shaft
 * @param results how each step went, in order of time
 */
public record WristSteps(WristAlignment alignment, WristAlignment shaft, List<StepResult> results) {

  public WristSteps {
    results = List.copyOf(results);
  }

  private static final Set<String> WORDS = Set.of("neutral-wrist", "cocking");

  /** Before any step: the units as drawn. */
  public static final WristSteps NONE =
      new WristSteps(WristAlignment.nominal(), WristAlignment.nominalShaft(), List.of());

  /**
   * Folds all steps of one recording into what earlier recordings of the session gave; results are
   * those of this recording alone.
   *
   * @param before steps so far, {@link #NONE} at the start of a session
   */
  public static WristSteps of(Recording recording, RestBiases biases, WristSteps before) {
    WristSteps steps = new WristSteps(before.alignment, before.shaft, List.of());
    for (Mark mark : recording.marks()) {
      steps = steps.and(recording, biases, steps.settled(recording, biases, mark));
    }
    return steps;
  }

  /** The mark laid on that part of its stretch in which the step was done. */
  private Mark settled(Recording recording, RestBiases biases, Mark mark) {
    return search(recording, biases, mark, true)
        .map(s -> s.settled(mark, (fromS, toS) -> judged(recording, biases, mark, fromS, toS)))
        .orElse(mark);
  }

  /**
   * How a step of the lead arm stands while it is done; none for another word, or before anything
   * was seen.
   */
  public Optional<StepSearch.Attempt> look(
      Recording soFar, RestBiases biases, Mark mark, boolean isOver) {
    return search(soFar, biases, mark, isOver)
        .flatMap(s -> s.find(mark, (fromS, toS) -> judged(soFar, biases, mark, fromS, toS)));
  }

  private Optional<StepSearch> search(
      Recording recording, RestBiases biases, Mark mark, boolean isOver) {
    return recording
        .unit(BodyPoint.LEAD_HAND)
        .or(() -> recording.unit(BodyPoint.CLUB_SHAFT))
        .filter(u -> recording.unit(BodyPoint.LEAD_FOREARM).isPresent())
        .filter(u -> WORDS.contains(mark.trialType()))
        .map(u -> new StepSearch(u, biases.radPerS(u.point()), isOver));
  }

  private StepResult judged(
      Recording recording, RestBiases biases, Mark mark, double fromS, double toS) {
    List<StepResult> all = and(recording, biases, mark.during(fromS, toS)).results;
    return all.get(all.size() - 1);
  }

  /** With one more mark read; marks that are no step of the lead arm change nothing. */
  public WristSteps and(Recording recording, RestBiases biases, Mark mark) {
    Optional<UnitStream> forearm = recording.unit(BodyPoint.LEAD_FOREARM);
    Optional<UnitStream> hand = recording.unit(BodyPoint.LEAD_HAND);
    Optional<UnitStream> club = recording.unit(BodyPoint.CLUB_SHAFT);
    if (forearm.isEmpty() || (hand.isEmpty() && club.isEmpty())) {
      return this;
    }
    return switch (mark.trialType()) {
      case "neutral-wrist" -> pose(forearm.get(), hand, mark);
      case "cocking" -> cocking(forearm.get(), hand, club, biases, mark);
      default -> this;
    };
  }

  private WristSteps pose(UnitStream forearm, Optional<UnitStream> hand, Mark mark) {
    NeutralWrist beside =
        NeutralWrist.ofForearm(WristAlignment.nominalShaft(), forearm, mark.onsetS(), mark.endS());
    WristAlignment nextShaft = beside.result().used() ? beside.alignment() : shaft;
    if (hand.isEmpty()) {
      WristAlignment arm =
          new WristAlignment(nextShaft.forearm(), alignment.hand(), 0, nextShaft.source());
      return with(arm, nextShaft, beside.result());
    }
    NeutralWrist pose =
        NeutralWrist.of(WristAlignment.nominal(), forearm, hand.get(), mark.onsetS(), mark.endS());
    return with(pose.result().used() ? pose.alignment() : alignment, nextShaft, pose.result());
  }

  private WristSteps cocking(
      UnitStream forearm,
      Optional<UnitStream> hand,
      Optional<UnitStream> club,
      RestBiases biases,
      Mark mark) {
    Optional<CockingStep> byHand = hand.map(h -> cocking(alignment, forearm, h, biases, mark));
    Optional<CockingStep> byClub = club.map(c -> cocking(shaft, forearm, c, biases, mark));
    return with(
        byHand.map(CockingStep::alignment).orElse(alignment),
        byClub.map(CockingStep::alignment).orElse(shaft),
        byHand.or(() -> byClub).orElseThrow().result());
  }

  private static CockingStep cocking(
      WristAlignment before, UnitStream forearm, UnitStream other, RestBiases biases, Mark mark) {
    return CockingStep.of(
        before,
        forearm,
        biases.radPerS(forearm.point()),
        other,
        biases.radPerS(other.point()),
        mark.onsetS(),
        mark.endS());
  }

  private WristSteps with(WristAlignment next, WristAlignment nextShaft, StepResult result) {
    List<StepResult> all = new ArrayList<>(results);
    all.add(result);
    return new WristSteps(next, nextShaft, all);
  }
}
