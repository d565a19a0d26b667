package steadyturn.analysis.lab;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import steadyturn.analysis.lab.unit.UnitClock;
import steadyturn.analysis.swing.ClockSpread;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.ingest.clock.AlignedRecording;
import steadyturn.ingest.clock.CommonClock;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * A simulated lesson with one fault in the clock of one unit, and what the alignment makes of it.
 *
 * @param size of the fault: s, or a part for a rate
 */
record FaultyClocks(long seed, Fault fault, BodyPoint unit, double size, Outcome outcome) {

  /** Kinds of faults. */
  enum Fault {
    START,
    RATE,
    OUTAGE,
    RESTART
  }

  /**
   * What became of it, over all swings and the pairs pelvis-forearm and forearm-hand.
   *
   * @param ties pairs of clocks looked at
   * @param withheld for them the values are withheld, or the samples left out
   * @param covered within 1.96 spreads of the truth
   * @param wrong beyond 3.5 spreads and 2 ms: silently wrong
   * @param worstMs largest error of those not withheld, ms
   * @param told whether anything was said of a clock
   */
  record Outcome(int ties, int withheld, int covered, int wrong, double worstMs, boolean told) {}

  static FaultyClocks of(long seed) {
    Random random = new Random(1_000_003 * seed);
    Fault fault = Fault.values()[(int) (seed % 4)];
    BodyPoint unit =
        List.of(BodyPoint.PELVIS, BodyPoint.LEAD_FOREARM, BodyPoint.LEAD_HAND)
            .get((int) (seed / 4 % 3));
    double sign = random.nextBoolean() ? 1 : -1;
    double size =
        switch (fault) {
          case START -> sign * (0.02 + 0.48 * random.nextDouble());
          case RATE -> sign * 1e-6 * (300 + 2700 * random.nextDouble());
          case OUTAGE -> 1 + 9 * random.nextDouble();
          case RESTART -> sign * 0.03 * random.nextDouble();
        };
    LessonSpec spec = LessonSpec.standard().withHits(4 + random.nextInt(7));
    SyntheticLesson lesson = LessonSimulator.simulate(spec, seed);
    double part = 0.4 + 0.5 * random.nextDouble();
    Faulty faulty = spoiled(lesson, fault, unit, size, part);
    return new FaultyClocks(seed, fault, unit, size, outcome(lesson, faulty, unit));
  }

  /** The recording with the fault, and what the unit's clock shows for its times before it. */
  private record Faulty(Recording recording, DoubleUnaryOperator shows) {}

  private static Faulty spoiled(
      SyntheticLesson lesson, Fault fault, BodyPoint point, double size, double part) {
    UnitStream unit = lesson.recording().unit(point).orElseThrow();
    double startS = unit.timeS(0);
    double atS = startS + part * unit.lengthS();
    double lostS = fault == Fault.OUTAGE ? size : fault == Fault.RESTART ? 1 : 0;
    DoubleUnaryOperator shows =
        t ->
            switch (fault) {
              case START -> t + size;
              case RATE -> t + size * (t - startS);
              case OUTAGE -> t < atS ? t : t - size;
              case RESTART -> t < atS ? t : t + size;
            };
    int[] kept =
        IntStream.range(0, unit.size())
            .filter(i -> unit.timeS(i) < atS || unit.timeS(i) >= atS + lostS)
            .toArray();
    double[][] columns = new double[6][];
    for (int channel = 0; channel < 6; channel++) {
      double[] column = unit.column(channel);
      columns[channel] = Arrays.stream(kept).mapToDouble(i -> column[i]).toArray();
    }
    UnitStream spoiled =
        new UnitStream(
            unit.facts(),
            Arrays.stream(kept).mapToDouble(i -> shows.applyAsDouble(unit.timeS(i))).toArray(),
            Arrays.copyOfRange(columns, 0, 3),
            Arrays.copyOfRange(columns, 3, 6));
    Recording whole = lesson.recording();
    List<UnitStream> units =
        whole.units().stream().map(u -> u.point() == point ? spoiled : u).toList();
    return new Faulty(
        new Recording(whole.id(), whole.player(), units, whole.marks()),
        t -> t >= atS && t < atS + lostS ? Double.NaN : shows.applyAsDouble(t));
  }

  private static Outcome outcome(SyntheticLesson lesson, Faulty faulty, BodyPoint point) {
    AlignedRecording aligned = CommonClock.align(faulty.recording);
    int ties = 0;
    int withheld = 0;
    int covered = 0;
    int wrong = 0;
    double worstS = 0;
    for (var swing : lesson.truth().swings()) {
      double axisS = swing.eventS(SwingEvent.IMPACT).orElseThrow();
      double trueS = clock(lesson, BodyPoint.PELVIS).trueS(axisS);
      for (BodyPoint other : List.of(BodyPoint.PELVIS, BodyPoint.LEAD_HAND)) {
        ties++;
        double a = placed(lesson, faulty, aligned, BodyPoint.LEAD_FOREARM, point, trueS);
        double b = placed(lesson, faulty, aligned, other, point, trueS);
        double sdS = aligned.sdBetweenS(BodyPoint.LEAD_FOREARM, other, axisS);
        double errorS = Math.abs(a - b);
        if (Double.isNaN(errorS) || sdS > ClockSpread.LOOSEST_S) {
          withheld++;
          continue;
        }
        covered += errorS < 1.96 * sdS ? 1 : 0;
        wrong += errorS > 3.5 * sdS && errorS > 0.002 ? 1 : 0;
        worstS = Math.max(worstS, errorS);
      }
    }
    return new Outcome(ties, withheld, covered, wrong, 1000 * worstS, !aligned.reasons().isEmpty());
  }

  /** Where the sample taken at a true time came to lie; NaN where none is there. */
  private static double placed(
      SyntheticLesson lesson,
      Faulty faulty,
      AlignedRecording aligned,
      BodyPoint unit,
      BodyPoint spoiled,
      double trueS) {
    double shownS = clock(lesson, unit).shownS(trueS);
    double asReadS = unit == spoiled ? faulty.shows.applyAsDouble(shownS) : shownS;
    UnitStream read = faulty.recording.unit(unit).orElseThrow();
    UnitStream laid = aligned.recording().unit(unit).orElseThrow();
    int i = read.indexAt(asReadS);
    if (Double.isNaN(asReadS) || i >= read.size()) {
      return Double.NaN;
    }
    // the same sample, known by its values, as samples may have been left out before it
    for (int k = Math.max(0, i - read.size() + laid.size());
        k <= Math.min(i, laid.size() - 1);
        k++) {
      if (laid.gyroRadPerS(0, k) == read.gyroRadPerS(0, i)
          && laid.accelMps2(0, k) == read.accelMps2(0, i)
          && laid.accelMps2(1, k) == read.accelMps2(1, i)) {
        return laid.timeS(k) - (read.timeS(i) - asReadS);
      }
    }
    return Double.NaN;
  }

  private static UnitClock clock(SyntheticLesson lesson, BodyPoint point) {
    return lesson.truth().unit(point).orElseThrow().clock();
  }
}
