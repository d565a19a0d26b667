package steadyturn.fusion.wear.pelvis;

import java.util.List;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.Player;

/**
 * How the pelvis unit sits: six numbers with their joint covariance, sharpened step by step.
 *
 * @param qUnitPelvis turns pelvis axes (x forward, y left, z up the segment) into unit axes
 * @param leverArmUnitM mid-hip relative to the unit, unit axes, m
 * @param covariance 6 x 6: small turn of the pelvis axes about themselves (rad), then lever arm in
 *     unit axes (m)
 */
public record PelvisGeometry(Quaternion qUnitPelvis, Vector3 leverArmUnitM, double[][] covariance) {

  /** Forward tilt of a standing pelvis in its anatomical axes: 10 +- 5 deg (from memory). */
  static final double STANDING_TILT_RAD = Math.toRadians(10);

  private static final double STANDING_TILT_SD_RAD = Math.toRadians(5);

  /** It hangs to one side within this: our assumption, which the bodies for tuning ask for. */
  private static final double STANDING_SIDETILT_SD_RAD = Math.toRadians(1.4);

  /** A bow turns about the hip line within this (our assumption). */
  private static final double BOW_AXIS_SD_RAD = Math.toRadians(2.5);

  /**
   * How far a strapped unit is off its nominal mounting about forward, left and up (our
   * assumption); backs slope differently and a belt worn high leans by 20 deg, hence the wide
   * spread about left.
   */
  private static final Vector3 MOUNTING_SD_RAD =
      new Vector3(Math.toRadians(3.5), Math.toRadians(12), Math.toRadians(3.5));

  /** So many spreads off, a unit does not sit as drawn. */
  private static final double BEYOND = 3;

  /** Nominal mounting: unit x up the spine, unit z away from the skin, that is backwards. */
  public static PelvisGeometry nominal(LeverArm arm) {
    // columns: pelvis x, y, z in unit axes
    Quaternion qUnitPelvis = Quaternion.fromAxes(Vector3.Z.times(-1), Vector3.Y, Vector3.X);
    Vector3 armPelvisM = arm.midHipFromUnitPelvisM();
    DMatrixRMaj a = new DMatrixRMaj(6, 6);
    for (int i = 0; i < 3; i++) {
      a.set(i, i, MOUNTING_SD_RAD.get(i));
    }
    for (int column = 0; column < 3; column++) {
      Vector3 turned =
          qUnitPelvis
              .rotate(Vector3.axis(column).cross(armPelvisM))
              .times(MOUNTING_SD_RAD.get(column));
      Vector3 moved = qUnitPelvis.rotate(Vector3.axis(column)).times(arm.sdM().get(column));
      for (int row = 0; row < 3; row++) {
        a.set(3 + row, column, turned.get(row));
        a.set(3 + row, 3 + column, moved.get(row));
      }
    }
    DMatrixRMaj covariance = new DMatrixRMaj(6, 6);
    CommonOps_DDRM.multTransB(a, a, covariance);
    return new PelvisGeometry(qUnitPelvis, qUnitPelvis.rotate(armPelvisM), covariance.get2DData());
  }

  /**
   * Standing still and upright shows which way is up in the unit; the pelvis is then tilted forward
   * by 10 +- 5 deg.
   *
   * @param forceUnitMps2 mean specific force of the stance, unit axes
   * @param unitSdRad what the accelerometer's own bias turns that by, about each axis, rad (1 SD)
   */
  public PelvisGeometry afterQuietStance(Vector3 forceUnitMps2, double unitSdRad) {
    return afterStanding(forceUnitMps2, unitSdRad, STANDING_TILT_RAD, STANDING_TILT_SD_RAD);
  }

  /** The tilt step, beside what is known of standing people, in place of the quiet stance. */
  public PelvisGeometry afterTilt(TiltStep step, Player player) {
    double usual = 1 / (STANDING_TILT_SD_RAD * STANDING_TILT_SD_RAD);
    double seen = 1 / (step.rulerSdRad() * step.rulerSdRad());
    double tiltRad = (usual * STANDING_TILT_RAD + seen * step.tiltRad(player)) / (usual + seen);
    return afterStanding(
        step.forceUnitMps2(), step.unitSdRad(), tiltRad, 1 / Math.sqrt(usual + seen));
  }

  private PelvisGeometry afterStanding(
      Vector3 forceUnitMps2, double unitSdRad, double tilt, double tiltSdRad) {
    Vector3 upPelvis = new Vector3(-Math.sin(tilt), 0, Math.cos(tilt));
    Vector3 perTilt = new Vector3(-Math.cos(tilt), 0, -Math.sin(tilt)).times(tiltSdRad);
    Vector3 perSide = new Vector3(0, STANDING_SIDETILT_SD_RAD, 0);
    List<Vector3> spreads =
        List.of(
            perTilt,
            perSide,
            Vector3.X.times(unitSdRad),
            Vector3.Y.times(unitSdRad),
            Vector3.Z.times(unitSdRad));
    return afterDirection(forceUnitMps2.unit(), upPelvis, spreads);
  }

  /**
   * Bowing turns the pelvis about the hip line.
   *
   * @param axisUnit principal axis of the rate during the bow, unit axes, either sense
   */
  public PelvisGeometry afterBow(Vector3 axisUnit) {
    double sense = Math.signum(qUnitPelvis.conjugate().rotate(axisUnit).y());
    Vector3 left = axisUnit.unit().times(sense == 0 ? 1 : sense);
    return afterDirection(
        left,
        Vector3.Y,
        List.of(Vector3.X.times(BOW_AXIS_SD_RAD), Vector3.Z.times(BOW_AXIS_SD_RAD)));
  }

  /**
   * A direction known in pelvis axes (with spreads) was seen in unit axes. Three rounds, as turns
   * do not add up.
   */
  private PelvisGeometry afterDirection(
      Vector3 seenUnit, Vector3 knownPelvis, List<Vector3> spreads) {
    DMatrixRMaj noise = CommonOps_DDRM.identity(3);
    CommonOps_DDRM.scale(1e-6, noise);
    for (Vector3 s : spreads) {
      for (int i = 0; i < 3; i++) {
        for (int j = 0; j < 3; j++) {
          noise.add(i, j, s.get(i) * s.get(j));
        }
      }
    }
    double[][] prior = believed(seenUnit, knownPelvis, spreads);
    PelvisGeometry now = this;
    for (int round = 0; round < 3; round++) {
      DMatrixRMaj h = new DMatrixRMaj(3, 6);
      for (int column = 0; column < 3; column++) {
        Vector3 d = Vector3.axis(column).cross(knownPelvis);
        for (int row = 0; row < 3; row++) {
          h.set(row, column, d.get(row));
        }
      }
      Vector3 seenPelvis = now.qUnitPelvis.conjugate().rotate(seenUnit);
      // relinearised about the latest guess, always against the first prior
      Vector3 residual = seenPelvis.minus(knownPelvis).plus(turnSince(now).cross(knownPelvis));
      double[] off = {residual.x(), residual.y(), residual.z()};
      now = moved(Update.of(prior, h, noise, off));
    }
    return now;
  }

  /**
   * What was believed of the unit's place, for what it is worth beside what is seen: where that
   * lies beyond all spreads, as with a belt turned round the hip, the unit sits otherwise than
   * drawn, and its place is known no better than its direction was.
   */
  private double[][] believed(Vector3 seenUnit, Vector3 knownPelvis, List<Vector3> spreads) {
    Vector3 off = knownPelvis.cross(qUnitPelvis.conjugate().rotate(seenUnit));
    double square = off.dot(off);
    Vector3 along = off.cross(knownPelvis);
    double seenVariance = spreads.stream().mapToDouble(s -> s.dot(along) * s.dot(along)).sum();
    double ownVariance = 0;
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        ownVariance += off.get(i) * covariance[i][j] * off.get(j);
      }
    }
    // both times the square, as off is no unit vector
    if (square * square <= BEYOND * BEYOND * (ownVariance + seenVariance)) {
      return covariance;
    }
    DMatrixRMaj prior = new DMatrixRMaj(covariance);
    CommonOps_DDRM.scale(square * square / ownVariance, prior);
    return prior.get2DData();
  }

  private Vector3 turnSince(PelvisGeometry now) {
    return qUnitPelvis.conjugate().times(now.qUnitPelvis).rotationVector();
  }

  /** The geometry moved by one linear update of its six numbers. */
  PelvisGeometry moved(Update update) {
    double[] step = update.step();
    Quaternion qTurn = Quaternion.fromRotationVector(Vector3.of(step, 0));
    return new PelvisGeometry(
        qUnitPelvis.times(qTurn).normalized(),
        leverArmUnitM.plus(Vector3.of(step, 3)),
        update.covariance());
  }
}
