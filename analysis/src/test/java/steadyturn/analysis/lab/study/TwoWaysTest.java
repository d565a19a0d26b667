package steadyturn.analysis.lab.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.ingest.lab.Speech;

/** The short form of {@code accuracy --two-ways}. */
class TwoWaysTest {

  @TempDir private Path folder;

  @Test
  void aLessonTypedLiveIsAsRightAsOneReadFromItsFiles() throws IOException {
    // Given: two lessons of three balls and a practice swing (seeds 402, 405: right at 500 Hz, left
    // at 200 Hz), sent with jitter of 20 ms, skew to 50 ppm and starts up to 2 s apart. Expect: the
    // same swings, clubs and step verdicts; medians within the levels the whole run has to keep.
    TwoWays both = new TwoWays(Speech.BINARY_FRAME);
    for (long seed : new long[] {402, 405}) {
      System.out.println("seed " + seed);
      both.add(seed, 3, folder.resolve("lesson-" + seed));
    }
    both.rows().forEach(System.out::println);
    assertThat(both.unlike()).isEmpty();
    assertThat(both.swings()).isEqualTo(8);
    assertThat(both.rows()).allMatch(TwoWays.Row::reached);
  }
}
