package steadyturn.analysis.lab.telling;

import java.util.List;
import java.util.Set;
import steadyturn.analysis.lab.LessonSimulator;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.analysis.lab.SyntheticLesson;
import steadyturn.analysis.lab.body.PlayerStyle;
import steadyturn.analysis.lab.body.Trait;
import steadyturn.analysis.lab.body.Variation;
import steadyturn.ingest.sample.Handedness;

/**
 * A kind of player with a fault that was put in, and so what should be told of them first.
 *
 * @param causes names of the findings that are right as a priority; an empty name for none
 */
public record KnownFault(String name, Set<String> causes, PlayerStyle style, Handedness handed) {

  public KnownFault {
    causes = Set.copyOf(causes);
  }

  /** The eight kinds. */
  public static List<KnownFault> all() {
    return List.of(
        of("slider", "slide-for-turn", slider(), Handedness.RIGHT),
        of("slider-left", "slide-for-turn", slider(), Handedness.LEFT),
        of("good-turner", "", PlayerStyle.steadyTurner(), Handedness.RIGHT),
        of("good-turner-left", "", PlayerStyle.steadyTurner(), Handedness.LEFT),
        of("early-release", "early-release|cast", early(), Handedness.RIGHT),
        of("late-and-steady", "", late(), Handedness.RIGHT),
        of("fast-tempo", "quick-back", fast(), Handedness.RIGHT),
        of("mixed", "slide-for-turn", mixed(), Handedness.RIGHT));
  }

  private static KnownFault of(String name, String causes, PlayerStyle style, Handedness handed) {
    return new KnownFault(name, Set.of(causes.split("\\|", -1)), style, handed);
  }

  /** A lesson of such a player: so many balls with one club, at 200 Hz. */
  public SyntheticLesson lesson(int balls, long seed) {
    LessonSpec spec =
        LessonSpec.standard()
            .withPlayer(style)
            .withHanded(handed)
            .withHits(balls)
            .withPractices(0)
            .withRateHz(200);
    return LessonSimulator.simulate(spec, seed);
  }

  /**
   * Slides clearly: the usual slider of the simulator slides 64 mm, which the measuring error of
   * slide leaves in doubt in about one lesson of six.
   */
  private static PlayerStyle slider() {
    return PlayerStyle.slider()
        .with(Trait.TURN_TOP_DEG, Variation.about(-28, 2, 3))
        .with(Trait.SLIDE_TOP_MM, Variation.about(-78, 4, 9));
  }

  /**
   * Turns well, and lets the wrists go clearly early: of the usual early releases of the simulator
   * one in eight lies within its own interval of the limit.
   */
  private static PlayerStyle early() {
    return PlayerStyle.steadyTurner()
        .with(Trait.RELEASE_START_MS, Variation.about(230, 5, 6))
        .with(Trait.RELEASE_LENGTH_MS, PlayerStyle.earlyRelease().spread(Trait.RELEASE_LENGTH_MS));
  }

  private static PlayerStyle late() {
    return PlayerStyle.steadyTurner()
        .with(Trait.RELEASE_START_MS, PlayerStyle.lateRelease().spread(Trait.RELEASE_START_MS))
        .with(Trait.RELEASE_LENGTH_MS, PlayerStyle.lateRelease().spread(Trait.RELEASE_LENGTH_MS));
  }

  private static PlayerStyle fast() {
    return PlayerStyle.steadyTurner()
        .with(Trait.BACK_S, PlayerStyle.fastTempo().spread(Trait.BACK_S))
        .with(Trait.DOWN_S, PlayerStyle.fastTempo().spread(Trait.DOWN_S));
  }

  /** A slider with an early release and a fast tempo. */
  private static PlayerStyle mixed() {
    return slider()
        .with(Trait.RELEASE_START_MS, PlayerStyle.earlyRelease().spread(Trait.RELEASE_START_MS))
        .with(Trait.RELEASE_LENGTH_MS, PlayerStyle.earlyRelease().spread(Trait.RELEASE_LENGTH_MS))
        .with(Trait.BACK_S, Variation.about(0.62, 0.03, 0.02));
  }
}
