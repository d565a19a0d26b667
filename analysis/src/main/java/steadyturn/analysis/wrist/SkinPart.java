package steadyturn.analysis.wrist;

/**
 * How the units slip on the moving skin: by a random turn that has grown fully at the top and by
 * another at impact, each 1 deg a unit (our assumption, docs/accuracy.md); both go over into each
 * other smoothly.
 */
record SkinPart(double takeawayS, double topS, double impactS) {

  /** Two units, 1 deg each. */
  static final double SD_RAD = Math.toRadians(1.4);

  /** Adds what an instant's angle takes of the slip at the top and at impact to {@code parts}. */
  void add(double timeS, double weight, double[] parts) {
    if (timeS <= topS) {
      parts[0] += weight * smooth((timeS - takeawayS) / (topS - takeawayS));
    } else {
      double done = smooth((timeS - topS) / (impactS - topS));
      parts[0] += weight * (1 - done);
      parts[1] += weight * done;
    }
  }

  static double sdRad(double[] parts) {
    return SD_RAD * Math.hypot(parts[0], parts[1]);
  }

  private static double smooth(double u) {
    double x = Math.max(0, Math.min(1, u));
    return x * x * (3 - 2 * x);
  }
}
