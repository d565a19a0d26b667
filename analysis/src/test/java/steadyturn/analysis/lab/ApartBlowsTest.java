package steadyturn.analysis.lab;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.lab.family.Half;
import steadyturn.analysis.lab.family.Situation;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.find.SwingFinder;
import steadyturn.ingest.clock.CommonClock;

/** Hand and forearm that feel different blows of one swing. */
class ApartBlowsTest {

  private static final long SEED = 89000;

  @Test
  void aBlowThatTheForearmFeelsElsewhereIsKnownNoBetterThanTheyLieApart() {
    // Given: a drawn player whose swings give two blows 25 ms apart, of which hand and forearm tie
    // their clocks by different ones (tuning half). Expect: the impact holds the truth; it was 20
    // and 24 ms early and +-4.
    System.out.println("seed " + SEED);
    SyntheticLesson lesson = FamilyLessons.simulate(Situation.DOUBLE_BLOWS, Half.TUNING, SEED);
    List<Swing> swings =
        SwingFinder.withDefaults().find(CommonClock.align(lesson.recording()).recording());
    assertThat(swings).hasSameSizeAs(lesson.truth().swings());
    for (int i = 0; i < swings.size(); i++) {
      EventTime impact = swings.get(i).event(SwingEvent.IMPACT).orElseThrow();
      double trueS = lesson.truth().swings().get(i).eventS(SwingEvent.IMPACT).orElseThrow();
      assertThat(Math.abs(impact.timeS() - trueS)).isLessThan(MeasureValue.Z95 * impact.sdS());
    }
  }
}
