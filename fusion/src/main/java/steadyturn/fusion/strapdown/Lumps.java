package steadyturn.fusion.strapdown;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

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
  private Optional<Bridge> longest = Optional.empty();
  private double sinceS;

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
              || byTime.get(i + 1).afterS() - lumps.sinceS > TOGETHER_S;
      if (endsHere && lumps.counts()) {
        lumps.close(bridge);
      }
    }
    return lumps.out;
  }

  private void add(Bridge bridge) {
    sinceS = longest.isEmpty() ? bridge.beforeS() : sinceS;
    longest = longest.filter(l -> l.lengthS() >= bridge.lengthS()).or(() -> Optional.of(bridge));
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

  /** The lump acts behind its last gap and goes by the longest. */
  private void close(Bridge last) {
    Bridge shown = longest.orElse(last);
    out.add(
        new Bridge(
            last.after(),
            shown.beforeS(),
            shown.afterS(),
            Math.sqrt(squares[0]),
            Math.sqrt(squares[1]),
            Math.sqrt(squares[2])));
    longest = Optional.empty();
    Arrays.fill(squares, 0);
  }
}
