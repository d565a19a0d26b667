package steadyturn.analysis.lab.curve;

/** A quantity that keeps one value. */
record Constant(double value) implements TimeFunction {

  @Override
  public void addTo(double timeS, double[] vra) {
    vra[0] += value;
  }
}
