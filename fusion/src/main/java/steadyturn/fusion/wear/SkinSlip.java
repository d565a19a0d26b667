package steadyturn.fusion.wear;

/**
 * How a unit slips on the moving skin in a swing: by one random turn that has grown fully at the
 * top and by another at impact; they go over into each other smoothly. 1 deg about each axis of
 * each unit (our assumption, docs/accuracy.md).
 */
public record SkinSlip(double takeawayS, double topS, double impactS) {

  static final double SD_RAD = Math.toRadians(1);

  public SkinSlip {
    if (!(takeawayS < topS && topS < impactS)) {
      throw new IllegalArgumentException(
          "takeaway, top and impact must follow each other, were "
              + takeawayS
              + ", "
              + topS
              + " and "
              + impactS
              + " s");
    }
  }

  /** Share of the turn at the top that an instant has. */
  double topPart(double timeS) {
    return timeS <= topS ? smooth((timeS - takeawayS) / (topS - takeawayS)) : 1 - impactPart(timeS);
  }

  /** Share of the turn at impact that an instant has. */
  double impactPart(double timeS) {
    return smooth((timeS - topS) / (impactS - topS));
  }

  private static double smooth(double u) {
    double x = Math.max(0, Math.min(1, u));
    return x * x * (3 - 2 * x);
  }
}
