package steadyturn.fusion.wear;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.fusion.rest.RestGate;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.UnitStream;

/**
 * Looks for a wear step inside the stretch it was marked for: people start late and stop early. A
 * step that is to be still is the first two seconds that pass for it; where there are none, the
 * first that is shorter. A movement is what lies between two moments of rest; several with short
 * rests between are tried together, too. How a stretch is judged is the step's own affair.
 *
 * @param unit the one that is to move, or to be still
 * @param biasRadPerS its gyro bias, as far as it is known
 * @param isOver whether the stretch has come to its end; live it grows
 */
public record StepSearch(UnitStream unit, Vector3 biasRadPerS, boolean isOver) {

  private static final double[] STILL_S = {2, 1.5, 1};
  private static final double HOP_S = 0.1;
  private static final double EVEN_S = 0.5;

  /** Our choices: a cell moves above this rate; so long at rest, a movement has ended. */
  private static final double MOVING_RAD_PER_S = Math.toRadians(8);

  private static final double SETTLED_S = 0.8;
  private static final double PAD_S = 0.2;

  /** Less turning, there and back, is fidgeting (our choice). */
  private static final double LEAST_PATH_RAD = Math.toRadians(40);

  /** So many movements at most are tried together. */
  private static final int MOST_TOGETHER = 8;

  /** How a step is judged by the samples of a stretch. */
  @FunctionalInterface
  public interface Judge {
    StepResult of(double fromS, double toS);
  }

  /** A stretch and how the step went in it. */
  public record Attempt(double fromS, double toS, StepResult result) {

    /** The mark laid on this stretch. */
    public Mark laid(Mark mark) {
      return mark.during(fromS, toS);
    }
  }

  /** A movement between two rests. */
  private record Movement(double fromS, double toS, double pathRad) {}

  /** Where a mark's step was done; a stretch of known length is taken whole where it will do. */
  public Mark settled(Mark mark, Judge judge) {
    if (!mark.open()) {
      boolean asNoted =
          mark.durationS() <= STILL_S[0] || judge.of(mark.onsetS(), mark.endS()).used();
      return asNoted
          ? mark
          : find(mark, judge).filter(a -> a.result().used()).map(a -> a.laid(mark)).orElse(mark);
    }
    return find(mark, judge).map(a -> a.laid(mark)).orElse(mark);
  }

  /**
   * The attempt that did, else the one that came nearest, else none.
   *
   * @param mark names the step and the stretch
   */
  public Optional<Attempt> find(Mark mark, Judge judge) {
    double lastS = unit.size() == 0 ? mark.onsetS() : unit.timeS(unit.size() - 1);
    double toS = Math.min(mark.endS(), lastS);
    return switch (mark.trialType()) {
      case "bow", "cocking", "turn-on-spot" -> moved(mark.onsetS(), toS, judge);
      default -> still(mark.onsetS(), toS, judge);
    };
  }

  private Optional<Attempt> still(double fromS, double toS, Judge judge) {
    Optional<Attempt> nearest = Optional.empty();
    for (double lengthS : isOver ? STILL_S : new double[] {STILL_S[0]}) {
      for (double atS = fromS; atS + lengthS <= toS + 1e-9; atS += HOP_S) {
        Attempt attempt = new Attempt(atS, atS + lengthS, judge.of(atS, atS + lengthS));
        if (attempt.result.used() && isEven(attempt, judge)) {
          return Optional.of(attempt);
        }
        if (!attempt.result.used()
            && nearest.filter(n -> n.result.quality() <= attempt.result.quality()).isEmpty()) {
          nearest = Optional.of(attempt);
        }
      }
    }
    return nearest;
  }

  /** Whether each part of it would do: moving on at the end hides in a mean. */
  private static boolean isEven(Attempt attempt, Judge judge) {
    for (double atS = attempt.fromS; atS < attempt.toS - EVEN_S / 2; atS += EVEN_S) {
      if (!judge.of(atS, atS + EVEN_S).used()) {
        return false;
      }
    }
    return true;
  }

  private Optional<Attempt> moved(double fromS, double toS, Judge judge) {
    List<Movement> movements = movements(fromS, toS);
    Optional<Attempt> nearest = Optional.empty();
    double longest = 0;
    for (int last = 0; last < movements.size(); last++) {
      double path = 0;
      for (int first = last; first >= Math.max(0, last - MOST_TOGETHER); first--) {
        path += movements.get(first).pathRad;
        if (path < LEAST_PATH_RAD) {
          continue;
        }
        double beganS = Math.max(fromS, movements.get(first).fromS - PAD_S);
        double endedS = Math.min(toS, movements.get(last).toS + PAD_S);
        Attempt attempt = new Attempt(beganS, endedS, judge.of(beganS, endedS));
        if (attempt.result.used()) {
          return Optional.of(attempt);
        }
        if (path > longest) {
          longest = path;
          nearest = Optional.of(attempt);
        }
      }
    }
    return nearest;
  }

  /** All that have ended. */
  private List<Movement> movements(double fromS, double toS) {
    List<Movement> out = new ArrayList<>();
    double beganS = Double.NaN;
    double lastS = fromS;
    double path = 0;
    for (double atS = fromS; atS < toS; atS += HOP_S) {
      double rate = RestGate.rateRmsRadPerS(unit, biasRadPerS, atS, Math.min(toS, atS + HOP_S));
      boolean moves = rate > MOVING_RAD_PER_S && rate < Double.POSITIVE_INFINITY;
      if (moves) {
        beganS = Double.isNaN(beganS) ? atS : beganS;
        lastS = atS + HOP_S;
        path += rate * HOP_S;
      } else if (!Double.isNaN(beganS) && atS + HOP_S - lastS > SETTLED_S) {
        out.add(new Movement(beganS, lastS, path));
        beganS = Double.NaN;
        path = 0;
      }
    }
    if (!Double.isNaN(beganS) && isOver) {
      out.add(new Movement(beganS, Math.min(lastS, toS), path));
    }
    return out;
  }

  /** What is said of a step whose unit did not run. */
  public static StepResult unseen(Mark mark) {
    return StepResult.again(mark.trialType(), 100, 0, "%", Reason.of(StepReason.LOST, 100.0));
  }
}
