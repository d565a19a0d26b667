package steadyturn.ingest.recording;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;

/** What others call our body points. */
class PointWordsTest {

  @ParameterizedTest
  @CsvSource({
    "lead_hand, RIGHT, LEAD_HAND",
    "Lead Forearm, LEFT, LEAD_FOREARM",
    "left_hand, RIGHT, LEAD_HAND",
    "hand-left, RIGHT, LEAD_HAND",
    "LeftForearm, RIGHT, LEAD_FOREARM",
    "forearm right, LEFT, LEAD_FOREARM",
    "right_hand, LEFT, LEAD_HAND",
    "sacrum, LEFT, PELVIS",
    "Pelvis, RIGHT, PELVIS",
    "thorax, RIGHT, THORAX",
    "club-shaft, RIGHT, CLUB_SHAFT"
  })
  void aPointIsKnownByTheWordsOfOthers(String word, Handedness handed, BodyPoint point) {
    assertThat(PointWords.pointOf(word, handed)).contains(point);
  }

  @ParameterizedTest
  @CsvSource({"right_hand, RIGHT", "left_hand, LEFT", "hip, RIGHT", "wrist, LEFT", "hand, RIGHT"})
  void theTrailArmAndVagueWordsAreNoPoint(String word, Handedness handed) {
    assertThat(PointWords.pointOf(word, handed)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "lead_hand, true",
    "leadforearm, true",
    "sacrum, true",
    "left_hand, false",
    "hip, false"
  })
  void withoutASideLeftAndRightStayUnknown(String word, boolean known) {
    assertThat(PointWords.pointOf(word).isPresent()).isEqualTo(known);
  }
}
