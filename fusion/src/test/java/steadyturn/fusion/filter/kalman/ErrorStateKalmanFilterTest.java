package steadyturn.fusion.filter.kalman;

import steadyturn.fusion.filter.FilterContract;
import steadyturn.fusion.filter.OrientationFilter;
import steadyturn.fusion.filter.SampleLimits;

class ErrorStateKalmanFilterTest extends FilterContract {

  @Override
  protected OrientationFilter newFilter(SampleLimits limits) {
    return new ErrorStateKalmanFilter(KalmanSettings.standard(), limits);
  }
}
