package steadyturn.analysis.camera;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.IntFunction;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * A lesson whose swings are those that cameras saw: made units of 200 Hz, strapped with errors,
 * feel the real way of pelvis and forearm; wear steps, wrist, sway and blow are made. It shares no
 * code with the simulator of the program, nor its sizes but where a source names them.
 */
final class CameraLesson {

  private static final double G_MPS2 = 9.80665; // CGPM 1901
  private static final int EVERY_MS = 5;
  private static final double WIDTH_MM = 208; // half of the hips' distance is 76 mm in the data
  private static final double DEPTH_MM = 140;

  /** True values of one swing; times in s on the recording's axis. */
  record Truth(
      double takeawayS,
      double topS,
      double impactS,
      double[] turnDeg,
      double[] slideMm,
      double[] thrustMm,
      double[] cockDeg) {}

  final List<Truth> truth = new ArrayList<>();
  private final Random random;
  private final List<Mark> marks = new ArrayList<>();
  private final List<Integer> blows = new ArrayList<>();
  private final Track pelvis;
  private final Track forearm;
  private final Track hand;
  private final boolean isHeld;

  /** Where the player stands and the arm hangs. */
  private static final double[] HIP = {0, 0, 0.93};

  private static final double[] WRIST = {0.2, 0.02, 0.85};
  private static final double[] STANDS = Turn.ofAxes(v(0, -1, 0), v(1, 0, 0));
  private static final double[] HANGS = Turn.ofAxes(v(0, 0, -1), v(1, 0, 0));

  /**
   * Makes a lesson.
   *
   * @param isHeld whether address and finish are held, or left as the cameras saw them
   */
  CameraLesson(List<CameraSwing> swings, boolean isHeld, long seed) {
    this.isHeld = isHeld;
    random = new Random(seed);
    pelvis = new Track(v(0, 0, 0.7), Turn.by(0.01, -1.55, 0));
    forearm = new Track(WRIST, Turn.by(1.57, 0, 0));
    hand = new Track(v(0.3, 0, 0.85), Turn.by(1.58, 0, 0));
    wear();
    swings.forEach(this::swing);
  }

  private static double[] v(double x, double y, double z) {
    return new double[] {x, y, z};
  }

  private double[] off(double deg) {
    double rad = Math.toRadians(deg);
    return Turn.by(
        rad * random.nextGaussian(), rad * random.nextGaussian(), rad * random.nextGaussian());
  }

  private void hold(int ms) {
    pelvis.hold(ms);
    forearm.hold(ms);
    hand.hold(ms);
  }

  private void mark(int fromMs, int toMs, String word) {
    marks.add(new Mark(fromMs * 1e-3, (toMs - fromMs) * 1e-3, word, "", ""));
  }

  private void stand(int ms, double[] arm, double[] wrist) {
    pelvis.to(ms, HIP, STANDS);
    forearm.to(ms, WRIST, arm);
    hand.to(ms, WRIST, wrist);
  }

  private void wear() {
    hold(2800);
    mark(500, 2600, "table-rest");
    stand(3000, HANGS, HANGS);
    hold(3800);
    mark(pelvis.size() - 2600, pelvis.size() - 100, "quiet-stance");
    int from = pelvis.size();
    double[] bent = Turn.times(STANDS, Turn.by(0.02, Math.toRadians(35), -0.02));
    for (int i = 0; i < 2; i++) {
      pelvis.to(1300, v(0, 0.1, 0.90), bent);
      pelvis.to(1300, HIP, STANDS);
    }
    forearm.hold(5200);
    hand.hold(5200);
    mark(from - 100, from + 5300, "bow");
    hold(300);
    double[] arm = Turn.times(HANGS, off(1.5));
    stand(600, arm, Turn.times(arm, off(2)));
    hold(2500);
    mark(pelvis.size() - 2400, pelvis.size() - 100, "neutral-wrist");
    from = pelvis.size();
    for (int deg : new int[] {20, -20, 20, -20, 20, 0}) {
      forearm.hold(700);
      pelvis.hold(700);
      hand.to(700, WRIST, Turn.times(arm, Turn.by(0, -Math.toRadians(deg), 0.01)));
    }
    mark(from - 100, pelvis.size() + 200, "cocking");
    hold(600);
  }

  private void swing(CameraSwing s) {
    int n = s.hipM().length;
    // where it is not held it stops for a moment between this movement and the next
    int from = isHeld ? s.takeaway() - 310 : 0;
    int until = isHeld ? Math.min(n - 400, s.impact() + 650) : n - 350;
    double[] ramp = new double[n];
    for (int i = 0; i < n; i++) {
      double in = Track.soft((i - from) / (isHeld ? 250.0 : 300));
      ramp[i] = in * (1 - Track.soft((i - until) / (isHeld ? 400.0 : 350)));
    }
    double[][] hip = along(s.hipM(), ramp, s.takeaway());
    double[][] wrist = along(s.wristM(), ramp, s.takeaway());
    double[][] qp = turning(s.qPelvis(), ramp, s.takeaway());
    double[][] qf = turning(s.qForearm(), ramp, s.takeaway());
    double plateauDeg = 65 + 30 * random.nextDouble();
    double lateMs = 50 + 60 * random.nextDouble();
    double[] cockDeg = new double[n];
    double[][] qh = new double[n][];
    for (int i = 0; i < n; i++) {
      double up = Track.soft((i - s.takeaway() - 150.0) / (s.top() - s.takeaway() - 100.0));
      double down = Track.soft((i - s.impact() + lateMs + 50) / (lateMs + 80));
      cockDeg[i] = 20 + (plateauDeg - 20) * up - (plateauDeg - 25) * down;
      qh[i] = Turn.times(qf[i], Turn.by(0, -Math.toRadians(cockDeg[i]), 0.05));
    }
    pelvis.to(2500, hip[0], qp[0]);
    forearm.to(2500, wrist[0], qf[0]);
    hand.to(2500, wrist[0], qh[0]);
    hold(isHeld ? 1500 : 1);
    int at = pelvis.size();
    for (int i = 0; i < n; i++) {
      pelvis.placeM.add(hip[i]);
      pelvis.turn.add(qp[i]);
      forearm.placeM.add(wrist[i]);
      forearm.turn.add(qf[i]);
      hand.placeM.add(wrist[i]);
      hand.turn.add(qh[i]);
    }
    hold(isHeld ? 900 : 1);
    blows.add(at + s.impact());
    marks.add(new Mark((at + s.takeaway() - 300) * 1e-3, 2.2, "hit", "7-iron", ""));
    truth.add(truth(s, at, hip, qp, cockDeg));
    stand(2500, HANGS, HANGS);
    hold(800);
  }

  private static Truth truth(
      CameraSwing s, int at, double[][] hip, double[][] qp, double[] cockDeg) {
    double azimuth = 0;
    double[] place = new double[3];
    for (int i = s.takeaway() - 250; i < s.takeaway() - 30; i++) {
      azimuth += azimuth(qp[i]) / 220;
      for (int axis = 0; axis < 3; axis++) {
        place[axis] += hip[i][axis] / 220;
      }
    }
    int[] when = {s.top(), s.impact()};
    double[][] out = new double[4][2];
    for (int k = 0; k < 2; k++) {
      double x = hip[when[k]][0] - place[0];
      double y = hip[when[k]][1] - place[1];
      out[0][k] = Math.toDegrees(azimuth(qp[when[k]]) - azimuth);
      out[1][k] = 1000 * (Math.cos(azimuth) * x + Math.sin(azimuth) * y);
      out[2][k] = -1000 * (Math.cos(azimuth) * y - Math.sin(azimuth) * x);
      out[3][k] = cockDeg[when[k]];
    }
    return new Truth(
        (at + s.takeaway()) * 1e-3,
        (at + s.top()) * 1e-3,
        (at + s.impact()) * 1e-3,
        out[0],
        out[1],
        out[2],
        out[3]);
  }

  /** Of the hip line: the left hip is the one nearer to the target. */
  private static double azimuth(double[] qPelvis) {
    double[] left = Turn.apply(qPelvis, v(0, 1, 0));
    return Math.atan2(left[1], left[0]);
  }

  /** A way whose speed is taken down where it is not to move; it keeps the place at one moment. */
  private static double[][] along(double[][] p, double[] ramp, int kept) {
    double[][] out = new double[p.length][3];
    for (int axis = 0; axis < 3; axis++) {
      for (int i = 1; i < p.length; i++) {
        double step = p[i][axis] - p[i - 1][axis];
        out[i][axis] = out[i - 1][axis] + step * (ramp[i] + ramp[i - 1]) / 2;
      }
      double shift = p[kept][axis] - out[kept][axis];
      for (double[] one : out) {
        one[axis] += shift;
      }
    }
    return out;
  }

  private static double[][] turning(double[][] q, double[] ramp, int kept) {
    double[][] out = new double[q.length][];
    out[0] = Turn.NONE;
    for (int i = 1; i < q.length; i++) {
      double[] step = Turn.vector(Turn.times(Turn.back(q[i - 1]), q[i]));
      double part = (ramp[i] + ramp[i - 1]) / 2;
      out[i] =
          Turn.unit(
              Turn.times(out[i - 1], Turn.by(part * step[0], part * step[1], part * step[2])));
    }
    double[] before = Turn.times(q[kept], Turn.back(out[kept]));
    for (int i = 0; i < q.length; i++) {
      out[i] = Turn.times(before, out[i]);
    }
    return out;
  }

  Recording recording() {
    // Harrington et al. 2007, J Biomech 40:595-602, and 15 mm of skin and case; the pelvis tilts
    // forward by 10 deg as it stands; a few mm and degrees off as people are
    double[] lever = {
      -(0.76 * DEPTH_MM - 9.9 + 15) / 1000 + 0.006 * random.nextGaussian(),
      0.004 * random.nextGaussian(),
      (0.30 * WIDTH_MM + 10.9) / 1000 + 0.006 * random.nextGaussian()
    };
    double tilt = Math.toRadians(10 + 4 * random.nextGaussian());
    double[] onBack = Turn.times(Turn.ofAxes(v(0, 0, 1), v(0, 1, 0)), off(4));
    double[] onArm = Turn.ofAxes(v(1, 0, 0), v(0, 0, -1));
    List<UnitStream> units =
        List.of(
            unit(BodyPoint.PELVIS, pelvis, Turn.apply(Turn.by(0, tilt, 0), lever), onBack, 0.9, 2),
            unit(
                BodyPoint.LEAD_FOREARM,
                forearm,
                v(-0.04, 0.03, 0),
                Turn.times(onArm, off(4)),
                18,
                0),
            unit(BodyPoint.LEAD_HAND, hand, v(0.05, 0.03, 0), Turn.times(onArm, off(4)), 55, 0));
    marks.sort(Comparator.comparingDouble(Mark::onsetS));
    Player player =
        new Player(
            "camera",
            Handedness.RIGHT,
            OptionalDouble.of(WIDTH_MM),
            OptionalDouble.of(DEPTH_MM),
            OptionalDouble.empty());
    return new Recording("camera", player, units, marks);
  }

  /** What a unit on a segment shows: 4 mg and 0.3 deg/s of bias, noise, a tenth of a percent. */
  private UnitStream unit(
      BodyPoint point, Track track, double[] armM, double[] mount, double blowG, int lateMs) {
    int n = track.size();
    double[] phase = random.doubles(12, 0, 2 * Math.PI).toArray();
    IntFunction<double[]> turn =
        i -> {
          double deg = i > 6000 ? 0.1 : 0;
          return Turn.times(
              Turn.times(
                  track.turn.get(i),
                  Turn.by(
                      Math.toRadians(deg) * sway(phase, 0, i),
                      Math.toRadians(deg) * sway(phase, 2, i),
                      Math.toRadians(deg) * sway(phase, 4, i))),
              mount);
        };
    double[][] q = new double[n][];
    double[][] p = new double[n][3];
    for (int i = 0; i < n; i++) {
      q[i] = turn.apply(i);
      double[] arm = Turn.apply(track.turn.get(i), armM);
      double size = i > 6000 ? 0.0025 : 0;
      for (int axis = 0; axis < 3; axis++) {
        double sways = (axis == 2 ? 0.3 : 1) * size * sway(phase, 6 + 2 * axis, i);
        p[i][axis] = track.placeM.get(i)[axis] + arm[axis] + sways;
      }
    }
    double[] hit = {random.nextGaussian(), random.nextGaussian(), random.nextGaussian()};
    double norm = Math.sqrt(hit[0] * hit[0] + hit[1] * hit[1] + hit[2] * hit[2]);
    double[][] columns = new double[6][(n - 10) / EVERY_MS];
    double[] timeS = new double[columns[0].length];
    double[] bias = random.doubles(6, -1.7, 1.7).toArray();
    for (int k = 0; k < timeS.length; k++) {
      int i = 5 + k * EVERY_MS;
      timeS[k] = i * 1e-3;
      double[] force = new double[3];
      for (int axis = 0; axis < 3; axis++) {
        // the mean of five milliseconds, as a chip's filter takes
        force[axis] =
            (p[i + 3][axis] - p[i + 2][axis] - p[i - 2][axis] + p[i - 3][axis]) * 1e6 / 5
                + (axis == 2 ? G_MPS2 : 0);
        for (int blow : blows) {
          double ms = i - blow - lateMs;
          force[axis] +=
              ms < 0
                  ? 0
                  : blowG
                      * G_MPS2
                      * hit[axis]
                      / norm
                      * Math.sin(2 * Math.PI * 0.11 * ms)
                      * Math.exp(-ms / 6);
        }
      }
      double[] shown = Turn.apply(Turn.back(q[i]), force);
      double[] rate = Turn.vector(Turn.times(Turn.back(q[i - 2]), q[i + 2]));
      for (int axis = 0; axis < 3; axis++) {
        columns[axis][k] = 1.001 * shown[axis] + 0.023 * bias[axis] + 0.018 * random.nextGaussian();
        columns[3 + axis][k] =
            0.999 * rate[axis] / 0.004
                + Math.toRadians(0.3) * bias[3 + axis]
                + Math.toRadians(0.07) * random.nextGaussian();
      }
    }
    return new UnitStream(
        UnitFacts.plain(point, 200).asCalibrated(),
        timeS,
        new double[][] {columns[0], columns[1], columns[2]},
        new double[][] {columns[3], columns[4], columns[5]});
  }

  /** Two slow waves, as a standing person sways: 0.3 and 0.8 Hz. */
  private static double sway(double[] phase, int from, int ms) {
    return Math.sin(2 * Math.PI * 0.0003 * ms + phase[from])
        + 0.4 * Math.sin(2 * Math.PI * 0.0008 * ms + phase[from + 1]);
  }
}
