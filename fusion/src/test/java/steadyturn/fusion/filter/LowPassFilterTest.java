package steadyturn.fusion.filter;

class LowPassFilterTest extends FilterContract {

  @Override
  OrientationFilter newFilter(SampleLimits limits) {
    return new LowPassFilter(LowPassSettings.standard(), limits);
  }
}
