package steadyturn.ingest.sensor;

import steadyturn.ingest.sample.Offered;

/** Takes what an adapter reads, in the order in which it came. */
@Offered
public interface SampleSink {

  /**
   * The unit tells what it is; comes at its start and may come again at any time. What a recording
   * was begun with holds for its files: where a later hello tells a lower rate or narrower ranges,
   * samples are left out, and the person is told, until one tells the first again.
   */
  void hello(UnitHello hello);

  /**
   * One sample in the unit's own axes.
   *
   * @param timeS the unit's own clock, s, whatever its zero; NaN where it has none: then the
   *     samples are told apart by their order, their losses by {@link #lost}, and their times come
   *     from the arrival of the bytes. A time made from a counter and a nominal rate is none.
   * @param ax specific force, m/s^2: +9.81 along the axis that points up at rest; so ay, az
   * @param gx rate, rad/s, right-handed about its axis; so gy, gz
   */
  void sample(double timeS, double ax, double ay, double az, double gx, double gy, double gz);

  /** One sample of a unit that has no clock. */
  default void sample(double ax, double ay, double az, double gx, double gy, double gz) {
    sample(Double.NaN, ax, ay, az, gx, gy, gz);
  }

  /** So many bytes were passed over because they made no sense. */
  void skipped(int bytes);

  /** The unit's counter tells that so many samples never arrived before the next. */
  default void lost(int samples) {}

  /**
   * What is known of the unit though it says no hello: its ranges by its kind, its number by an
   * answer. May be told as often as one likes; what a hello says goes before it.
   */
  default void known(KnownUnit known) {}

  /**
   * Where one of several units behind the same port is told of, which people name {@code PORT#2}.
   *
   * @param number from 1 on
   */
  default SampleSink unit(int number) {
    return this;
  }
}
