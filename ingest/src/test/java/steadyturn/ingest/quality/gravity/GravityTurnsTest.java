package steadyturn.ingest.quality.gravity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import steadyturn.ingest.quality.gravity.GravityTurns.Pair;
import steadyturn.ingest.quality.gravity.GravityTurns.Reading;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

class GravityTurnsTest {

  private static final int SAMPLES = 400;
  private static final List<Double> BIAS = List.of(0.02, -0.03, 0.01);
  private static final Reading TURNED = new Reading(List.of(2, 0, 1), List.of(-1, 1, 1), 1);
  private static final Reading IN_DEGREES = Reading.AS_GIVEN.times(Math.toRadians(1));

  private static UnitStream moved(long seed) {
    System.out.println("seed " + seed);
    Random random = new Random(seed);
    double[] timeS = new double[SAMPLES];
    Arrays.setAll(timeS, i -> i / 200.0);
    double[][] gyro = new double[3][SAMPLES];
    for (int axis = 0; axis < 3; axis++) {
      double size = 3 + random.nextDouble();
      double pace = 2 + random.nextDouble();
      double phase = 6 * random.nextDouble();
      for (int i = 0; i < SAMPLES; i++) {
        gyro[axis][i] = size * Math.sin(pace * timeS[i] + phase);
      }
    }
    return new UnitStream(
        UnitFacts.plain(BodyPoint.LEAD_HAND, 200), timeS, new double[3][SAMPLES], gyro);
  }

  private static double[] direction(Random random) {
    double[] u = {random.nextGaussian(), random.nextGaussian(), random.nextGaussian()};
    double norm = Math.sqrt(u[0] * u[0] + u[1] * u[1] + u[2] * u[2]);
    return new double[] {u[0] / norm, u[1] / norm, u[2] / norm};
  }

  /** u' = -w x u, in steps so small that their order does not matter. */
  private static double[] followed(UnitStream unit, Pair pair, Reading reading, int parts) {
    double[] u = pair.before().clone();
    for (int i = pair.from(); i < pair.to(); i++) {
      double dt = reading.scale() * (unit.timeS(i + 1) - unit.timeS(i)) / parts;
      double[] w = new double[3];
      for (int k = 0; k < 3; k++) {
        int axis = reading.axes().get(k);
        double mean = (unit.gyroRadPerS(axis, i) + unit.gyroRadPerS(axis, i + 1)) / 2;
        w[k] = reading.signs().get(k) * (mean - BIAS.get(axis)) * dt;
      }
      for (int part = 0; part < parts; part++) {
        double[] half = plus(u, cross(u, w), 0.5);
        u = plus(u, cross(half, w), 1);
      }
    }
    return u;
  }

  private static double[] cross(double[] a, double[] b) {
    return new double[] {
      a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]
    };
  }

  private static double[] plus(double[] a, double[] b, double part) {
    return new double[] {a[0] + part * b[0], a[1] + part * b[1], a[2] + part * b[2]};
  }

  private static GravityTurns turns(UnitStream unit, List<Pair> pairs) {
    return new GravityTurns(
        unit, BIAS, pairs.stream().map(p -> p.ready(unit, BIAS)).toList(), List.of());
  }

  @Test
  void aDirectionThatStandsStillGoesAgainstTheTurnUnderEveryReading() {
    // Given: smooth turns of 3 rad/s about all axes, a second and a half. Expect: the differential
    // equation u' = u x w, in 40 midpoint steps a sample. Within 1e-5: those err by (w dt)^2 / 6 a
    // step of 0.4 mrad, 12,000 of them.
    UnitStream unit = moved(3);
    Random random = new Random(4);
    double[] before = direction(random);
    GravityTurns turns =
        turns(
            unit,
            List.of(new Pair(20, 320, before, before, GravityTurns.CALM_SD_RAD, new double[0])));
    Pair pair = turns.pairs().get(0);
    for (Reading reading : List.of(Reading.AS_GIVEN, TURNED, IN_DEGREES)) {
      double[] u = before.clone();
      double path = turns.follow(pair, reading, u);
      double[] expected = followed(unit, pair, reading, 40);
      for (int axis = 0; axis < 3; axis++) {
        assertThat(u[axis]).isCloseTo(expected[axis], within(1e-5));
      }
      double way = 0;
      for (int i = 20; i < 320; i++) {
        double square = 0;
        for (int axis = 0; axis < 3; axis++) {
          double mean = (unit.gyroRadPerS(axis, i) + unit.gyroRadPerS(axis, i + 1)) / 2;
          square += (mean - BIAS.get(axis)) * (mean - BIAS.get(axis));
        }
        way += reading.scale() * Math.sqrt(square) / 200;
      }
      assertThat(path).isCloseTo(way, within(1e-9));
    }
  }

  @Test
  void aReadingIsGivenUpOnlyWhenItIsSurelyWorseThanAsked() {
    // Given: 20 pairs whose ends are where the rates lead, some 0 to 20 deg off (random). Expect:
    // the same misfit whatever the bound, or infinity where it is above the bound.
    UnitStream unit = moved(5);
    Random random = new Random(6);
    for (int trial = 0; trial < 50; trial++) {
      List<Pair> pairs = new java.util.ArrayList<>();
      double stray = Math.toRadians(20) * random.nextDouble();
      for (int k = 0; k < 20; k++) {
        double[] before = direction(random);
        Pair pair =
            new Pair(10 * k, 10 * k + 150, before, before, GravityTurns.CALM_SD_RAD, new double[0]);
        double[] end = followed(unit, pair, Reading.AS_GIVEN, 1);
        double[] off = plus(end, direction(random), stray * random.nextDouble());
        double norm = Math.sqrt(off[0] * off[0] + off[1] * off[1] + off[2] * off[2]);
        double[] after = {off[0] / norm, off[1] / norm, off[2] / norm};
        pairs.add(
            new Pair(
                pair.from(), pair.to(), before, after, GravityTurns.CALM_SD_RAD, new double[0]));
      }
      GravityTurns turns = turns(unit, pairs);
      double whole = turns.misfit(Reading.AS_GIVEN);
      assertThat(whole).isFinite();
      assertThat(turns.misfit(Reading.AS_GIVEN, 1.01 * whole)).isEqualTo(whole);
      double other = turns.misfit(TURNED);
      for (double most : new double[] {0.3, 1, 6}) {
        double bounded = turns.misfit(TURNED, most);
        assertThat(bounded).isIn(other, Double.POSITIVE_INFINITY);
        assertThat(bounded == other || other > most).isTrue();
      }
    }
  }
}
