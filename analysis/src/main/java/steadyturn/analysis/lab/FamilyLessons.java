package steadyturn.analysis.lab;

import java.util.List;
import java.util.Set;
import steadyturn.analysis.lab.family.Dice;
import steadyturn.analysis.lab.family.Family;
import steadyturn.analysis.lab.family.Half;
import steadyturn.analysis.lab.family.Situation;
import steadyturn.ingest.sample.Handedness;

/**
 * Lessons drawn from families. Each half has so many shape families and as many error families,
 * drawn once and for all; a lesson's seed picks one of each and draws player, swings and units.
 */
public final class FamilyLessons {

  /** Shape families of a half, and error families. */
  public static final int MEMBERS = 16;

  private FamilyLessons() {}

  /** Simulates one lesson of two hits. */
  public static SyntheticLesson simulate(Situation situation, Half half, long seed) {
    return LessonSimulator.simulate(spec(situation, half, seed), seed);
  }

  /** What is simulated for a seed. */
  static LessonSpec spec(Situation situation, Half half, long seed) {
    Dice dice = dice("lesson", situation, half, seed);
    LessonSpec spec =
        LessonSpec.standard()
            .withHits(2)
            .withPractices(0)
            .withWaggles(dice.random().nextInt(3))
            .withWalking(dice.happens(0.3))
            .withHanded(dice.happens(0.3) ? Handedness.LEFT : Handedness.RIGHT)
            .withClubs(List.of(dice.one("driver", "5-wood", "6-iron", "8-iron", "pitching-wedge")))
            .withFamily(member(situation, half, seed), habits(situation, dice));
    return with(spec, situation, dice);
  }

  private static Family member(Situation situation, Half half, long seed) {
    long shape = Math.floorMod(seed, MEMBERS);
    long errors = Math.floorMod(Math.floorDiv(seed, MEMBERS) + 5 * seed, MEMBERS);
    return new Family(
        situation.shape(dice("shape", situation, half, shape)),
        situation.errors(dice("errors", situation, half, errors)));
  }

  private static Dice dice(String what, Situation situation, Half half, long index) {
    return new Dice(Draws.of(index, what + " " + situation.word() + " " + half.word(), 0));
  }

  private static LessonSpec with(LessonSpec spec, Situation situation, Dice dice) {
    return switch (situation) {
      case FINISH_LEFT -> spec.withFinishHeld(false);
      case ADDRESS_DRIFTS -> {
        double mps = dice.even(0.03, 0.12);
        yield spec.withAddressDriftMps(dice.happens(0.5) ? mps : -mps);
      }
      case NO_WEAR_STEPS -> spec.withWearSteps(false);
      default -> spec;
    };
  }

  private static Set<Habit> habits(Situation situation, Dice dice) {
    return switch (situation) {
      case FINISH_WANDERS -> Set.of(Habit.WANDERING_FINISH);
      case ADDRESS_RESTLESS -> Set.of(Habit.RESTLESS_ADDRESS);
      case ADDRESS_WAGGLES -> Set.of(Habit.RUNNING_WAGGLE);
      case SLOW_AND_PAUSING -> dice.happens(0.5) ? Set.of(Habit.PAUSE_AT_TOP) : Set.of();
      default -> Set.of();
    };
  }
}
