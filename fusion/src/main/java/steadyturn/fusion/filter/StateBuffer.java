package steadyturn.fusion.filter;

/**
 * Numbers laid down in order, then taken up in the same order: how filter parts save and resume.
 */
final class StateBuffer {

  private double[] values;
  private int at;

  StateBuffer() {
    values = new double[512];
  }

  StateBuffer(double[] saved) {
    values = saved;
  }

  void put(double value) {
    if (at == values.length) {
      values = java.util.Arrays.copyOf(values, 2 * values.length);
    }
    values[at++] = value;
  }

  void putAll(double[] many) {
    for (double value : many) {
      put(value);
    }
  }

  double next() {
    return values[at++];
  }

  void nextInto(double[] many) {
    for (int i = 0; i < many.length; i++) {
      many[i] = next();
    }
  }

  double[] toArray() {
    return java.util.Arrays.copyOf(values, at);
  }

  int length() {
    return at;
  }
}
