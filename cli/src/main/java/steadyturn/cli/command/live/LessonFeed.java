package steadyturn.cli.command.live;

import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import steadyturn.analysis.live.LiveLesson;
import steadyturn.ingest.live.LiveListener;
import steadyturn.ingest.live.LiveUnit;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;

/** Hands what one unit sends to the lesson that is answered, on the lesson's axis. */
final class LessonFeed implements LiveListener {

  /** The unit's clock becomes better known; so often the lesson is told, s. */
  private static final double TELL_EVERY_S = 1;

  private final LiveLesson lesson;
  private final LocalDateTime zero;
  private final LiveListener besides;
  private double startS;
  private Optional<LiveUnit> unit = Optional.empty();
  private double toldS = Double.NEGATIVE_INFINITY;

  /**
   * A feed whose unit is yet to be named.
   *
   * @param zero time of day at the zero of the lesson's axis
   * @param besides hears the samples too, on the lesson's axis, once the unit is laid on it
   */
  LessonFeed(LiveLesson lesson, LocalDateTime zero, LiveListener besides) {
    this.lesson = lesson;
    this.zero = zero;
    this.besides = besides;
  }

  /** Names the unit that is listened to, before its first byte comes. */
  LiveUnit of(LiveUnit its) {
    unit = Optional.of(its);
    return its;
  }

  @Override
  public void sample(BodyPoint point, double hostS, double[] accelMps2, double[] gyroRadPerS) {
    LiveUnit its = unit.orElseThrow();
    double latencyS = its.latencyS();
    if (latencyS - toldS >= TELL_EVERY_S) {
      Optional<UnitFacts> facts = its.facts();
      if (facts.isEmpty()) {
        return;
      }
      toldS = latencyS;
      startS = sinceZeroS(its.takenAt()) - latencyS;
      lesson.unit(facts.get(), startS);
    }
    lesson.sample(point, latencyS, accelMps2, gyroRadPerS);
    besides.sample(point, startS + latencyS, accelMps2, gyroRadPerS);
  }

  private double sinceZeroS(LocalDateTime at) {
    return 1e-9 * ChronoUnit.NANOS.between(zero, at);
  }
}
