package steadyturn.analysis.tempo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.ingest.reason.Reason;

class TempoTest {

  private static Swing swing(EventTime... events) {
    return new Swing(1, SwingKind.HIT, "", 0, 9, List.of(events), List.of());
  }

  private static EventTime at(SwingEvent event, double timeS, double sdS) {
    return new EventTime(event, timeS, sdS, Grade.MEASURED, Reason.NONE);
  }

  private static MeasureValue find(List<MeasureValue> values, Measure measure) {
    return values.stream().filter(v -> v.measure() == measure).findFirst().orElseThrow();
  }

  @Test
  void theTempoOfTourProfessionalsReadsThreeToOne() {
    // Given: 24 frames back and 8 down at 30 Hz (Grober and Cholewicki). Expect: 0.80 s, 0.267 s,
    // 3.
    // Within 1e-12: a division.
    List<MeasureValue> tempo =
        TempoMeasures.of(
            swing(
                at(SwingEvent.TAKEAWAY, 1, 0.01),
                at(SwingEvent.TOP, 1 + 24 / 30.0, 0.01),
                at(SwingEvent.IMPACT, 1 + 32 / 30.0, 0.001)));
    assertThat(find(tempo, Measure.TEMPO_BACK).value()).isCloseTo(0.8, within(1e-12));
    assertThat(find(tempo, Measure.TEMPO_DOWN).value()).isCloseTo(8 / 30.0, within(1e-12));
    assertThat(find(tempo, Measure.TEMPO_RATIO).value()).isCloseTo(3, within(1e-12));
  }

  @Test
  void theTopEntersBothPartsOfTheRatio() {
    // Given: only the top uncertain, by 10 ms. Moving it by dt changes 0.8/0.2 by dt (1 + 4)/0.2.
    // Expect: 0.25 per SD of 10 ms; half-width 1.96 times that. Within 1e-9.
    List<MeasureValue> tempo =
        TempoMeasures.of(
            swing(
                at(SwingEvent.TAKEAWAY, 1, 0),
                at(SwingEvent.TOP, 1.8, 0.01),
                at(SwingEvent.IMPACT, 2, 0)));
    MeasureValue ratio = find(tempo, Measure.TEMPO_RATIO);
    assertThat(ratio.high() - ratio.value()).isCloseTo(MeasureValue.Z95 * 0.25, within(1e-9));
  }

  @Test
  void aMissingTopWithholdsAllThreeWithTheReason() {
    List<MeasureValue> tempo = TempoMeasures.of(swing(at(SwingEvent.TAKEAWAY, 1, 0.01)));
    assertThat(tempo).hasSize(3).noneMatch(MeasureValue::given);
  }

  @Test
  void theTimeOfAFlatMaximumIsTheMiddleOfItsFlatPart() {
    // Given: a triangle whose top is cut flat from 2 to 4; 1 % below it is met at 1.98 and 4.02.
    // Expect: 3; the maximum may lie evenly in between: SD 2.04 / root of 12. Within 1e-12:
    // rounding.
    double[] time = {0, 1, 2, 3, 4, 5, 6};
    double[] value = {0, 5, 10, 10, 10, 5, 0};
    PeakTime peak = PeakTime.of(time, value, 0.01);
    assertThat(peak.timeS()).isCloseTo(3, within(1e-12));
    assertThat(peak.sdS()).isCloseTo(2.04 / Math.sqrt(12), within(1e-12));
  }
}
