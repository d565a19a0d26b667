package steadyturn.analysis.lesson;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.lab.LessonSimulator;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.analysis.lab.unit.UnitGrade;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

class UnitTallyTest {

  @Test
  void aLessonReadInPiecesSaysTheSameOfItsUnitsAsReadAtOnce() {
    // Given: a lesson of two balls at 200 Hz whose first half lost every tenth sample of each unit
    // and whose blows saturate the arm units; read at once, and in three pieces that overlap by
    // 6 s. Expect: the same loss, saturation and rate. Within 0.02 % of loss and 0.01 Hz: the
    // sample
    // that joins two pieces is counted in both.
    Recording whole = withLossInTheFirstHalf();
    double endS = whole.units().get(0).timeS(whole.units().get(0).size() - 1);
    List<Recording> pieces =
        List.of(
            between(whole, -10, 0.4 * endS + 3),
            between(whole, 0.4 * endS - 3, 0.7 * endS + 3),
            between(whole, 0.7 * endS - 3, endS + 10));
    List<UnitResult> atOnce = LessonAnalyzer.withDefaults().analyze(List.of(whole)).get(0).units();
    List<UnitResult> joined = LessonAnalyzer.withDefaults().analyze(pieces).get(0).units();
    assertThat(joined).hasSameSizeAs(atOnce);
    for (int k = 0; k < atOnce.size(); k++) {
      assertThat(joined.get(k).lostPct()).isCloseTo(atOnce.get(k).lostPct(), within(0.02));
      assertThat(joined.get(k).lostPct()).isGreaterThan(4);
      assertThat(joined.get(k).rateHz()).isCloseTo(atOnce.get(k).rateHz(), within(0.01));
      assertThat(joined.get(k).saturatedSamples()).isEqualTo(atOnce.get(k).saturatedSamples());
    }
    assertThat(joined.stream().mapToInt(UnitResult::saturatedSamples).sum()).isPositive();
  }

  private static Recording withLossInTheFirstHalf() {
    Recording lesson =
        LessonSimulator.simulate(
                LessonSpec.standard()
                    .withHits(2)
                    .withPractices(0)
                    .withWaggles(0)
                    .withRateHz(200)
                    .withUnitGrade(UnitGrade.RAW),
                3)
            .recording();
    List<UnitStream> units = lesson.units().stream().map(UnitTallyTest::lossy).toList();
    return new Recording("made", lesson.player(), units, lesson.marks());
  }

  private static UnitStream lossy(UnitStream unit) {
    List<Integer> kept = new ArrayList<>();
    for (int i = 0; i < unit.size(); i++) {
      if (i > unit.size() / 2 || i % 10 != 5) {
        kept.add(i);
      }
    }
    double[][] columns = new double[7][kept.size()];
    for (int k = 0; k < kept.size(); k++) {
      int i = kept.get(k);
      columns[0][k] = unit.timeS(i);
      for (int axis = 0; axis < 3; axis++) {
        columns[1 + axis][k] = unit.accelMps2(axis, i);
        columns[4 + axis][k] = unit.gyroRadPerS(axis, i);
      }
    }
    return new UnitStream(
        unit.facts(),
        columns[0],
        new double[][] {columns[1], columns[2], columns[3]},
        new double[][] {columns[4], columns[5], columns[6]});
  }

  private static Recording between(Recording whole, double fromS, double toS) {
    return new Recording(
        whole.id(),
        whole.player(),
        whole.units().stream().map(u -> u.between(fromS, toS)).toList(),
        whole.marks().stream().filter(m -> m.onsetS() < toS && m.endS() >= fromS).toList());
  }
}
