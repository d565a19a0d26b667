package steadyturn.analysis.lab.curve;

import java.util.Arrays;

/** Instants at which stretches begin that lie end to end. */
final class Breaks {

  private final double[] startS;

  /** Where to look first. Threads may overwrite each other's: it is a hint, and checked. */
  private int lastFound;

  /**
   * @param startS start of each stretch, increasing
   */
  Breaks(double[] startS) {
    this.startS = startS;
  }

  int count() {
    return startS.length;
  }

  double startS(int stretch) {
    return startS[stretch];
  }

  /**
   * The stretch an instant lies in; 0 before the first. Instants come one after another: most lie
   * in the stretch of the one before.
   */
  int at(double timeS) {
    int last = lastFound;
    if (startS[last] <= timeS && (last + 1 == startS.length || timeS < startS[last + 1])) {
      return last;
    }
    int found = Arrays.binarySearch(startS, timeS);
    int stretch = found >= 0 ? found : Math.max(0, -found - 2);
    lastFound = stretch;
    return stretch;
  }
}
