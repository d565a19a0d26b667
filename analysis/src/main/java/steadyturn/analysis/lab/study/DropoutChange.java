package steadyturn.analysis.lab.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;

/**
 * What a dropout did to one value of one swing.
 *
 * @param what the value's name
 * @param touched whether the dropout took away what the value can need
 * @param twin the value without the dropout
 * @param with the value with it; none where it is not given any more
 * @param flagged whether the swing bears a flag that it did not bear before, or its lesson refuses
 *     a unit
 */
record DropoutChange(
    String what, boolean touched, Reading twin, Optional<Reading> with, boolean flagged) {

  // an interval that has grown by less says nothing (our choice)
  private static final double WIDER = 1.05;

  /** A value with its 95 % interval. */
  record Reading(double value, double low, double high, Grade grade) {

    static Reading of(EventTime event) {
      double half = MeasureValue.Z95 * event.sdS();
      return new Reading(event.timeS(), event.timeS() - half, event.timeS() + half, event.grade());
    }

    static Reading of(MeasureValue value) {
      return new Reading(value.value(), value.low(), value.high(), value.grade());
    }

    /** Half the interval; of "at least" values the part below. */
    double half() {
      return Double.isInfinite(high) ? value - low : (high - low) / 2;
    }

    boolean covers(double other) {
      return low <= other && other <= high;
    }

    /** Only a bound: it has no interval to move by. */
    boolean isAtLeast() {
      return Double.isInfinite(high);
    }
  }

  /**
   * All values of a swing that its twin gives.
   *
   * @param refused whether a unit of which too little is left was refused, by its name
   */
  static List<DropoutChange> of(Dropout lost, SwingResult twin, SwingResult with, boolean refused) {
    Set<String> fresh = new TreeSet<>(with.flags());
    twin.flags().forEach(fresh::remove);
    boolean flagged = refused || !fresh.isEmpty();
    List<DropoutChange> out = new ArrayList<>();
    for (EventTime event : twin.events()) {
      boolean touched = DropoutNeed.of(twin, event.event()).touchedBy(lost, twin);
      Optional<Reading> now =
          with.events().stream()
              .filter(e -> e.event() == event.event())
              .findFirst()
              .map(Reading::of);
      out.add(new DropoutChange(event.event().word(), touched, Reading.of(event), now, flagged));
    }
    for (MeasureValue value : twin.measures()) {
      if (value.given()) {
        boolean touched = DropoutNeed.of(twin, value.measure(), value.at()).touchedBy(lost, twin);
        Optional<Reading> now =
            with.measure(value.measure(), value.at()).filter(MeasureValue::given).map(Reading::of);
        String what = value.measure().id() + (value.at().isEmpty() ? "" : " @ " + value.at());
        out.add(new DropoutChange(what, touched, Reading.of(value), now, flagged));
      }
    }
    return out;
  }

  /** How far the value moved, in half-widths of its twin; 0 where it is not given, or a bound. */
  double moved() {
    return with.filter(w -> !w.isAtLeast() && !twin.isAtLeast())
        .map(w -> Math.abs(w.value - twin.value) / twin.half())
        .orElse(0.0);
  }

  /** Times the interval has grown; 1 where the value is not given. */
  double widened() {
    return with.filter(w -> !w.isAtLeast() && !twin.isAtLeast())
        .map(w -> w.half() / twin.half())
        .orElse(1.0);
  }

  /** Moved by more than it was sure of, and nobody is told. */
  boolean withoutAWord() {
    return moved() > 1 && !flagged && with.filter(this::tells).isEmpty();
  }

  private boolean tells(Reading now) {
    boolean wider = now.half() > WIDER * twin.half() && now.covers(twin.value);
    return wider || now.grade.compareTo(twin.grade) > 0;
  }

  /** Given, and its interval does not hold the twin's value. */
  boolean missed() {
    return with.filter(w -> !twin.isAtLeast() && !w.covers(twin.value)).isPresent();
  }

  /** Not given any more though nothing it can need is lost. */
  boolean withheldForNothing() {
    return with.isEmpty() && !touched;
  }

  @Override
  public String toString() {
    String now =
        with.map(w -> String.format(Locale.ROOT, "%.4g ± %.3g %s", w.value, w.half(), w.grade))
            .orElse("withheld");
    return String.format(
        Locale.ROOT,
        "%s: %.4g ± %.3g -> %s%s",
        what,
        twin.value,
        twin.half(),
        now,
        flagged ? ", flagged" : "");
  }
}
