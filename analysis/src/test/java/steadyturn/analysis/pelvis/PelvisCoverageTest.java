package steadyturn.analysis.pelvis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.ingest.sample.Handedness;

/** Whether the intervals hold what they say, neither less nor more. */
class PelvisCoverageTest {

  @ParameterizedTest
  @EnumSource(Handedness.class)
  void ninetyFivePercentIntervalsHoldNinetyFivePercentAndAreNotTwiceAsWide(Handedness handed) {
    // Given: 400 swings whose motion, mounting and aim are off by their joint covariance (seed 12).
    // Expect: each interval holds the truth in 91 to 99 %; within 4 sigma of 95 %, 1.1 each.
    List<Measure> watched =
        List.of(
            Measure.PELVIS_TURN,
            Measure.PELVIS_SLIDE,
            Measure.PELVIS_THRUST,
            Measure.PELVIS_LIFT,
            Measure.PELVIS_TILT,
            Measure.PELVIS_SIDETILT,
            Measure.PELVIS_SLIDE_PER_TURN,
            Measure.PELVIS_CENTRE_ALONG,
            Measure.PELVIS_CENTRE_ACROSS,
            Measure.PELVIS_CENTRE_DISTANCE);
    double[][] root =
        new CholeskyDecomposition(MatrixUtils.createRealMatrix(MadePelvis.jointCovariance()))
            .getL()
            .getData();
    Random random = new Random(12);
    List<EventTime> top = List.of(PelvisMeasuresTest.event(SwingEvent.TOP, MadePelvis.TOP_S));
    List<MeasureValue> truth = PelvisMeasuresTest.measures(MadePelvis.of(handed), top);
    int[] held = new int[watched.size()];
    int n = 400;
    for (int i = 0; i < n; i++) {
      List<MeasureValue> one =
          PelvisMeasuresTest.measures(
              MadePelvis.of(handed).with(MadePelvis.draw(random, root)), top);
      for (int m = 0; m < held.length; m++) {
        MeasureValue value = PelvisMeasuresTest.find(one, watched.get(m), "top");
        double wanted = PelvisMeasuresTest.find(truth, watched.get(m), "top").value();
        held[m] += value.low() <= wanted && wanted <= value.high() ? 1 : 0;
      }
    }
    for (int m = 0; m < held.length; m++) {
      assertThat(100.0 * held[m] / n).as(watched.get(m).id()).isBetween(90.5, 99.0);
    }
  }
}
