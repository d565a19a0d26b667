package steadyturn.analysis.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.synthetic.LessonSimulator;
import steadyturn.analysis.synthetic.LessonSpec;
import steadyturn.analysis.synthetic.SwingTruth;
import steadyturn.analysis.synthetic.SyntheticLesson;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.strapdown.Bridge;
import steadyturn.fusion.strapdown.Strapdown;
import steadyturn.fusion.strapdown.StrapdownSamples;
import steadyturn.fusion.strapdown.UnitState;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/** What a bridge over lost samples is said to cost, against what it does cost. */
class GapChargeTest {

  private static final UnitState START = UnitState.start(Quaternion.IDENTITY, Vector3.ZERO, 0);

  /** Errors over spreads of turn, velocity and place: sums of squares, and how many. */
  private static final class Ratios {
    final double[] squares = new double[3];
    final double[] spreads = new double[3];
    final int[] beyondTwo = new int[3];
    int n;

    void add(int kind, Vector3 error, double sd) {
      for (int axis = 0; axis < 3; axis++) {
        double ratio = error.get(axis) / sd;
        squares[kind] += ratio * ratio;
        beyondTwo[kind] += Math.abs(ratio) > 2 ? 1 : 0;
      }
      spreads[kind] += sd;
    }

    double rms(int kind) {
      return Math.sqrt(squares[kind] / (3 * n));
    }
  }

  private static void one(UnitStream whole, Recording cut, double fromS, double toS, Ratios out) {
    StrapdownSamples gapped =
        StrapdownSamples.of(cut.unit(BodyPoint.PELVIS).orElseThrow().between(fromS, toS));
    if (gapped.bridges().isEmpty()) {
      return; // too slight to count
    }
    Bridge bridge =
        gapped.bridges().stream().max(Comparator.comparingDouble(Bridge::lengthS)).orElseThrow();
    StrapdownSamples all = StrapdownSamples.of(whole.between(fromS, toS));
    Strapdown truth = Strapdown.run(all, START.withJumps(all.bridges().size()), 0);
    Strapdown found = Strapdown.run(gapped, START.withJumps(gapped.bridges().size()), 0);
    int k = bridge.after();
    int t = truth.indexAt(found.timeS(k));
    out.n++;
    Vector3 turn = truth.qLevelUnit(t).times(found.qLevelUnit(k).conjugate()).rotationVector();
    out.add(0, turn, bridge.rotationSdRad());
    out.add(1, truth.velocityMps(t).minus(found.velocityMps(k)), bridge.velocitySdMps());
    out.add(2, truth.positionM(t).minus(found.positionM(k)), bridge.placeSdM());
  }

  @Test
  void scan() {
    SplittableRandom random = new SplittableRandom(11);
    for (double length : new double[] {0.03, 0.06, 0.1, 0.15, 0.2, 0.3, 0.5}) {
      Ratios still = new Ratios();
      Ratios moving = new Ratios();
      for (long seed = 1; seed <= 6; seed++) {
        SyntheticLesson lesson =
            LessonSimulator.simulate(
                LessonSpec.standard()
                    .withHits(2)
                    .withPractices(0)
                    .withWaggles(0)
                    .withWalking(false)
                    .withLossPct(0),
                seed);
        UnitStream whole = lesson.recording().unit(BodyPoint.PELVIS).orElseThrow();
        for (SwingTruth swing : lesson.truth().swings()) {
          double takeawayS = swing.eventS(SwingEvent.TAKEAWAY).orElseThrow();
          double impactS = swing.eventS(SwingEvent.IMPACT).orElseThrow();
          for (int i = 0; i < 6; i++) {
            boolean isStill = i < 2;
            double at =
                isStill
                    ? takeawayS - 0.1 - length / 2 - 0.3 * random.nextDouble()
                    : takeawayS + random.nextDouble() * (impactS - takeawayS + 0.3);
            Recording cut =
                Dropout.of(
                    lesson.recording(),
                    BodyPoint.PELVIS,
                    Dropout.Kind.LINES,
                    at - length / 2,
                    at + length / 2);
            one(whole, cut, takeawayS - 1.5, impactS + 2, isStill ? still : moving);
          }
        }
      }
      for (Ratios r : List.of(still, moving)) {
        System.out.printf(
            "%.3f s %s: error/spread turn %.2f velocity %.2f place %.2f; beyond 2: %.3f %.3f %.3f; mean spread %.2f deg %.3f m/s %.1f mm%n",
            length,
            r == still ? "still" : "moving",
            r.rms(0),
            r.rms(1),
            r.rms(2),
            r.beyondTwo[0] / (3.0 * r.n),
            r.beyondTwo[1] / (3.0 * r.n),
            r.beyondTwo[2] / (3.0 * r.n),
            Math.toDegrees(r.spreads[0] / (3 * r.n) * 3),
            r.spreads[1] / r.n,
            1e3 * r.spreads[2] / r.n);
      }
    }
    assertThat(random).isNotNull();
  }
}
