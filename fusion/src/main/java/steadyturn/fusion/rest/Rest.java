package steadyturn.fusion.rest;

/**
 * A stretch of stillness.
 *
 * @param startS start, s on the recording's common axis
 * @param endS end, s
 */
public record Rest(double startS, double endS) {

  public Rest {
    if (!(endS > startS)) {
      throw new IllegalArgumentException(
          "rest ends at " + endS + " s, before its start " + startS + " s");
    }
  }

  public double lengthS() {
    return endS - startS;
  }
}
