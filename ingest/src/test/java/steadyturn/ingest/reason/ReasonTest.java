package steadyturn.ingest.reason;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.entry;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import steadyturn.ingest.quality.QualityReason;
import steadyturn.ingest.sample.BodyPoint;

class ReasonTest {

  private static final Reason SLOW = Reason.of(QualityReason.SLOW, 50.4);
  private static final Reason GAP = Reason.of(QualityReason.GAP, 2, 0.31);

  @Test
  void aReasonNamesItsArgumentsInTheOrderOfItsCode() {
    assertThat(GAP.code().word()).isEqualTo("quality.gap");
    assertThat(GAP.args()).containsExactly(entry("count", 2), entry("longestS", 0.31));
  }

  @Test
  void reasonsOfOneCodeAndEqualArgumentsAreEqual() {
    assertThat(Reason.of(QualityReason.GAP, 2, 0.31)).isEqualTo(GAP).hasSameHashCodeAs(GAP);
    assertThat(Reason.of(QualityReason.GAP, 3, 0.31)).isNotEqualTo(GAP);
  }

  @Test
  void anArgumentTooFewTooManyOrOfAnotherNameIsRefused() {
    assertThatThrownBy(() -> Reason.of(QualityReason.GAP, 2))
        .hasMessageContaining("quality.gap")
        .hasMessageContaining("[count, longestS]");
    assertThatThrownBy(() -> Reason.of(QualityReason.GAP, 2, 0.31, 7))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Reason(QualityReason.SLOW, Map.of("hz", 50.4)))
        .hasMessageContaining("[rateHz], was given [hz]");
  }

  @Test
  void anArgumentIsANumberAPointANameOrAReason() {
    assertThat(Reason.of(QualityReason.ON_THE_ARM, BodyPoint.PELVIS, BodyPoint.LEAD_HAND).args())
        .containsEntry("unit", BodyPoint.PELVIS);
    assertThatThrownBy(() -> Reason.of(QualityReason.SLOW, List.of(50.4)))
        .hasMessageContaining("rateHz");
  }

  @Test
  void aSecondReasonStandsBehindTheFirstAndAThirdBehindThat() {
    Reason both = SLOW.and(GAP);
    assertThat(both.code()).isEqualTo(QualityReason.SLOW);
    assertThat(both.args()).containsExactly(entry("rateHz", 50.4), entry(Reason.ALSO, GAP));
    assertThat(both.and(SLOW).args()).containsEntry(Reason.ALSO, GAP.and(SLOW));
  }

  @Test
  void noReasonAddsNothing() {
    assertThat(Reason.NONE.isNone()).isTrue();
    assertThat(Reason.NONE.code().word()).isEmpty();
    assertThat(SLOW.isNone()).isFalse();
    assertThat(SLOW.and(Reason.NONE)).isEqualTo(SLOW);
    assertThat(Reason.NONE.and(SLOW)).isEqualTo(SLOW);
  }
}
