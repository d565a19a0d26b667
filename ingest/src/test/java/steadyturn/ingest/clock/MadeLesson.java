package steadyturn.ingest.clock;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * A seeded lesson of three units whose clocks differ: movement bursts with an impact in each. True
 * time is the pelvis unit's. An impact rises within half a millisecond at the arm and rings at 120
 * Hz with 8 ms of decay, 60 g at the hand, 40 g at the forearm; at the pelvis it rises within 2 ms
 * to 3 g and comes 1 ms later. The sizes are assumptions.
 */
final class MadeLesson {

  private static final double G = 9.80665;

  final double lengthS;
  final double rateHz;
  final List<Double> impactsS = new ArrayList<>();
  double forearmOffsetS;
  double forearmSkewPpm;
  double handOffsetS;
  double handSkewPpm;
  double handFeelsLaterS;
  boolean pelvisFeels = true;
  boolean armFeels = true;
  private final long seed;

  MadeLesson(long seed, double lengthS, double rateHz, int impacts) {
    Random random = new Random(seed);
    this.seed = seed;
    this.lengthS = lengthS;
    this.rateHz = rateHz;
    for (int k = 0; k < impacts; k++) {
      double share = (k + 0.3 + 0.4 * random.nextDouble()) / impacts;
      impactsS.add(2 + share * (lengthS - 4));
    }
    forearmOffsetS = 0.03 * (2 * random.nextDouble() - 1);
    handOffsetS = 0.03 * (2 * random.nextDouble() - 1);
    forearmSkewPpm = 50 * (2 * random.nextDouble() - 1);
    handSkewPpm = 50 * (2 * random.nextDouble() - 1);
  }

  /** The unit's reading of a true time: true = t + offset + skew t. */
  double unitTimeS(BodyPoint point, double trueS) {
    return switch (point) {
      case LEAD_FOREARM -> (trueS - forearmOffsetS) / (1 + forearmSkewPpm * 1e-6);
      case LEAD_HAND -> (trueS - handOffsetS) / (1 + handSkewPpm * 1e-6);
      default -> trueS;
    };
  }

  Recording recording() {
    return new Recording(
        "sub-test",
        Player.unmeasured("test", Handedness.RIGHT),
        List.of(unit(BodyPoint.PELVIS), unit(BodyPoint.LEAD_FOREARM), unit(BodyPoint.LEAD_HAND)),
        List.of());
  }

  private UnitStream unit(BodyPoint point) {
    Random random = new Random(seed * 31 + point.trackedPoint().length());
    double phaseS = random.nextDouble() / rateHz;
    int n = (int) ((lengthS - 0.2) * rateHz);
    double[] timeS = new double[n];
    double[][] accel = new double[3][n];
    double[][] gyro = new double[3][n];
    double slope = unitTimeS(point, 1) - unitTimeS(point, 0);
    double startS = unitTimeS(point, 0.05 + phaseS);
    for (int i = 0; i < n; i++) {
      timeS[i] = startS + i / rateHz;
      double trueS = 0.05 + phaseS + i / rateHz / slope;
      double[] shock = shock(point, trueS);
      for (int axis = 0; axis < 3; axis++) {
        double value =
            (axis == 2 ? G : 0)
                + swing(point, trueS) * 40
                + shock[axis]
                + 0.05 * random.nextGaussian();
        accel[axis][i] = Math.max(-16 * G, Math.min(16 * G, value));
        gyro[axis][i] = 10 * turn(point, trueS, axis) + 0.003 * random.nextGaussian();
      }
    }
    return new UnitStream(
        new UnitFacts(point, "", rateHz, 16 * G, Math.toRadians(2000), false), timeS, accel, gyro);
  }

  /** A smooth burst that ends 0.4 s after the impact. */
  private double swing(BodyPoint point, double trueS) {
    double size = point == BodyPoint.PELVIS ? 0.2 : 1;
    return size * nearest(trueS, 0);
  }

  /** Rates: shared by the arm, with a wrist part of the hand's own that comes a little later. */
  private double turn(BodyPoint point, double trueS, int axis) {
    double[] direction = {0.48, 0.6, 0.64};
    double shared = nearest(trueS, 0) * direction[axis];
    return switch (point) {
      case PELVIS -> 0.4 * nearest(trueS, -0.08) * direction[axis];
      case LEAD_HAND -> shared + (axis == 0 ? 0.3 * nearest(trueS, 0.03) : 0);
      default -> shared;
    };
  }

  private double nearest(double trueS, double laterS) {
    double sum = 0;
    for (double impactS : impactsS) {
      double away = (trueS - impactS - laterS) / 0.15;
      sum += Math.abs(away) < 4 ? Math.exp(-away * away) : 0;
    }
    return sum;
  }

  private double[] shock(BodyPoint point, double trueS) {
    boolean isPelvis = point == BodyPoint.PELVIS;
    double[] out = new double[3];
    if (isPelvis ? !pelvisFeels : !armFeels) {
      return out;
    }
    double size = isPelvis ? 3 * G : point == BodyPoint.LEAD_HAND ? 60 * G : 40 * G;
    double riseS = isPelvis ? 0.002 : 0.0005;
    for (double impactS : impactsS) {
      double laterS = point == BodyPoint.LEAD_HAND ? handFeelsLaterS : isPelvis ? 0.001 : 0;
      double sinceS = trueS - impactS - laterS;
      if (sinceS > 0 && sinceS < 0.1) {
        double ring =
            size
                * Math.min(1, sinceS / riseS)
                * Math.exp(-sinceS / 0.008)
                * Math.cos(2 * Math.PI * 120 * Math.max(0, sinceS - riseS));
        out[0] += 0.8 * ring;
        out[1] -= 0.6 * ring;
      }
    }
    return out;
  }
}
