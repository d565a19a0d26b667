package steadyturn.cli.command.rehearsal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * Which instant of a made lesson the units show next. Between two movements the player waits: a
 * quiet moment is shown forwards and backwards, for as long as it takes. Backwards a body that
 * moves like that turns the other way and accelerates alike, so the rates change their sign.
 */
final class MovementCourse {

  /** Half the length of the quiet moment that is shown while waiting, s. */
  private static final double HALF_WAIT_S = 0.25;

  private static final double AFTER_S = 0.3;

  /** So long the last finish is held before the first ball comes again, s. */
  private static final double HELD_S = 2.5;

  private final List<Mark> movements;
  private final int[] gates;
  private final int half;
  private final int last;
  private int at;
  private int way = 1;
  private int gate;
  private Optional<Integer> wanted = Optional.empty();
  private boolean isWaiting = true;

  /**
   * Of a lesson whose units began together and lost nothing.
   *
   * @param rateHz of all units
   */
  MovementCourse(Recording lesson, double rateHz) {
    movements = lesson.marks().stream().sorted(Comparator.comparingDouble(Mark::onsetS)).toList();
    half = (int) Math.round(HALF_WAIT_S * rateHz);
    UnitStream witness = lesson.units().get(0);
    gates = new int[movements.size()];
    double freeS = witness.timeS(0);
    for (int k = 0; k < gates.length; k++) {
      int from = witness.indexAt(freeS) + half;
      int to = witness.indexAt(movements.get(k).onsetS()) - half;
      gates[k] = quietest(lesson.units(), from, Math.max(from, to));
      freeS = movements.get(k).endS() + AFTER_S;
    }
    last = Math.min(witness.size() - 1, witness.indexAt(freeS - AFTER_S + HELD_S));
    at = gates[0];
  }

  /** The middle of the quietest moment of all units. */
  private int quietest(List<UnitStream> units, int from, int to) {
    int best = from;
    double least = Double.POSITIVE_INFINITY;
    for (int middle = from; middle <= to; middle += half / 5) {
      double unrest = 0;
      for (UnitStream unit : units) {
        for (int i = middle - half; i < middle + half && i < unit.size(); i += 5) {
          for (int axis = 0; axis < 3; axis++) {
            unrest += Math.pow(unit.gyroRadPerS(axis, Math.max(0, i)), 2);
          }
        }
      }
      if (unrest < least) {
        least = unrest;
        best = middle;
      }
    }
    return best;
  }

  /** Where the first movement of a kind is looked for in the recording; empty for none. */
  Optional<Mark> first(String kind) {
    return movements.stream().filter(mark -> mark.trialType().equals(kind)).findFirst();
  }

  /** The player does the next movement of a kind, after what is under way. */
  synchronized void wish(String kind) {
    List<Integer> all = new ArrayList<>();
    for (int k = 0; k < gates.length; k++) {
      if (movements.get(k).trialType().equals(kind)) {
        all.add(k);
      }
    }
    wanted = all.stream().filter(k -> k >= gate).findFirst().or(() -> all.stream().findFirst());
  }

  /** Whether the player does something or is about to. */
  synchronized boolean isBusy() {
    return !isWaiting || wanted.isPresent();
  }

  /** The next instant: an index of the recording, from 1 on, negative for backwards. */
  synchronized int next() {
    if (isWaiting && wanted.isPresent()) {
      int movement = wanted.get();
      at = movement == gate ? at : gates[movement];
      gate = movement + 1 < gates.length ? movement + 1 : firstBall();
      way = 1;
      isWaiting = false;
      wanted = Optional.empty();
      isWrapped = gate <= movement;
    }
    if (!isWaiting && isWrapped && at >= last) {
      at = gates[gate];
      isWrapped = false;
    }
    isWaiting = isWaiting || (!isWrapped && at >= gates[gate]);
    if (isWaiting && Math.abs(at + way - gates[gate]) > half) {
      way = at > gates[gate] ? -1 : 1;
    }
    at += way;
    return way * (at + 1);
  }

  private boolean isWrapped;

  /** After the last ball the first one comes again. */
  private int firstBall() {
    return (int) movements.stream().takeWhile(mark -> !mark.trialType().equals("hit")).count();
  }
}
