package steadyturn.analysis.lab.mistake;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.random.RandomGenerator;
import steadyturn.fusion.attitude.RestBias;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/** Units that sit or slip elsewhere than said, and people who do something else than asked. */
final class WrongWear {

  /** Half of a pelvis across, from its middle to a belt on the side of the hip, m. */
  private static final double SIDE_M = 0.17;

  /** From the middle of the pelvis to the skin of the back, m. */
  private static final double BACK_M = 0.10;

  /** A strap gives way for so long (our choice), s. */
  private static final double SLIPS_S = 0.3;

  private WrongWear() {}

  /** The pelvis unit further round the body: turned about its x, which lies along the spine. */
  static Recording roundTheHip(Recording sound, double angleRad) {
    Quaternion qBackHip = Quaternion.aboutX(angleRad);
    Vector3 middle = new Vector3(0, 0, -BACK_M);
    double outM = BACK_M + (SIDE_M - BACK_M) * Math.pow(Math.sin(angleRad), 2);
    Vector3 place = middle.plus(qBackHip.rotate(new Vector3(0, 0, outM)));
    return WrongData.one(
        sound, BodyPoint.PELVIS, u -> turned(carried(u, place), qBackHip.conjugate()));
  }

  /**
   * Between two swings a unit comes to sit otherwise on the body, with least jerk; its gyroscope
   * shows that turn too, and keeps its bias.
   */
  static Recording slipped(Recording sound, BodyPoint point, Vector3 rotationRad) {
    double fromS = betweenSwingsS(sound);
    return WrongData.one(sound, point, u -> slipping(u, rotationRad, RestBias.of(u), fromS));
  }

  private static UnitStream slipping(
      UnitStream u, Vector3 rotationRad, Vector3 biasRadPerS, double fromS) {
    double[][] accel = copied(WrongUnit.accel(u));
    double[][] gyro = copied(WrongUnit.gyro(u));
    for (int i = u.indexAt(fromS); i < u.size(); i++) {
      int at = i;
      double x = Math.min(1, (u.timeS(i) - fromS) / SLIPS_S);
      double part = x * x * x * (10 - x * (15 - 6 * x));
      double perS = 30 * x * x * (1 - x) * (1 - x) / SLIPS_S;
      Quaternion qNewOld = Quaternion.fromRotationVector(rotationRad.times(part));
      Vector3 force = qNewOld.rotate(Vector3.each(axis -> u.accelMps2(axis, at)));
      Vector3 shown = Vector3.each(axis -> u.gyroRadPerS(axis, at));
      Vector3 rate = qNewOld.rotate(shown.minus(biasRadPerS)).plus(biasRadPerS);
      for (int axis = 0; axis < 3; axis++) {
        accel[axis][i] = force.get(axis);
        gyro[axis][i] = rate.get(axis) - perS * rotationRad.get(axis);
      }
    }
    return WrongUnit.columns(u, accel, gyro);
  }

  /** Midway between the middle two swings, s. */
  private static double betweenSwingsS(Recording sound) {
    double[] endsS =
        sound.marks().stream()
            .filter(m -> m.trialType().equals("hit") || m.trialType().equals("practice"))
            .mapToDouble(m -> (m.onsetS() + m.endS()) / 2)
            .sorted()
            .toArray();
    int half = endsS.length / 2;
    return (endsS[half - 1] + endsS[half]) / 2;
  }

  /** From between two swings on the same body seen in a mirror: a player of the other side. */
  static Recording otherSideLater(Recording sound) {
    return WrongData.later(
        sound, WrongData.each(sound, WrongWear::mirrored), betweenSwingsS(sound));
  }

  /** As the unit would show the body in a mirror: its gyroscope keeps its bias. */
  static UnitStream mirrored(UnitStream u) {
    double[][] a = WrongUnit.accel(u);
    double[][] g = WrongUnit.gyro(u);
    Vector3 bias = RestBias.of(u);
    a[1] = WrongUnit.times(a[1], -1);
    for (int axis = 0; axis < 3; axis += 2) {
      double twice = 2 * bias.get(axis);
      g[axis] = Arrays.stream(g[axis]).map(rate -> twice - rate).toArray();
    }
    return WrongUnit.columns(u, a, g);
  }

  /** Begun in the middle of the first hit, so that all before it is missing. */
  static Recording begunInASwing(Recording sound) {
    double fromS =
        sound.marks().stream()
            .filter(mark -> mark.trialType().equals("hit"))
            .mapToDouble(mark -> (mark.onsetS() + mark.endS()) / 2)
            .min()
            .orElse(0);
    List<Mark> marks = sound.marks().stream().filter(mark -> mark.onsetS() > fromS).toList();
    return new Recording(
        sound.id(),
        sound.player(),
        sound.units().stream().map(u -> u.between(fromS, Double.POSITIVE_INFINITY)).toList(),
        marks);
  }

  /** Each wear step noted while another one was done. */
  static Recording stepsMixed(Recording sound) {
    Map<String, String> as =
        Map.of(
            "bow", "turn-on-spot",
            "turn-on-spot", "bow",
            "quiet-stance", "cocking",
            "cocking", "neutral-wrist",
            "neutral-wrist", "bow");
    List<Mark> marks = new ArrayList<>();
    for (Mark m : sound.marks()) {
      String word = as.getOrDefault(m.trialType(), m.trialType());
      marks.add(new Mark(m.onsetS(), m.durationS(), word, m.club(), m.note()));
    }
    return sound.with(marks);
  }

  private static UnitStream turned(UnitStream u, Quaternion qNewOld) {
    return WrongUnit.columns(
        u, turned(WrongUnit.accel(u), qNewOld), turned(WrongUnit.gyro(u), qNewOld));
  }

  private static double[][] turned(double[][] columns, Quaternion qNewOld) {
    double[][] out = new double[3][columns[0].length];
    for (int i = 0; i < columns[0].length; i++) {
      int at = i;
      Vector3 now = qNewOld.rotate(Vector3.each(axis -> columns[axis][at]));
      out[0][i] = now.x();
      out[1][i] = now.y();
      out[2][i] = now.z();
    }
    return out;
  }

  /** What it would feel elsewhere on the same rigid body. */
  private static UnitStream carried(UnitStream u, Vector3 byM) {
    int reach = (int) Math.max(1, Math.round(0.01 * u.facts().nominalRateHz()));
    double[][] accel = copied(WrongUnit.accel(u));
    for (int i = reach; i + reach < u.size(); i++) {
      int from = i - reach;
      int at = i;
      int to = i + reach;
      Vector3 rate = Vector3.each(axis -> u.gyroRadPerS(axis, at));
      Vector3 change =
          Vector3.each(axis -> u.gyroRadPerS(axis, to) - u.gyroRadPerS(axis, from))
              .times(1 / (u.timeS(to) - u.timeS(from)));
      Vector3 more = change.cross(byM).plus(rate.cross(rate.cross(byM)));
      accel[0][i] += more.x();
      accel[1][i] += more.y();
      accel[2][i] += more.z();
    }
    return WrongUnit.columns(u, accel, WrongUnit.gyro(u));
  }

  /** A bias that grows as the unit warms up, to so much at the end. */
  static UnitStream warming(UnitStream u, RandomGenerator draw, double endRadPerS) {
    double[][] gyro = copied(WrongUnit.gyro(u));
    for (int axis = 0; axis < 3; axis++) {
      double most = endRadPerS * (2 * draw.nextDouble() - 1);
      for (int i = 0; i < u.size(); i++) {
        gyro[axis][i] += most * (1 - Math.exp(-2 * (u.timeS(i) - u.timeS(0)) / u.lengthS()));
      }
    }
    return WrongUnit.columns(u, WrongUnit.accel(u), gyro);
  }

  /** Now and then a sample comes twice, in place of the next one. */
  static UnitStream repeating(UnitStream u, RandomGenerator draw, double part) {
    double[][] accel = copied(WrongUnit.accel(u));
    double[][] gyro = copied(WrongUnit.gyro(u));
    for (int i = 1; i < u.size(); i++) {
      if (draw.nextDouble() < part) {
        for (int axis = 0; axis < 3; axis++) {
          accel[axis][i] = accel[axis][i - 1];
          gyro[axis][i] = gyro[axis][i - 1];
        }
      }
    }
    return WrongUnit.columns(u, accel, gyro);
  }

  /** The last sample first, under the old times. */
  static UnitStream backwards(UnitStream u) {
    double[][] accel = WrongUnit.accel(u);
    double[][] gyro = WrongUnit.gyro(u);
    for (int axis = 0; axis < 3; axis++) {
      accel[axis] = backwards(accel[axis]);
      gyro[axis] = backwards(gyro[axis]);
    }
    return WrongUnit.columns(u, accel, gyro);
  }

  private static double[][] copied(double[][] columns) {
    return Arrays.stream(columns).map(double[]::clone).toArray(double[][]::new);
  }

  private static double[] backwards(double[] column) {
    double[] out = new double[column.length];
    Arrays.setAll(out, i -> column[column.length - 1 - i]);
    return out;
  }
}
