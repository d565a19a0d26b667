package steadyturn.analysis.live;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import steadyturn.ingest.live.NewestSamples;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * The latest samples of all units on the axis of a lesson, for the wear step under way and for the
 * ball just struck alike.
 */
public final class LatestSamples {

  /** A unit that was not heard for so long is not waited for, s. */
  private static final double SILENT_S = 1;

  /** A movement begins with a rest; so much before it is needed to see that, s. */
  private static final double REST_S = 3.5;

  private record Unit(UnitFacts facts, NewestSamples samples) {}

  private final String id;
  private final Player player;
  private final UnaryOperator<Recording> calibrated;
  private final Map<BodyPoint, Unit> units = new EnumMap<>(BodyPoint.class);
  private double neededFromS = Double.POSITIVE_INFINITY;

  /**
   * Of a lesson that begins.
   *
   * @param id what the recording is called
   * @param calibrated what makes the samples of a piece as true as those read from its files
   */
  public LatestSamples(String id, Player player, UnaryOperator<Recording> calibrated) {
    this.id = id;
    this.player = player;
    this.calibrated = calibrated;
  }

  /**
   * Lays a unit on the axis; again whenever more is known of it.
   *
   * @param startS when its first sample was taken
   */
  public synchronized void unit(UnitFacts facts, double startS) {
    Unit known = units.get(facts.point());
    NewestSamples samples = known == null ? new NewestSamples() : known.samples;
    samples.startsAt(startS);
    units.put(facts.point(), new Unit(facts, samples));
  }

  /**
   * Takes one sample of a unit that was laid on the axis; answers its time there, s.
   *
   * @param latencyS s since the unit's first sample
   */
  public synchronized double add(
      BodyPoint point, double latencyS, double[] accelMps2, double[] gyroRadPerS) {
    Unit unit = units.get(point);
    if (unit == null) {
      throw new IllegalArgumentException("the unit at " + point + " has no place on the axis yet");
    }
    return unit.samples.add(latencyS, accelMps2, gyroRadPerS);
  }

  /** The units that sent something. */
  public synchronized List<BodyPoint> points() {
    return List.copyOf(units.keySet());
  }

  /**
   * Up to when all units that still send were heard; samples come a little after they are taken.
   */
  public synchronized double heardToS(double nowS) {
    return units.values().stream()
        .mapToDouble(unit -> unit.samples.lastS())
        .filter(lastS -> lastS > nowS - SILENT_S)
        .min()
        .orElse(nowS);
  }

  /** Keeps all from an instant on, whatever is let go; infinity when it is needed no more. */
  synchronized void keepFrom(double fromS) {
    neededFromS = fromS;
  }

  synchronized void dropBefore(double timeS) {
    double fromS = Math.min(timeS, neededFromS);
    units.values().forEach(unit -> unit.samples.dropBefore(fromS));
  }

  /** What is kept around a mark, with the rest before it, and the mark. */
  public Recording around(Mark mark) {
    return between(mark.onsetS() - REST_S, mark.endS() + 1, List.of(mark));
  }

  /** What is kept of a stretch, in a copy. */
  Recording between(double fromS, double toS, List<Mark> marks) {
    return calibrated.apply(new Recording(id, player, streams(fromS, toS), marks));
  }

  private synchronized List<UnitStream> streams(double fromS, double toS) {
    return units.values().stream()
        .map(unit -> unit.samples.between(unit.facts, fromS, toS))
        .filter(stream -> stream.size() > 1)
        .toList();
  }
}
