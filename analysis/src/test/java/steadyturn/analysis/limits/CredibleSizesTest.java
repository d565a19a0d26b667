package steadyturn.analysis.limits;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.OptionalDouble;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;

class CredibleSizesTest {

  @ParameterizedTest
  @CsvSource({
    "240, 150, 1750, ''",
    "130, 70, 950, ''",
    "380, 270, 2300, ''",
    "24, 15, 1750, body.size body.size",
    "0.24, 0.15, 1.75, body.size body.size body.size",
    "9.4, 5.9, 1750, body.size body.size",
    "240, 1500, 1750, body.size",
    "240, 150, 175, body.size",
    "129, 120, 1750, body.size",
    "381, 150, 1750, body.size",
    "240, 69, 1750, body.size",
    "280, 271, 1750, body.size",
    "240, 150, 949, body.size",
    "240, 150, 2301, body.size",
    "200, 209, 1750, ''",
    "200, 211, 1750, body.sizes-exchanged",
    "150, 240, 1750, body.sizes-exchanged",
  })
  void sizesNoBodyHasAreTakenOut(double width, double depth, double stature, String refused) {
    // Given: sizes in mm, at the ends of what is believed, in cm, m and inches, one slip of a digit
    // and two sizes exchanged. Expect: the codes of what is taken out; the rest stays.
    CredibleSizes sizes =
        CredibleSizes.of(
            new Player(
                "p",
                Handedness.LEFT,
                OptionalDouble.of(width),
                OptionalDouble.of(depth),
                OptionalDouble.of(stature)));
    assertThat(String.join(" ", sizes.refused().stream().map(why -> why.code().word()).toList()))
        .isEqualTo(refused);
    Player player = sizes.player();
    assertThat(player.handed()).isEqualTo(Handedness.LEFT);
    boolean both = refused.contains("exchanged");
    assertThat(player.pelvisWidthMm().isPresent()).isEqualTo(!both && width >= 130 && width <= 380);
    assertThat(player.pelvisDepthMm().isPresent()).isEqualTo(!both && depth >= 70 && depth <= 270);
    assertThat(player.statureMm().isPresent()).isEqualTo(stature >= 950 && stature <= 2300);
  }

  @ParameterizedTest
  @CsvSource({"79, false", "80, true", "330, true", "331, false"})
  void theDepthOverTheWornUnitHasItsOwnEnds(double wornMm, boolean isKept) {
    // Expect: refused with its ends alone, the other sizes kept; our choice.
    Player given =
        new Player(
            "p",
            Handedness.RIGHT,
            OptionalDouble.of(240),
            OptionalDouble.of(150),
            OptionalDouble.empty(),
            OptionalDouble.of(wornMm));
    CredibleSizes sizes = CredibleSizes.of(given);
    assertThat(sizes.player().wornDepthMm().isPresent()).isEqualTo(isKept);
    assertThat(sizes.player().pelvisWidthMm()).hasValue(240);
    assertThat(sizes.player().pelvisDepthMm()).hasValue(150);
    assertThat(sizes.player().statureMm()).isEmpty();
    if (!isKept) {
      assertThat(sizes.refused().get(0).args()).containsValues("worn-depth", wornMm, 80.0, 330.0);
    }
  }
}
