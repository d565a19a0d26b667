package steadyturn.ingest.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FactsTest {

  @ParameterizedTest
  @CsvSource({"RIGHT, 1, right", "LEFT, -1, left"})
  void aSideHasItsSignAndItsWord(Handedness handed, int sign, String word) {
    // h of docs/frames-and-signs.md: +1 right-handed, -1 left-handed.
    assertThat(handed.sign()).isEqualTo(sign);
    assertThat(handed.word()).isEqualTo(word);
  }

  @ParameterizedTest
  @CsvSource({
    "PELVIS, pelvis, pelvis",
    "LEAD_FOREARM, lead_forearm, leadForearm",
    "LEAD_HAND, lead_hand, leadHand",
    "CLUB_SHAFT, club_shaft, clubShaft",
    "THORAX, thorax, thorax"
  })
  void aPointHasTheWordsOfTheFiles(BodyPoint point, String tracked, String label) {
    assertThat(point.trackedPoint()).isEqualTo(tracked);
    assertThat(point.tracksysLabel()).isEqualTo(label);
    assertThat(BodyPoint.ofTrackedPoint(tracked)).contains(point);
    assertThat(BodyPoint.ofTrackedPoint(tracked + "s")).isEmpty();
  }

  @Test
  void aMarkEndsItsLengthAfterItsOnset() {
    assertThat(new Mark(2.5, 1.25, "hit", "", "").endS()).isEqualTo(3.75);
    assertThat(new Mark(2.5, 0, "hit", "", "").endS()).isEqualTo(2.5);
    assertThatThrownBy(() -> new Mark(2.5, -0.1, "hit", "", "")).hasMessageContaining("-0.1");
  }

  @Test
  void factsOfAUnitMustBeAboveZero() {
    assertThatThrownBy(() -> UnitFacts.plain(BodyPoint.PELVIS, 0)).hasMessageContaining("0 Hz");
    assertThatThrownBy(() -> new UnitFacts(BodyPoint.PELVIS, "", 100, 0, 35, false))
        .hasMessageContaining("full scales");
    assertThatThrownBy(() -> new UnitFacts(BodyPoint.PELVIS, "", 100, 157, 0, false))
        .hasMessageContaining("full scales");
  }

  @Test
  void aPlainUnitHasNoEndsAndACalibratedOneIsTheSameUnit() {
    UnitFacts plain = UnitFacts.plain(BodyPoint.PELVIS, 100);
    assertThat(plain.accelFullScaleMps2()).isInfinite();
    assertThat(plain.gyroFullScaleRadPerS()).isInfinite();
    assertThat(plain.calibrated()).isFalse();
    UnitFacts facts = new UnitFacts(BodyPoint.PELVIS, "A7", 200, 157, 35, false);
    assertThat(facts.asCalibrated())
        .isEqualTo(new UnitFacts(BodyPoint.PELVIS, "A7", 200, 157, 35, true));
  }

  @Test
  void aRecordingFindsItsUnitsAndRefusesTwoAtOnePoint() {
    UnitStream hand = stream(BodyPoint.LEAD_HAND);
    Player player = Player.unmeasured("mika", Handedness.LEFT);
    Recording recording =
        new Recording("r", player, List.of(stream(BodyPoint.PELVIS), hand), List.of());
    assertThat(recording.unit(BodyPoint.LEAD_HAND)).containsSame(hand);
    assertThat(recording.unit(BodyPoint.THORAX)).isEmpty();
    assertThatThrownBy(() -> new Recording("r", player, List.of(hand, hand), List.of()))
        .hasMessageContaining("r: two units claim the same body point");
    assertThat(player.statureMm()).isEmpty();
    assertThat(player.handed()).isEqualTo(Handedness.LEFT);
  }

  private static UnitStream stream(BodyPoint point) {
    return new UnitStream(
        UnitFacts.plain(point, 100), new double[1], new double[3][1], new double[3][1]);
  }
}
