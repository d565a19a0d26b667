package steadyturn.cli.command.live;

import static java.util.Locale.ROOT;

import java.util.Optional;
import java.util.function.IntFunction;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sensor.KnownUnit;
import steadyturn.ingest.sensor.SampleSink;
import steadyturn.ingest.sensor.UnitHello;

/** What a person wants to see of one unit: that it moves, and how fast it sends. */
final class UnitWatch implements SampleSink {

  private final IntFunction<UnitWatch> others;
  private Optional<UnitHello> hello = Optional.empty();
  private KnownUnit known = KnownUnit.NOTHING;
  private long samples;
  private double nowS;
  private double firstS;
  private double accelNorm;
  private double gyroNorm;

  /**
   * A unit that was not heard yet.
   *
   * @param others the units of the same port by number
   */
  UnitWatch(IntFunction<UnitWatch> others) {
    this.others = others;
  }

  /** When the bytes came that are read next. */
  void at(double steadyS) {
    firstS = samples == 0 ? steadyS : firstS;
    nowS = steadyS;
  }

  long samples() {
    return samples;
  }

  @Override
  public SampleSink unit(int number) {
    return number == 0 ? this : others.apply(number);
  }

  @Override
  public void hello(UnitHello said) {
    hello = Optional.of(said);
  }

  @Override
  public void known(KnownUnit told) {
    known = told;
  }

  @Override
  public void sample(
      double timeS, double ax, double ay, double az, double gx, double gy, double gz) {
    samples++;
    accelNorm = Math.sqrt(ax * ax + ay * ay + az * az);
    gyroNorm = Math.sqrt(gx * gx + gy * gy + gz * gz);
  }

  @Override
  public void skipped(int bytes) {}

  /** What is seen of it now. */
  UnitSearch.Found found(String path, int number, String adapter, String trouble) {
    return new UnitSearch.Found(
        path,
        number,
        adapter,
        hello.flatMap(said -> BodyPoint.ofTrackedPoint(said.name())),
        rateHz(),
        Math.toDegrees(gyroNorm),
        trouble);
  }

  private double rateHz() {
    return firstS > 0 && nowS > firstS ? samples / (nowS - firstS) : 0;
  }

  String line(String place, String adapter, String says, String trouble) {
    String line =
        String.format(
            ROOT,
            "%-14s %-13s %-12s %-8s %6.1f %6.2f  %s",
            place,
            adapter,
            hello.map(UnitHello::name).filter(n -> !n.isEmpty()).orElse(says),
            hello.map(UnitHello::serialNumber).orElse(known.serialNumber()),
            rateHz(),
            accelNorm,
            trouble.isEmpty() ? UnitsCommand.bar(gyroNorm) : trouble);
    boolean isCut = trouble.isEmpty() && line.length() > UnitsCommand.WIDTH;
    return (isCut ? line.substring(0, UnitsCommand.WIDTH) : line) + System.lineSeparator();
  }
}
