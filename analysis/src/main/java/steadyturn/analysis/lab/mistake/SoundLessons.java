package steadyturn.analysis.lab.mistake;

import java.util.List;
import steadyturn.analysis.lab.FamilyLessons;
import steadyturn.analysis.lab.LessonSimulator;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.analysis.lab.SyntheticLesson;
import steadyturn.analysis.lab.body.PlayerStyle;
import steadyturn.analysis.lab.family.Half;
import steadyturn.analysis.lab.family.Situation;
import steadyturn.ingest.sample.Handedness;

/** Lessons without a mistake: all styles and all families for tuning, both hands, short. */
final class SoundLessons {

  private SoundLessons() {}

  /** Styles and families take turns. */
  static SyntheticLesson of(long seed) {
    long turn = Math.floorDiv(seed, 2L);
    return Math.floorMod(seed, 2L) == 0
        ? LessonSimulator.simulate(styled(turn), seed)
        : FamilyLessons.simulate(one(List.of(Situation.values()), turn), Half.TUNING, seed);
  }

  private static LessonSpec styled(long turn) {
    return LessonSpec.standard()
        .withPlayer(one(PlayerStyle.all(), turn))
        .withHanded(turn % 2 == 0 ? Handedness.RIGHT : Handedness.LEFT)
        .withRateHz(turn % 4 < 2 ? 200 : 500)
        .withHits(3)
        .withPractices(1);
  }

  private static <T> T one(List<T> all, long turn) {
    return all.get((int) Math.floorMod(turn, (long) all.size()));
  }
}
