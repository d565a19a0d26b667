package steadyturn.fusion.filter;

class ComplementaryFilterTest extends FilterContract {

  @Override
  protected OrientationFilter newFilter(SampleLimits limits) {
    return new ComplementaryFilter(ComplementarySettings.standard(), limits);
  }
}
