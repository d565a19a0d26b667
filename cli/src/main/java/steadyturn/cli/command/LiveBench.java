package steadyturn.cli.command;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.apache.commons.math3.stat.StatUtils;
import steadyturn.analysis.coach.teaching.TeachingReader;
import steadyturn.analysis.lesson.Notice;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.live.LiveEvents;
import steadyturn.analysis.live.LiveLesson;
import steadyturn.cli.bench.Cost;
import steadyturn.cli.command.live.WarmUp;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * Plays a lesson of five units at 1 kHz to the room that answers every ball, as fast as it takes
 * it, on one thread, and says how long the answers took and what share of a core the lesson would
 * have asked for.
 */
final class LiveBench implements LiveEvents {

  static final double RATE_HZ = 1000;

  private static final int PARTS = 5;

  private final List<Double> keptMb = new ArrayList<>();
  private final List<Double> answeredAfterS = new CopyOnWriteArrayList<>();
  private final List<Notice> notices = new CopyOnWriteArrayList<>();

  @Override
  public void measured(SwingResult swing, double afterS) {
    answeredAfterS.add(afterS);
  }

  @Override
  public void noticed(Notice notice) {
    notices.add(notice);
  }

  /** Plays a recorded lesson; answers what is to be said of it. */
  List<String> lines(Recording lesson) throws Exception {
    UnitStream longest = lesson.unit(BodyPoint.PELVIS).orElseThrow();
    WarmUp.run(TeachingReader.shipped());
    Cost cost = Cost.of(() -> play(lesson));
    double[] sorted = answeredAfterS.stream().mapToDouble(s -> s).sorted().toArray();
    List<String> lines = new ArrayList<>();
    lines.add(BenchCommand.line("swings answered", "%d of %d", sorted.length, hits(lesson)));
    lines.add(
        BenchCommand.line(
            "answered after",
            "%.0f ms in the middle, %.0f ms p99, %.0f ms at most",
            1000 * StatUtils.percentile(sorted, 50),
            1000 * StatUtils.percentile(sorted, 99),
            1000 * StatUtils.max(sorted)));
    lines.add(
        BenchCommand.line(
            "share of a core",
            "%.3f of the lesson's %.0f s",
            cost.processorS() / longest.lengthS(),
            longest.lengthS()));
    lines.add(
        BenchCommand.line(
            "memory kept",
            "%s MB more than before, after each fifth of the lesson",
            keptMb.stream()
                .skip(1)
                .map(mb -> Long.toString(Math.round(mb - keptMb.get(0))))
                .collect(Collectors.joining(", "))));
    lines.addAll(BenchCommand.shares(cost));
    return lines;
  }

  /** What is still in use once all waste is collected. */
  private static double keptMb() {
    System.gc();
    return 1e-6 * (Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory());
  }

  private static long hits(Recording lesson) {
    return lesson.marks().stream().filter(mark -> mark.trialType().equals("hit")).count();
  }

  /** The shaft and the thorax send what the hand sends: they cost the same. */
  private int play(Recording lesson) {
    keptMb.add(keptMb());
    List<UnitStream> units = new ArrayList<>(lesson.units());
    UnitStream hand = lesson.unit(BodyPoint.LEAD_HAND).orElseThrow();
    try (LiveLesson live =
        new LiveLesson(
            lesson.id(), lesson.player(), UnaryOperator.identity(), this, Runnable::run)) {
      List<BodyPoint> points = new ArrayList<>(units.stream().map(UnitStream::point).toList());
      lesson.units().forEach(unit -> live.unit(unit.facts(), 0));
      for (BodyPoint more : List.of(BodyPoint.CLUB_SHAFT, BodyPoint.THORAX)) {
        live.unit(UnitFacts.plain(more, RATE_HZ), 0);
        units.add(hand);
        points.add(more);
      }
      lesson.marks().forEach(live::mark);
      double lengthS = hand.timeS(hand.size() - 1);
      int[] at = new int[units.size()];
      double[] accel = new double[3];
      double[] gyro = new double[3];
      for (double timeS = 0; timeS < lengthS; timeS += 1 / RATE_HZ) {
        for (int k = 0; k < at.length; k++) {
          UnitStream unit = units.get(k);
          for (; at[k] < unit.size() && unit.timeS(at[k]) <= timeS; at[k]++) {
            for (int axis = 0; axis < 3; axis++) {
              accel[axis] = unit.accelMps2(axis, at[k]);
              gyro[axis] = unit.gyroRadPerS(axis, at[k]);
            }
            live.sample(points.get(k), unit.timeS(at[k]), accel, gyro);
          }
        }
        if (timeS > keptMb.size() * lengthS / PARTS) {
          keptMb.add(keptMb());
        }
      }
    }
    return 0;
  }
}
