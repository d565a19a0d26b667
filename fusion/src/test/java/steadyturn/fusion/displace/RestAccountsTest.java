package steadyturn.fusion.displace;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Swings of a player who drifts at address, or sways. */
class RestAccountsTest {

  /** A sway that does not last: 4 mm/s, 6 mm/s of it for half a second. */
  private static RestAccounts gaining(double gain) {
    return RestAccounts.of(
        20 + gain, 20, 20 + gain, Optional.of(new RestSway(0.004, 0.002, 0.006)));
  }

  @Test
  void mostSwingsOfALessonTellASlowDriftThatNoneTellsAlone() {
    // Given: what two swings of a drawn player gained by a drift of 3 cm/s, 49 and 59, where sway
    // may gain up to 100 (the same lesson's slide was 67 mm off and +-20, unflagged). Expect: no
    // swing says so alone, both together do.
    assertThat(gaining(49).drifts()).isFalse();
    assertThat(RestAccounts.areOfDrifting(List.of(gaining(49), gaining(59)))).isTrue();
    assertThat(RestAccounts.areOfDrifting(List.of(gaining(59)))).isFalse();
  }

  @Test
  void oneOfManyThatLeansIsSway() {
    assertThat(
            RestAccounts.areOfDrifting(List.of(gaining(59), gaining(49), gaining(5), gaining(2))))
        .isFalse();
  }

  @Test
  void oneClearSwingIsEnough() {
    assertThat(RestAccounts.areOfDrifting(List.of(gaining(120), gaining(5), gaining(2)))).isTrue();
  }
}
