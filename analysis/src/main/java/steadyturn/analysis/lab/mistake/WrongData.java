package steadyturn.analysis.lab.mistake;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
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

  /** Strapped on half a turn about one of its axes. */
  static Recording flipped(Recording sound, int about, BodyPoint point) {
    return one(
        sound,
        point,
        u -> {
          double[][] accel = WrongUnit.accel(u);
          double[][] gyro = WrongUnit.gyro(u);
          for (int axis = 0; axis < 3; axis++) {
            accel[axis] = WrongUnit.times(accel[axis], axis == about ? 1 : -1);
            gyro[axis] = WrongUnit.times(gyro[axis], axis == about ? 1 : -1);
          }
          return WrongUnit.columns(u, accel, gyro);
        });
  }

  /** The pelvis unit a quarter turn in the plane of the skin. */
  static Recording onItsSide(Recording sound) {
    return one(
        sound,
        BodyPoint.PELVIS,
        u -> {
          double[][] a = WrongUnit.accel(u);
          double[][] g = WrongUnit.gyro(u);
          return WrongUnit.columns(
              u,
              new double[][] {WrongUnit.times(a[1], -1), a[0], a[2]},
              new double[][] {WrongUnit.times(g[1], -1), g[0], g[2]});
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
                  return WrongUnit.times(u, factor)
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

  /** Forearm and hand unit strapped side by side on the hand. */
  static Recording onOnePlace(Recording sound) {
    UnitStream hand = sound.unit(BodyPoint.LEAD_HAND).orElseThrow();
    return one(
        sound, BodyPoint.LEAD_FOREARM, u -> hand.withFacts(as(hand, BodyPoint.LEAD_FOREARM)));
  }

  /** Wrong from the middle of the recording on. */
  static Recording later(Recording sound, Recording wrong) {
    UnitStream first = sound.units().get(0);
    return later(sound, wrong, first.timeS(0) + first.lengthS() / 2);
  }

  /** Wrong from an instant on. */
  static Recording later(Recording sound, Recording wrong, double fromS) {
    List<UnitStream> units =
        IntStream.range(0, sound.units().size())
            .mapToObj(k -> joined(sound.units().get(k), wrong.units().get(k), fromS))
            .toList();
    return of(sound, sound.player(), units);
  }

  private static UnitStream joined(UnitStream before, UnitStream after, double fromS) {
    return before
        .between(Double.NEGATIVE_INFINITY, fromS)
        .followedBy(after.between(fromS, Double.POSITIVE_INFINITY));
  }
}
