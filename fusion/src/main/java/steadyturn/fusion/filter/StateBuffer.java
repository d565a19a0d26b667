package steadyturn.fusion.filter;

/**
 * Numbers laid down in order, then taken up in the same order: how filter parts save and resume.
 */
public final class StateBuffer {

  private double[] values;
  private int at;

  public StateBuffer() {
    values = new double[512];
  }

  public StateBuffer(double[] saved) {
    values = saved;
  }

  public void put(double value) {
    if (at == values.length) {
      values = java.util.Arrays.copyOf(values, 2 * values.length);
    }
    values[at++] = value;
  }

  public void putAll(double[] many) {
    for (double value : many) {
      put(value);
    }
  }

  public double next() {
    return values[at++];
  }

  public void nextInto(double[] many) {
    for (int i = 0; i < many.length; i++) {
      many[i] = next();
    }
  }

  public double[] toArray() {
    return java.util.Arrays.copyOf(values, at);
  }

  public int length() {
    return at;
  }
}
