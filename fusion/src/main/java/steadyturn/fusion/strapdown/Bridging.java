package steadyturn.fusion.strapdown;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.Gaps;
import steadyturn.ingest.sample.StandardGravity;
import steadyturn.ingest.sample.UnitStream;

/**
 * What the straight lines over missing samples may be wrong by. For each, lines of the same length
 * are laid over the samples on both sides of it, where the truth is known, and their errors in
 * turn, velocity and place are taken together; to that comes what a body that moves at the {@link
 * Pace} seen beside it could do unseen, as the neighbourhood may be calmer than what was lost.
 */
final class Bridging {

  /** How far to both sides the errors of such lines are tried: this and the length, s. */
  private static final double AROUND_S = 0.1;

  private static final int PLACES = 16;

  /** Beyond full scale a value is this part of it farther, 1 SD (our choice, as for a peak). */
  private static final double CUT_PART = 0.25;

  private final StrapdownSamples samples;
  private final UnitStream stream;
  private final Strapdown pass;
  private final double[][] turn;

  private Bridging(StrapdownSamples samples, UnitStream stream) {
    this.samples = samples;
    this.stream = stream;
    UnitState still = UnitState.start(Quaternion.IDENTITY, Vector3.ZERO, 0);
    pass = Strapdown.run(samples, still, 0);
    turn = new double[3][samples.size()];
    for (int axis = 0; axis < 3; axis++) {
      double[] g = samples.gyroRadPerS[axis];
      for (int k = 1; k < g.length; k++) {
        turn[axis][k] =
            turn[axis][k - 1] + (samples.timeS[k] - samples.timeS[k - 1]) * (g[k - 1] + g[k]) / 2;
      }
    }
  }

  /** All bridges by time, slight ones put together. */
  static List<Bridge> all(StrapdownSamples samples, UnitStream stream) {
    List<Gaps.Gap> rates = Gaps.of(stream, Gaps.Need.RATE).inner();
    List<Gaps.Gap> forces = Gaps.of(stream, Gaps.Need.FORCE).inner();
    List<Gaps.Gap> cutRates = Gaps.cut(stream, Gaps.Need.RATE);
    List<Gaps.Gap> cutForces = Gaps.cut(stream, Gaps.Need.FORCE);
    List<Bridge> folded = FoldedForces.of(samples);
    if (folded.isEmpty() && Stream.of(rates, forces, cutRates, cutForces).allMatch(List::isEmpty)) {
      return List.of();
    }
    Bridging bridging = new Bridging(samples, stream);
    List<Bridge> all = new ArrayList<>(folded);
    rates.forEach(gap -> all.add(bridging.over(gap, true)));
    forces.stream()
        .filter(gap -> bridging.samplesIn(gap) > 0)
        .forEach(gap -> all.add(bridging.over(gap, false)));
    cutRates.forEach(cut -> all.add(bridging.cutRate(cut)));
    cutForces.forEach(cut -> all.add(bridging.cutForce(cut)));
    all.sort(Comparator.comparingDouble(Bridge::afterS));
    return Lumps.of(all);
  }

  /**
   * Those over lost rates alone, by time, slight ones put together; cut rates are left as shown.
   */
  static List<Bridge> overRates(
      StrapdownSamples samples, UnitStream stream, List<Gaps.Gap> lostRates) {
    Bridging bridging = new Bridging(samples, stream);
    return Lumps.of(lostRates.stream().map(gap -> bridging.over(gap, true)).toList());
  }

  private int samplesIn(Gaps.Gap gap) {
    return at(gap.afterS()) - at(gap.beforeS()) - 1;
  }

  private int at(double instantS) {
    return pass.indexAt(instantS);
  }

  private Bridge over(Gaps.Gap gap, boolean isRate) {
    Errors errors = new Errors(gap.lengthS());
    int before = at(gap.beforeS());
    int after = at(gap.afterS());
    double reachS = AROUND_S + gap.lengthS();
    errors.tryAll(gap.beforeS() - reachS, gap.beforeS());
    errors.tryAll(gap.afterS(), gap.afterS() + reachS);
    Pace pace = Pace.beside(samples, pass, before, after);
    double t = gap.lengthS();
    double turnSd = isRate ? Math.hypot(errors.rms(0), pace.turnRad(t)) : 0;
    double tiltedMps = StandardGravity.MPS2 * turnSd * t / 2;
    return new Bridge(
        after,
        gap.beforeS(),
        gap.afterS(),
        turnSd,
        Math.hypot(Math.hypot(errors.rms(1), pace.velocityMps(t)), tiltedMps),
        Math.hypot(Math.hypot(errors.rms(2), pace.placeM(t)), tiltedMps * t / 3));
  }

  private Bridge cutRate(Gaps.Gap cut) {
    double t = cut.lengthS();
    double turnSd = CUT_PART * stream.facts().gyroFullScaleRadPerS() * t;
    return new Bridge(at(cut.afterS()), cut.beforeS(), cut.afterS(), turnSd, 0, 0);
  }

  private Bridge cutForce(Gaps.Gap cut) {
    double t = cut.lengthS();
    double velocitySd = CUT_PART * stream.facts().accelFullScaleMps2() * t;
    return new Bridge(
        at(cut.afterS()), cut.beforeS(), cut.afterS(), 0, velocitySd, velocitySd * t / 2);
  }

  /** Errors that lines of one length made where the truth is known. */
  private final class Errors {
    private final double lengthS;
    private final double[] squares = new double[3];
    private int tried;

    Errors(double lengthS) {
      this.lengthS = lengthS;
    }

    void tryAll(double fromS, double toS) {
      double first = Math.max(fromS, samples.timeS[0]);
      double last = Math.min(toS, samples.timeS[samples.size() - 1]) - lengthS;
      for (int i = 0; i < PLACES && last >= first; i++) {
        int from = at(first + (last - first) * i / (PLACES - 1));
        int to = at(samples.timeS[from] + lengthS - 1e-9);
        if (to > from && samples.timeS[to] <= toS + 1e-9) {
          tryOne(from, to);
        }
      }
    }

    private void tryOne(int from, int to) {
      double t = samples.timeS[to] - samples.timeS[from];
      tried++;
      for (int axis = 0; axis < 3; axis++) {
        double[] g = samples.gyroRadPerS[axis];
        double begin = pass.endMps2(axis, from, -1, t);
        double end = pass.endMps2(axis, to, 1, t);
        double[] v = pass.impulse[axis];
        double[] p = pass.path[axis];
        add(0, turn[axis][to] - turn[axis][from] - t * (g[from] + g[to]) / 2);
        add(1, v[to] - v[from] - t * (begin + end) / 2);
        add(2, p[to] - p[from] - t * v[from] - t * t * (2 * begin + end) / 6);
      }
    }

    private void add(int kind, double error) {
      squares[kind] += error * error;
    }

    double rms(int kind) {
      return tried == 0 ? 0 : Math.sqrt(squares[kind] / (3 * tried));
    }
  }
}
