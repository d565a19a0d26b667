package steadyturn.fusion.filter;

class ErrorStateKalmanFilterTest extends FilterContract {

  @Override
  OrientationFilter newFilter(SampleLimits limits) {
    return new ErrorStateKalmanFilter(KalmanSettings.standard(), limits);
  }
}
