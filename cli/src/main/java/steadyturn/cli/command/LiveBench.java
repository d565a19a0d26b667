package steadyturn.cli.command;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.UnaryOperator;
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
    lines.addAll(BenchCommand.shares(cost));
    return lines;
  }

  private static long hits(Recording lesson) {
    return lesson.marks().stream().filter(mark -> mark.trialType().equals("hit")).count();
  }

  /** The shaft and the thorax send what the hand sends: they cost the same. */
  private int play(Recording lesson) {
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
      int[] at = new int[units.size()];
      double[] accel = new double[3];
      double[] gyro = new double[3];
      for (double timeS = 0; timeS < hand.timeS(hand.size() - 1); timeS += 1 / RATE_HZ) {
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
      }
    }
    return 0;
  }
}
