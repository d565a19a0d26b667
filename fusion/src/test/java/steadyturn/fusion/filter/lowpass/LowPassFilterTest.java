package steadyturn.fusion.filter.lowpass;

import steadyturn.fusion.filter.FilterContract;
import steadyturn.fusion.filter.OrientationFilter;
import steadyturn.fusion.filter.SampleLimits;

class LowPassFilterTest extends FilterContract {

  @Override
  protected OrientationFilter newFilter(SampleLimits limits) {
    return new LowPassFilter(LowPassSettings.standard(), limits);
  }
}
