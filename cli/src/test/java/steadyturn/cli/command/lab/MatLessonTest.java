package steadyturn.cli.command.lab;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.analysis.lab.study.TwoWays;
import steadyturn.ingest.lab.Speech;

/** The short form of {@code accuracy --two-ways N --ports}. */
class MatLessonTest {

  /** Four times as fast as it was, which makes each delay of this machine count four times. */
  private static final double PACE = 4;

  private static final long SEED = 404;

  @TempDir private Path folder;

  @Test
  void aLessonTypedAtTheMatIsAsRightAsOneReadFromItsFiles() throws Exception {
    boolean isThere = Files.exists(Path.of("/usr/bin/socat"));
    boolean mustBeThere = "1".equals(System.getenv("STEADYTURN_CHECK"));
    assumeTrue(isThere || mustBeThere, "the program socat is not installed");
    // Given: two balls and a practice swing (right-handed, 200 Hz), units at pseudo-terminals that
    // start up to 2 s apart with clocks up to 50 ppm off, the recorder in a process of its own, its
    // marks typed. Expect: the same swings, clubs and step verdicts, and values as the levels of
    // the whole run want them; the answers of all three balls among what was said.
    Speech speech = Speech.BINARY_FRAME;
    TwoWays both = new TwoWays(speech, new MatLesson(PACE, speech)::record);
    System.out.println("seed " + SEED);
    both.add(SEED, 2, folder.resolve("lesson"));
    String said = Files.readString(folder.resolve("lesson.txt"));
    System.out.println(said);
    both.rows().forEach(System.out::println);
    assertThat(both.unlike()).isEmpty();
    assertThat(both.swings()).isEqualTo(3);
    assertThat(both.rows()).allMatch(TwoWays.Row::reached);
    assertThat(said).contains("Ball 1, ", "Ball 2, ", "Ball 3, ", "turn on spot: done");
  }
}
