package steadyturn.cli.words;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ClubNameTest {

  @ParameterizedTest
  @CsvSource({
    "7-iron, 7-iron",
    "7-iron shaft=stiff, 7-iron (shaft stiff)",
    "shaft=stiff 7-iron length=37.5in, '7-iron (shaft stiff, length 37.5in)'",
    "3 wood grip=mid, 3 wood (grip mid)",
    "=x, =x"
  })
  void aClubIsToldWithItsMarks(String noted, String inFull) {
    assertThat(ClubName.of(noted).inFull(Words.english())).isEqualTo(inFull);
  }

  @Test
  void marksKeepTheirOrder() {
    assertThat(ClubName.of("driver shaft=x grip=y length=z").marks().keySet())
        .containsExactly("shaft", "grip", "length");
  }
}
