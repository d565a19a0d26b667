package steadyturn.ingest.live;

import steadyturn.ingest.sensor.SampleSink;
import steadyturn.ingest.sensor.UnitHello;

/** What comes through the same port but is not of the unit that is asked for. */
final class OtherUnits implements SampleSink {

  private final UnitIntake asked;
  private final int number;
  private long heard;

  /**
   * All units of a port but one.
   *
   * @param number that of the one; 0 when it is told of without a number
   */
  OtherUnits(UnitIntake asked, int number) {
    this.asked = asked;
    this.number = number;
  }

  /** Where an adapter tells of units without a number. */
  SampleSink withoutNumber() {
    return unit(0);
  }

  long heard() {
    return heard;
  }

  @Override
  public SampleSink unit(int which) {
    return which == number ? asked : this;
  }

  @Override
  public void hello(UnitHello hello) {}

  @Override
  public void sample(
      double timeS, double ax, double ay, double az, double gx, double gy, double gz) {
    heard++;
  }

  @Override
  public void skipped(int bytes) {
    asked.skipped(bytes);
  }
}
