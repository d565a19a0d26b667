package steadyturn.analysis.lab.study;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import java.util.function.UnaryOperator;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** Recordings with something wrong in them, as files would hold it. */
final class WrongData {

  private WrongData() {}

  static Recording each(Recording sound, UnaryOperator<UnitStream> change) {
    return of(sound, sound.player(), sound.units().stream().map(change).toList());
  }

  static Recording one(Recording sound, BodyPoint point, UnaryOperator<UnitStream> change) {
    return each(sound, u -> u.point() == point ? change.apply(u) : u);
  }

  private static Recording of(Recording sound, Player player, List<UnitStream> units) {
    return new Recording(sound.id(), player, units, sound.marks());
  }

  private static UnitStream columns(UnitStream u, double[][] accel, double[][] gyro) {
    return new UnitStream(u.facts(), u.timeColumnS(), accel, gyro);
  }

  private static double[][] accel(UnitStream u) {
    return new double[][] {u.accelColumnMps2(0), u.accelColumnMps2(1), u.accelColumnMps2(2)};
  }

  private static double[][] gyro(UnitStream u) {
    return new double[][] {u.gyroColumnRadPerS(0), u.gyroColumnRadPerS(1), u.gyroColumnRadPerS(2)};
  }

  private static double[] times(double[] column, double factor) {
    return Arrays.stream(column).map(v -> v * factor).toArray();
  }

  /** Strapped on half a turn about one of its axes. */
  static Recording flipped(Recording sound, int about, BodyPoint point) {
    return one(
        sound,
        point,
        u -> {
          double[][] accel = accel(u);
          double[][] gyro = gyro(u);
          for (int axis = 0; axis < 3; axis++) {
            accel[axis] = times(accel[axis], axis == about ? 1 : -1);
            gyro[axis] = times(gyro[axis], axis == about ? 1 : -1);
          }
          return columns(u, accel, gyro);
        });
  }

  /** The pelvis unit a quarter turn in the plane of the skin. */
  static Recording onItsSide(Recording sound) {
    return one(
        sound,
        BodyPoint.PELVIS,
        u -> {
          double[][] a = accel(u);
          double[][] g = gyro(u);
          return columns(
              u,
              new double[][] {times(a[1], -1), a[0], a[2]},
              new double[][] {times(g[1], -1), g[0], g[2]});
        });
  }

  /** Two units worn in each other's place. */
  static Recording exchanged(Recording sound, BodyPoint a, BodyPoint b) {
    UnitStream ofA = sound.unit(a).orElseThrow();
    UnitStream ofB = sound.unit(b).orElseThrow();
    List<UnitStream> units =
        sound.units().stream()
            .map(
                u ->
                    u == ofA ? ofB.withFacts(as(ofB, a)) : u == ofB ? ofA.withFacts(as(ofA, b)) : u)
            .toList();
    return of(sound, sound.player(), units);
  }

  private static UnitFacts as(UnitStream u, BodyPoint point) {
    UnitFacts f = u.facts();
    return new UnitFacts(
        point,
        f.serialNumber(),
        f.nominalRateHz(),
        f.accelFullScaleMps2(),
        f.gyroFullScaleRadPerS(),
        f.calibrated());
  }

  static Recording sized(
      Recording sound,
      DoubleUnaryOperator width,
      DoubleUnaryOperator depth,
      DoubleUnaryOperator stature) {
    Player p = sound.player();
    Player wrong =
        new Player(
            p.id(),
            p.handed(),
            change(p.pelvisWidthMm(), width),
            change(p.pelvisDepthMm(), depth),
            change(p.statureMm(), stature));
    return of(sound, wrong, sound.units());
  }

  private static OptionalDouble change(OptionalDouble size, DoubleUnaryOperator change) {
    return size.isPresent() ? OptionalDouble.of(change.applyAsDouble(size.getAsDouble())) : size;
  }

  static Recording sizesExchanged(Recording sound) {
    Player p = sound.player();
    Player wrong =
        new Player(p.id(), p.handed(), p.pelvisDepthMm(), p.pelvisWidthMm(), p.statureMm());
    return of(sound, wrong, sound.units());
  }

  static Recording otherSide(Recording sound) {
    Player p = sound.player();
    Handedness other = p.handed() == Handedness.LEFT ? Handedness.RIGHT : Handedness.LEFT;
    Player wrong = new Player(p.id(), other, p.pelvisWidthMm(), p.pelvisDepthMm(), p.statureMm());
    return of(sound, wrong, sound.units());
  }

  static Recording shifted(Recording sound, double byS, BodyPoint... points) {
    Set<BodyPoint> late = Set.of(points);
    return each(sound, u -> late.contains(u.point()) ? u.shifted(byS) : u);
  }

  /** One axis of each sensor with another sign. */
  static UnitStream mapped(UnitStream u, int accelAxis, int accelSign, int gyroAxis, int gyroSign) {
    double[][] accel = accel(u);
    double[][] gyro = gyro(u);
    accel[accelAxis] = times(accel[accelAxis], accelSign);
    gyro[gyroAxis] = times(gyro[gyroAxis], gyroSign);
    return columns(u, accel, gyro);
  }

  static UnitStream gyroExchanged(UnitStream u, int axis) {
    double[][] gyro = gyro(u);
    double[] kept = gyro[axis];
    gyro[axis] = gyro[(axis + 1) % 3];
    gyro[(axis + 1) % 3] = kept;
    return columns(u, accel(u), gyro);
  }

  static UnitStream scaled(UnitStream u, double ofAccel, double ofGyro) {
    double[][] accel = accel(u);
    double[][] gyro = gyro(u);
    for (int axis = 0; axis < 3; axis++) {
      accel[axis] = times(accel[axis], ofAccel);
      gyro[axis] = times(gyro[axis], ofGyro);
    }
    return columns(u, accel, gyro);
  }

  static UnitStream cut(UnitStream u, double atMps2, double atDegPerS) {
    double at = Math.toRadians(atDegPerS);
    double[][] accel = accel(u);
    double[][] gyro = gyro(u);
    for (int axis = 0; axis < 3; axis++) {
      accel[axis] =
          Arrays.stream(accel[axis]).map(v -> Math.max(-atMps2, Math.min(atMps2, v))).toArray();
      gyro[axis] = Arrays.stream(gyro[axis]).map(v -> Math.max(-at, Math.min(at, v))).toArray();
    }
    return columns(u, accel, gyro);
  }

  /** Every 1/25 s one sample is kept; those between repeat it, or lie on the line to the next. */
  static UnitStream filled(UnitStream u, boolean byLines) {
    int every = (int) Math.max(2, Math.round(u.facts().nominalRateHz() / 25));
    double[][] accel = accel(u);
    double[][] gyro = gyro(u);
    for (int axis = 0; axis < 3; axis++) {
      accel[axis] = filled(accel[axis], every, byLines);
      gyro[axis] = filled(gyro[axis], every, byLines);
    }
    return columns(u, accel, gyro);
  }

  private static double[] filled(double[] column, int every, boolean byLines) {
    double[] out = new double[column.length];
    for (int i = 0; i < out.length; i++) {
      int from = i - i % every;
      int to = Math.min(column.length - 1, from + every);
      double part = byLines && to > from ? (double) (i - from) / (to - from) : 0;
      out[i] = column[from] + part * (column[to] - column[from]);
    }
    return out;
  }

  static UnitStream times(UnitStream u, double factor) {
    return u.withTimes(times(u.timeColumnS(), factor));
  }

  /** All times and marks, as of a rate that was stated wrong. */
  static Recording stretched(Recording sound, double factor) {
    List<Mark> marks =
        sound.marks().stream()
            .map(
                m ->
                    new Mark(
                        m.onsetS() * factor,
                        m.durationS() * factor,
                        m.trialType(),
                        m.club(),
                        m.note()))
            .toList();
    return new Recording(
        sound.id(),
        sound.player(),
        sound.units().stream()
            .map(
                u -> {
                  UnitFacts f = u.facts();
                  return times(u, factor)
                      .withFacts(
                          new UnitFacts(
                              f.point(),
                              f.serialNumber(),
                              f.nominalRateHz() / factor,
                              f.accelFullScaleMps2(),
                              f.gyroFullScaleRadPerS(),
                              f.calibrated()));
                })
            .toList(),
        marks);
  }

  /** What phones call linear acceleration: gravity taken out by a slow average. */
  static UnitStream withoutGravity(UnitStream u) {
    double[][] accel = accel(u);
    double keep = Math.exp(-1 / (0.5 * u.facts().nominalRateHz()));
    for (int axis = 0; axis < 3; axis++) {
      double[] out = new double[u.size()];
      double slow = u.size() == 0 ? 0 : accel[axis][0];
      for (int i = 0; i < out.length; i++) {
        double value = accel[axis][i];
        slow = Double.isNaN(value) ? slow : keep * slow + (1 - keep) * value;
        out[i] = value - slow;
      }
      accel[axis] = out;
    }
    return columns(u, accel, gyro(u));
  }
}
