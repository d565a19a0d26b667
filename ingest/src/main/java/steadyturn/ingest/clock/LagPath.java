package steadyturn.ingest.clock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import steadyturn.ingest.sample.UnitStream;

/**
 * How the lag between two clocks went over a whole recording, to a tenth of a second, from the
 * turning that two units share. Of all courses of the lag the likeliest is taken (Viterbi's
 * algorithm, 1967): it moves slowly, as crystals do, and jumps only where what follows says so
 * again and again.
 *
 * @param rivalS how far beside it a course as likely lies, as swings look alike; else 0, s
 */
record LagPath(List<LagPath.Window> windows, double rivalS) {

  /**
   * A stretch in which both turned.
   *
   * @param timeS its middle on the unit's clock, s
   * @param lagS how much later the other's clock shows the same, s
   */
  record Window(double timeS, double lagS) {}

  static final double STEP_S = 0.05;

  /** An outage of 10 s is still found, and what starts and crystals add, s. */
  private static final double REACH_S = 12;

  static final int MOST = (int) Math.round(REACH_S / STEP_S);
  static final int STATES = 2 * MOST + 1;

  /** Lags as good as the stated one, steps. */
  private static final int AS_STATED = 2;

  /** What a jump, a start stated wrong, a step of a crystal must be worth (our choice). */
  private static final double JUMP = 28;

  private static final double WRONG_START = 12;
  private static final double DRIFT = 0.5;

  /** Windows that lie so near each other in the other's time hold the same samples, s. */
  private static final double TWICE_S = 0.1;

  /** By so much a lag must be likelier than that beyond a jump, or than a rival, to be sure. */
  private static final double SURELY = 8;

  private static final double AS_STATED_SURELY = 3;

  /** Less than that is a crystal's, s. */
  private static final double JUMPED_S = 0.25;

  LagPath {
    windows = List.copyOf(windows);
  }

  LagPath(List<Window> windows) {
    this(windows, 0);
  }

  static LagPath of(UnitStream unit, UnitStream other) {
    double[] cost = new double[STATES];
    Arrays.fill(cost, WRONG_START);
    Arrays.fill(cost, MOST - 1, MOST + 2, 0);
    List<int[]> came = new ArrayList<>();
    LagGains seen = LagGains.of(unit, other);
    for (int k = 0; k < seen.gains().size(); k++) {
      came.add(
          step(cost, seen.isLost().get(k) ? asStated(seen.gains().get(k)) : seen.gains().get(k)));
    }
    return new LagPath(sure(states(cost, came), seen), rivalS(cost)).once();
  }

  /** The farthest end of a course that is not surely less likely than the best. */
  static double rivalS(double[] cost) {
    int best = cheapest(cost);
    int beside = (int) (JUMPED_S / STEP_S);
    double sure = Math.abs(best - MOST) > beside ? SURELY : AS_STATED_SURELY;
    int farthest = 0;
    for (int s = beside; s < STATES - beside; s++) {
      boolean isOwn = cheapest(Arrays.copyOfRange(cost, s - beside, s + beside + 1)) == beside;
      if (isOwn && Math.abs(s - best) > beside && cost[s] < cost[best] + sure) {
        farthest = Math.max(farthest, Math.abs(s - best));
      }
    }
    return farthest * STEP_S;
  }

  /** What was not seen does not speak against what is stated. */
  private static double[] asStated(double[] gain) {
    double[] out = gain.clone();
    double best = Arrays.stream(gain).max().orElse(0);
    Arrays.fill(out, MOST - AS_STATED, MOST + AS_STATED + 1, best);
    return out;
  }

  /** Moves the costs on by one window; answers where each state came from. */
  private static int[] step(double[] cost, double[] gain) {
    double[] before = cost.clone();
    int best = cheapest(before);
    int[] came = new int[STATES];
    for (int s = 0; s < STATES; s++) {
      int from = s;
      double least = before[s];
      for (int n = Math.max(0, s - 1); n <= Math.min(STATES - 1, s + 1); n += 1) {
        if (n != s && before[n] + DRIFT < least) {
          from = n;
          least = before[n] + DRIFT;
        }
      }
      boolean jumps = before[best] + JUMP < least;
      came[s] = jumps ? best : from;
      cost[s] = (jumps ? before[best] + JUMP : least) - gain[s];
    }
    return came;
  }

  private static int cheapest(double[] cost) {
    int best = cost.length / 2;
    for (int s = 0; s < cost.length; s++) {
      best = cost[s] < cost[best] ? s : best;
    }
    return best;
  }

  private static int[] states(double[] cost, List<int[]> came) {
    int at = cheapest(cost);
    int[] states = new int[came.size()];
    for (int k = came.size() - 1; k >= 0; k--) {
      states[k] = at;
      at = came.get(k)[at];
    }
    return states;
  }

  /** Without the windows around a jump that might as well lie on its other side. */
  private static List<Window> sure(int[] states, LagGains seen) {
    List<double[]> gains = seen.gains();
    boolean[] isUnsure = new boolean[states.length];
    for (int k = 1; k < states.length; k++) {
      if (Math.abs(states[k] - states[k - 1]) * STEP_S > JUMPED_S) {
        passOver(isUnsure, gains, k - 1, -1, states[k - 1], states[k]);
        passOver(isUnsure, gains, k, 1, states[k], states[k - 1]);
      }
    }
    List<Window> out = new ArrayList<>();
    for (int k = 0; k < states.length; k++) {
      if (!isUnsure[k] && !seen.isLost().get(k)) {
        out.add(new Window(seen.timesS().get(k), (states[k] - MOST) * STEP_S));
      }
    }
    return out;
  }

  /** Away from a jump, until what is seen makes this side's lag surely likelier. */
  private static void passOver(
      boolean[] isUnsure, List<double[]> gains, int from, int way, int here, int beyond) {
    double likelier = 0;
    for (int k = from; k >= 0 && k < isUnsure.length; k += way) {
      likelier += gains.get(k)[here] - gains.get(k)[beyond];
      if (likelier > SURELY) {
        return;
      }
      isUnsure[k] = true;
    }
  }

  /**
   * Without windows that need the other's samples a second time, as where it lost a swing that
   * looks like the one before: a clock may jump, its samples are each of one moment. At a jump the
   * shorter piece gives way, window by window. Where none of it is left and neither lies as stated,
   * either may be the right one.
   */
  LagPath once() {
    List<List<Window>> pieces = new ArrayList<>();
    pieces().forEach(piece -> pieces.add(new ArrayList<>(piece.windows)));
    double asLikelyS = rivalS;
    int k = 1;
    while (k < pieces.size()) {
      List<Window> before = pieces.get(k - 1);
      List<Window> after = pieces.get(k);
      Window last = before.get(before.size() - 1);
      Window first = after.get(0);
      if (first.timeS + first.lagS >= last.timeS + last.lagS + TWICE_S) {
        k++;
        continue;
      }
      int shorter = after.size() > before.size() ? k - 1 : k;
      pieces.get(shorter).remove(shorter == k ? first : last);
      if (pieces.get(shorter).isEmpty()) {
        boolean isStated = Math.min(Math.abs(first.lagS), Math.abs(last.lagS)) < JUMPED_S;
        asLikelyS = isStated ? asLikelyS : Math.max(asLikelyS, Math.abs(first.lagS - last.lagS));
        pieces.remove(shorter);
        k = Math.max(1, k - 1);
      }
    }
    return new LagPath(pieces.stream().flatMap(List::stream).toList(), asLikelyS);
  }

  /** The largest lag of all, s. */
  double mostS() {
    return windows.stream().mapToDouble(w -> Math.abs(w.lagS)).max().orElse(0);
  }

  /** The same as seen from the other unit, with this one's clock laid right. */
  LagPath inverted(ClockFit laid) {
    return new LagPath(
        windows.stream()
            .map(w -> new Window(w.timeS + w.lagS, laid.correctionS(w.timeS) - w.lagS))
            .toList(),
        rivalS);
  }

  double firstS() {
    return windows.get(0).timeS;
  }

  double lastS() {
    return windows.get(windows.size() - 1).timeS;
  }

  double endLagS() {
    return windows.get(windows.size() - 1).lagS;
  }

  /** The path cut where it jumps. */
  List<LagPath> pieces() {
    List<LagPath> pieces = new ArrayList<>();
    int from = 0;
    for (int k = 1; k <= windows.size(); k++) {
      if (k == windows.size()
          || Math.abs(windows.get(k).lagS - windows.get(k - 1).lagS) > JUMPED_S) {
        pieces.add(new LagPath(windows.subList(from, k)));
        from = k;
      }
    }
    return pieces;
  }

  /**
   * The line through the path, for one that does not jump; as stated where there is none.
   *
   * @param sdS what it is worth, s
   * @param skewSdPpm how far the clock may run wrong
   */
  ClockFit line(double sdS, double skewSdPpm) {
    if (windows.isEmpty()) {
      return ClockFit.reference();
    }
    List<TimePair> pairs =
        windows.stream().map(w -> new TimePair(w.timeS, w.lagS, STEP_S)).toList();
    return ClockLine.fit(pairs, sdS, new ClockFit(0, 0, firstS(), REACH_S, skewSdPpm, 0));
  }
}
