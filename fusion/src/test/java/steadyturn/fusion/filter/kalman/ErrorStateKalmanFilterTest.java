package steadyturn.fusion.filter.kalman;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.fusion.filter.FilterContract;
import steadyturn.fusion.filter.OrientationFilter;
import steadyturn.fusion.filter.SampleLimits;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;

class ErrorStateKalmanFilterTest extends FilterContract {

  @Override
  protected OrientationFilter newFilter(SampleLimits limits) {
    return new ErrorStateKalmanFilter(KalmanSettings.standard(), limits);
  }

  private static Quaternion rolling(double t) {
    return Quaternion.aboutX(Math.toRadians(60) * Math.sin(2 * Math.PI * t / 6));
  }

  @ParameterizedTest
  @CsvSource({"1.02", "0.98"})
  void aRateThatShowsTooMuchOrTooLittleIsFoundOutByTheVertical(double scale) {
    // Given: a unit that rolls to and fro by 60 deg every 6 s on the spot, whose gyroscope shows 2
    // %
    // too much or too little; after 301.5 s the force is lost for the 3 s it takes from one side to
    // the other, 120 deg. Expect: what 2 % of 120 deg would be off, 2.4 deg, lessened to a third,
    // as the filter has learnt the scale from the vertical before.
    OrientationFilter filter = newFilter(SampleLimits.unlimited());
    double rateHz = 100;
    int last = (int) (304.5 * rateHz);
    for (int i = 1; i <= last; i++) {
      double t = i / rateHz;
      Vector3 turn =
          rolling(t - 1 / rateHz).conjugate().times(rolling(t)).rotationVector().times(rateHz);
      Vector3 force = rolling(t).conjugate().rotate(Vector3.Z.times(9.80665));
      double seen = t > 301.5 ? Double.NaN : 1;
      filter.update(
          scale * turn.x(), 0, 0, seen * force.x(), seen * force.y(), seen * force.z(), 1 / rateHz);
    }
    assertThat(tiltDeg(filter.qEarthUnit(), rolling(304.5))).isLessThan(0.8);
  }
}
