package steadyturn.analysis.coach.teaching;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The shipped rules cannot say of a player what is good and that it is wrong. */
class OppositesTest {

  private static final Teaching SHIPPED = TeachingReader.shipped();

  @ParameterizedTest(name = "{0} never beside {1}")
  @CsvSource({
    "slide-for-turn, steady-centre",
    "slides-away, steady-centre",
    "centre-off, steady-centre",
    "little-turn, full-turn",
    "turn-cut-short, full-turn",
    "stays-back, comes-forward",
    "pelvis-behind, comes-forward",
    "cast, keeps-angle",
    "early-release, keeps-angle",
    "quick-back, calm-tempo",
    "uneven-turn, same-each-time"
  })
  void whatIsWrongAndWhatIsGoodExcludeEachOther(String wrong, String good) {
    // Expect: one measure that would have to lie above one limit and below another under it. As a
    // whole interval must lie beyond a limit, both then hold of no swings whatever.
    List<Need> ofGood = rule(SHIPPED.good().stream(), good);
    boolean excluded =
        needsOf(wrong).stream()
            .anyMatch(one -> ofGood.stream().anyMatch(two -> opposite(one, two)));
    assertThat(excluded).isTrue();
  }

  private static List<Need> needsOf(String name) {
    List<Need> ofFinding = rule(SHIPPED.findings().stream(), name);
    return ofFinding.isEmpty() ? SHIPPED.consequence(name).seenWhen() : ofFinding;
  }

  private static List<Need> rule(Stream<Rule> rules, String name) {
    return rules.filter(r -> r.name().equals(name)).flatMap(r -> r.when().stream()).toList();
  }

  private static boolean opposite(Need one, Need two) {
    if (!one.what().equals(two.what())
        || one.ofSpread() != two.ofSpread()
        || one.above() == two.above()) {
      return false;
    }
    double least = SHIPPED.limit(one.above() ? one.limit() : two.limit()).value();
    double most = SHIPPED.limit(one.above() ? two.limit() : one.limit()).value();
    return least >= most;
  }
}
