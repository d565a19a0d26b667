package steadyturn.analysis.lab.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import steadyturn.ingest.lab.Speech;

/** The short form of {@code accuracy --two-ways N --ports --speak PROTOCOL}. */
class ProtocolWayTest {

  private static final long SEED = 404;

  @TempDir private Path folder;

  @ParameterizedTest
  @EnumSource(
      value = Speech.class,
      names = {"FRAMES_55_LONG", "XBUS"})
  void aUnitThatIsSetUpTwiceGivesNumbersAroundTheTruth(Speech speech) throws IOException {
    // Given: a ball and a practice swing (seed 404, 200 Hz), three units of one protocol that
    // begin as they leave the factory, are set up, lose their cable for a second after a ball, come
    // back as from the factory and are set up again; jitter of 20 ms, clocks to 50 ppm off. Expect:
    // all swings, and the truth within the intervals, of which one in 20 may miss. One protocol
    // without time and counter, whose losses show in the arrivals alone, and one with both; the
    // others by the long form (docs/units.md).
    TwoWays both = new TwoWays(speech);
    System.out.println(speech + ", seed " + SEED);
    both.add(SEED, 1, folder.resolve("lesson"));
    both.unlike().forEach(System.out::println);
    both.missed().forEach(System.out::println);
    System.out.println(both.coveredPct() + " % of " + both.judged());
    assertThat(both.swings()).isEqualTo(2);
    assertThat(both.judged()).isGreaterThan(8);
    assertThat(both.coveredPct()).isGreaterThan(90);
  }
}
