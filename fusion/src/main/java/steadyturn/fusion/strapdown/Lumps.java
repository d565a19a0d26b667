package steadyturn.fusion.strapdown;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Puts slight bridges that lie close together into one, so that a unit that loses a sample here and
 * there costs a few parameters and not hundreds. What stays too slight even together is left out.
 */
final class Lumps {

  /** Bridges of a lump lie within this, s. */
  private static final double TOGETHER_S = 0.1;

  /** A longer one stands for itself, s. */
  private static final double SLIGHT_S = 0.03;

  /** Hundredths of what a unit's other errors leave (our choice): rad, m/s, m. */
  private static final double[] NOTHING = {1e-4, 3e-4, 1e-4};

  private final List<Bridge> out = new ArrayList<>();
  private final double[] squares = new double[3];
  private double beforeS = Double.NaN;

  private Lumps() {}

  static List<Bridge> of(List<Bridge> byTime) {
    Lumps lumps = new Lumps();
    for (int i = 0; i < byTime.size(); i++) {
      Bridge bridge = byTime.get(i);
      lumps.add(bridge);
      boolean endsHere =
          i + 1 == byTime.size()
              || bridge.lengthS() > SLIGHT_S
              || byTime.get(i + 1).lengthS() > SLIGHT_S
              || byTime.get(i + 1).afterS() - lumps.beforeS > TOGETHER_S;
      if (endsHere && lumps.counts()) {
        lumps.close(bridge);
      }
    }
    return lumps.out;
  }

  private void add(Bridge bridge) {
    beforeS = Double.isNaN(beforeS) ? bridge.beforeS() : beforeS;
    for (int kind = 0; kind < 3; kind++) {
      squares[kind] += bridge.sd(3 * kind) * bridge.sd(3 * kind);
    }
  }

  private boolean counts() {
    boolean counts = false;
    for (int kind = 0; kind < 3; kind++) {
      counts |= squares[kind] > NOTHING[kind] * NOTHING[kind];
    }
    return counts;
  }

  private void close(Bridge last) {
    out.add(
        new Bridge(
            last.after(),
            last.lengthS() > SLIGHT_S ? last.beforeS() : beforeS,
            last.afterS(),
            Math.sqrt(squares[0]),
            Math.sqrt(squares[1]),
            Math.sqrt(squares[2])));
    beforeS = Double.NaN;
    Arrays.fill(squares, 0);
  }
}
