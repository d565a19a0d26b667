package steadyturn.fusion.wear;

import java.util.List;

/**
 * How a unit slips on the moving skin in a swing: by one random turn that has grown fully at the
 * top, by another at impact and by a third at the finish; they go over into each other with least
 * jerk, as arms move (Flash and Hogan 1985, J Neurosci 5:1688-1703, from memory; that skin does,
 * too, is our assumption). 1 deg about each axis of each unit (our assumption, docs/accuracy.md).
 */
public record SkinSlip(double takeawayS, double topS, double impactS, double finishS) {

  public static final double SD_RAD = Math.toRadians(1);

  public SkinSlip {
    if (!(takeawayS < topS && topS < impactS && impactS < finishS)) {
      throw new IllegalArgumentException(
          "takeaway, top, impact and finish must follow each other, were (s) "
              + List.of(takeawayS, topS, impactS, finishS));
    }
  }

  /** Shares of the turns at top, impact and finish that an instant has. */
  public double[] parts(double timeS) {
    double down = smooth((timeS - topS) / (impactS - topS));
    double through = smooth((timeS - impactS) / (finishS - impactS));
    double back = timeS <= topS ? smooth((timeS - takeawayS) / (topS - takeawayS)) : 1 - down;
    return new double[] {back, down - through, through};
  }

  private static double smooth(double u) {
    double x = Math.max(0, Math.min(1, u));
    return x * x * x * (10 - x * (15 - 6 * x));
  }
}
