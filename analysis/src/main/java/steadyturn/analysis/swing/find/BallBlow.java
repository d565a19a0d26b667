package steadyturn.analysis.swing.find;

import java.util.Optional;
import steadyturn.fusion.attitude.ForceSteps;
import steadyturn.fusion.attitude.GyroTrack;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.Averages;
import steadyturn.ingest.sample.StandardGravity;

/**
 * The blow of the ball in the accelerometer of an arm unit: the first step of more than 8 g within
 * 2 ms that is also more than 6 times the median step around, unless a far harder one follows.
 */
final class BallBlow {

  private static final double STEP_S = 0.002;
  private static final double TIMES_MEDIAN = 6;
  private static final double ABOVE_CALM = 3;
  private static final double ABOVE_TRUNK = 5;
  private static final double RISE_S = 0.012;
  private static final double CALM_S = 0.04;
  private static final double RING_S = 0.008;

  // our choices: how soon the ball follows what is felt before it; how long a ring may pass near
  // its zero; the part of the strongest step that is no blow of its own, the part from which it is
  // one as good, the part of it that moves a sample, the part of a slow rise that stays unseen
  private static final double FOLLOWS_S = 0.025;
  private static final double DIP_S = 0.005;
  private static final double DIP_STEPS = 1.5;
  private static final double FAINT = 0.35;
  private static final double EQUAL = 0.5;
  private static final double MOVED_PART = 0.08;
  private static final double SOFT_PART = 0.2;

  // our choices: a wave whose force bends by less than this part of what follows is not the ball;
  // by less than that part, it may be or not; a swelling blow has its edge sooner than this
  private static final double CLEAR_EDGE = 0.2;
  private static final double FAINT_EDGE = 0.4;
  private static final double SWELLS_S = 0.007;

  private static final double G = StandardGravity.MPS2;
  // time stamps that jitter by 0.2 ms bend a force that changes by 0.25 g/ms, as an arm's does, by
  // this much twice over
  private static final double JITTER_MPS2 = 0.1 * G;

  private BallBlow() {}

  /**
   * How large a blow must be where the unit sits.
   *
   * @param stepMps2 least change of the force within 2 ms
   * @param awayMps2 least distance from the calm course within the 8 ms that follow: the sole
   *     brushing through grass shakes the hand by 2-5 g, a ball by far more (our assumption)
   * @param sparseMps2 how far the ring must stray where the unit samples too slowly to follow it
   * @param weakMps2 how far one of its samples must lie off the line through the two before it
   *     where it is known that a ball was struck
   * @param bend whether the change of the change is looked at instead, which a swaying trunk hides
   *     less
   */
  record Least(double stepMps2, double awayMps2, double sparseMps2, double weakMps2, boolean bend) {
    static final Least HAND = new Least(8 * G, 8 * G, 8 * G, 1.5 * G, false);

    /** A third of the blow gets through the wrist: our assumption. */
    static final Least FOREARM = new Least(3 * G, 3 * G, 3 * G, 0.5 * G, false);

    /** About a hundredth of it reaches the pelvis: our assumption. */
    static final Least PELVIS = new Least(0.2 * G, 0.2 * G, 0.2 * G, 0.2 * G, true);
  }

  /** Looks among samples from..to-1. */
  public static Optional<Onset> find(GyroTrack track, int from, int to, Least limit) {
    double[] steps = ForceSteps.of(track, from, to, limit.bend());
    if (steps.length < 8) {
      return Optional.empty();
    }
    if (!limit.bend() && slow(track, from, to)) {
      return sparse(track, from, to, limit);
    }
    double least = Math.max(limit.stepMps2(), TIMES_MEDIAN * Averages.median(steps));
    for (int i = 0; i < steps.length; i++) {
      if (steps[i] > least
          && awayFromCalm(track, from + i) > limit.awayMps2()
          && isSudden(track, from + i, limit)) {
        Onset first = hardest(track, from, i, steps, limit, DIP_S);
        return Optional.of(behindSoft(track, from + i, limit, first));
      }
    }
    return Optional.empty();
  }

  /**
   * Whether the force bends by far more soon after a sample than in the calm before: that of a fast
   * arm changes as much within 2 ms as a light blow moves it, and that of a belt on soft skin, but
   * smoothly.
   */
  private static boolean isSudden(GyroTrack track, int at, Least limit) {
    int calmFrom = Math.max(0, track.indexAt(track.timeS(at) - RISE_S - CALM_S));
    int to = Math.min(track.size(), track.indexAt(track.timeS(at) + RING_S) + 1);
    double[] bends = ForceSteps.of(track, calmFrom, to, true);
    int soon = track.indexAt(track.timeS(at) - RISE_S) - calmFrom;
    double most = bends[strongest(track, calmFrom, bends, soon, RISE_S + RING_S)];
    return most > (limit.bend() ? ABOVE_TRUNK : ABOVE_CALM) * calm(bends, soon, limit);
  }

  /**
   * The blow to which the first large step belongs, or the one behind it that is far harder: the
   * ground or a soft wave of shaft and hands may come before the ball. One about twice as hard
   * leaves open which of the two was the ball.
   *
   * @param dipS how long a ring may pass near its zero
   */
  private static Onset hardest(
      GyroTrack track, int from, int at, double[] steps, Least limit, double dipS) {
    int strongest = strongest(track, from, steps, at, FOLLOWS_S);
    int start = strongest;
    double startS = track.timeS(from + strongest);
    for (int i = strongest; i >= at && startS - track.timeS(from + i) < dipS; i--) {
      start = steps[i] > FAINT * steps[strongest] ? i : start;
      startS = track.timeS(from + start);
    }
    Onset first = soft(track, from + strongest, first(track, from + at, steps[strongest], limit));
    if (start == at) {
      return first;
    }
    // its first sample may have been taken too soon after its beginning to stand out
    Onset later = onset(track, from + start).oneStepMore();
    double part = steps[strongest(track, from, steps, at, dipS)] / steps[strongest];
    if (part > EQUAL) {
      return onset(track, first(track, from + at, steps[at], limit));
    }
    return part > FAINT ? new Onset(first.afterS(), later.byS()) : later;
  }

  /** A wave that is not so much softer than what follows leaves open which of them was the ball. */
  private static Onset behindSoft(GyroTrack track, int at, Least limit, Onset first) {
    return afterSoft(track, at, limit, CLEAR_EDGE)
        .filter(edge -> edge.byS() >= first.byS())
        .or(
            () ->
                afterSoft(track, at, limit, FAINT_EDGE)
                    .filter(edge -> edge.byS() > first.byS())
                    .map(edge -> new Onset(first.afterS(), edge.byS())))
        .orElse(first);
  }

  /**
   * The ball behind a soft wave of shaft and hands, or behind turf: the last moment from which on
   * the force bends far harder than it did since the wave began. A blow that swells does not leave
   * such an edge so late.
   */
  private static Optional<Onset> afterSoft(GyroTrack track, int at, Least limit, double part) {
    int calmFrom = Math.max(0, track.indexAt(track.timeS(at) - RISE_S - CALM_S));
    int from = track.indexAt(track.timeS(at) - RISE_S);
    int to = Math.min(track.size(), track.indexAt(track.timeS(at) + FOLLOWS_S));
    double[] bends = ForceSteps.of(track, calmFrom, to, true);
    double moved = ABOVE_CALM * calm(bends, from - calmFrom, limit);
    double before = 0;
    double waveS = Double.POSITIVE_INFINITY;
    Optional<Onset> last = Optional.empty();
    for (int i = from; i < to; i++) {
      double now = bends[i - calmFrom];
      double edge = part * bends[strongest(track, calmFrom, bends, i - calmFrom, RING_S)];
      if (before < edge && now > edge && track.timeS(i) - waveS > SWELLS_S) {
        last = Optional.of(onset(track, i).behindSoft());
      }
      before = Math.max(before, now);
      waveS = now > moved ? Math.min(waveS, track.timeS(i)) : waveS;
    }
    return last;
  }

  /** The largest bend of the calm before a blow, or what jitter makes. */
  private static double calm(double[] bends, int to, Least limit) {
    double calm = limit.bend() ? 0 : JITTER_MPS2;
    for (int i = 0; i < to; i++) {
      calm = Math.max(calm, bends[i]);
    }
    return calm;
  }

  /** The largest step within a time from one on. */
  private static int strongest(GyroTrack track, int from, double[] steps, int at, double withinS) {
    int best = at;
    for (int i = at;
        i < steps.length && track.timeS(from + i) < track.timeS(from + at) + withinS;
        i++) {
      best = steps[i] > steps[best] ? i : best;
    }
    return best;
  }

  /** A blow that rises slowly begins before it can be told from the calm. */
  private static Onset soft(GyroTrack track, int strongest, int first) {
    double riseS = Math.max(0, track.timeS(strongest) - track.timeS(first) - STEP_S);
    Onset seen = onset(track, first);
    return new Onset(seen.afterS() - SOFT_PART * riseS, seen.byS());
  }

  /**
   * In a slow unit the surprises of a ring grow from its first sample to its third, as they point
   * to either side, and a wave before the ball strays as far as the ball: where the two measures do
   * not name the same blow, either may be right.
   */
  private static Optional<Onset> sparse(GyroTrack track, int from, int to, Least limit) {
    double least = limit.sparseMps2();
    SparseShock shock = new SparseShock(track);
    int at = shock.strong(from, to, least / 2, least);
    if (at < 0) {
      return Optional.empty();
    }
    Onset bySurprise = inSlow(track, from, at, shock.surprises(from, to), limit, shock.stepS());
    Onset byStray = inSlow(track, from, at, shock.strays(at, from, to), limit, shock.stepS());
    return Optional.of(bySurprise.or(byStray));
  }

  private static Onset inSlow(
      GyroTrack track, int from, int at, double[] sizes, Least limit, double stepS) {
    Onset first = hardest(track, from, at - from, sizes, limit, DIP_STEPS * stepS);
    return unresolved(track, from + strongest(track, from, sizes, at - from, RISE_S), first);
  }

  /**
   * A slow unit does not tell a blow that swells from one behind a soft wave: it may have begun a
   * step sooner, and come as late as the strongest sample that follows soon.
   */
  private static Onset unresolved(GyroTrack track, int strongest, Onset first) {
    return track.timeS(strongest) > first.byS()
        ? new Onset(first.oneStepMore().afterS(), track.timeS(strongest))
        : first;
  }

  /**
   * A blow of which is known that it came, where a slow unit took weak samples of it only. The
   * first of its ring may have been taken near a zero, so one step more is left open.
   */
  static Optional<Onset> findWeak(GyroTrack track, int from, int to, Least limit) {
    if (to - from < 8 || !slow(track, from, to)) {
      return Optional.empty();
    }
    int at = new SparseShock(track).weak(from, to, limit.weakMps2());
    return at < 0
        ? Optional.empty()
        : Optional.of(onset(track, first(track, at, 0, limit))).map(Onset::oneStepMore);
  }

  private static boolean slow(GyroTrack track, int from, int to) {
    return (track.timeS(to - 1) - track.timeS(from)) / (to - 1 - from) > 1.5 * STEP_S;
  }

  /**
   * The first sample that the blow moved. A ring passes near its zero now and then, so the step may
   * begin small: the bend of the force is held against the largest of the calm before (or what
   * jitter makes), and against a part of the strongest step: what is softer is not the blow.
   */
  private static int first(GyroTrack track, int at, double strongestMps2, Least limit) {
    int earliest = Math.min(at - 1, track.indexAt(track.timeS(at) - RISE_S));
    int calmFrom = Math.max(0, track.indexAt(track.timeS(at) - RISE_S - CALM_S));
    double[] bends = ForceSteps.of(track, calmFrom, at + 1, true);
    double calm = calm(bends, earliest + 1 - calmFrom, limit);
    double moved = Math.max(ABOVE_CALM * calm, MOVED_PART * strongestMps2);
    int first = at;
    for (int i = at; i > earliest; i--) {
      first = bends[i - calmFrom] > moved ? i : first;
    }
    return first;
  }

  /** Largest distance, within 8 ms after a sample, of the force from its median around. */
  private static double awayFromCalm(GyroTrack track, int i) {
    int from = track.indexAt(track.timeS(i) - CALM_S);
    int to = Math.min(track.size(), track.indexAt(track.timeS(i) + CALM_S));
    Vector3 calm =
        new Vector3(
            median(track, from, to, 0), median(track, from, to, 1), median(track, from, to, 2));
    double away = 0;
    for (int k = i; k < track.size() && track.timeS(k) <= track.timeS(i) + RING_S; k++) {
      away = Math.max(away, track.forceUnitMps2(k).minus(calm).norm());
    }
    return away;
  }

  private static double median(GyroTrack track, int from, int to, int axis) {
    double[] values = new double[to - from];
    for (int k = from; k < to; k++) {
      values[k - from] = track.forceUnitMps2(k).get(axis);
    }
    return Averages.median(values);
  }

  private static Onset onset(GyroTrack track, int i) {
    return new Onset(track.timeS(Math.max(0, i - 1)), track.timeS(i));
  }
}
