package steadyturn.fusion.wear.wrist;

import steadyturn.fusion.attitude.AttitudeTrack;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.SkinSlip;

/**
 * A segment of the arm as its unit sees it: its attitude as a function of everything unknown of
 * that unit, with the derivative. What is unknown: the parameters of the track, how the unit sits
 * (in its spreads), how it slips on the skin until top, impact and finish, and how the arm hung in
 * the pose that showed its long axis.
 */
final class WornSegment {

  /** Small turns of the mounting, then of the slips until top, impact and finish. */
  private static final int MOUNT = 3;

  private static final double ADDRESS_S = 0.3;

  private final AttitudeTrack track;
  private final UnitMount mount;
  private final double hangSdRad;
  private final SkinSlip slip;
  private final PosedAxis axis;
  private final Places places;

  /**
   * Where the parameters of a segment begin among all of them.
   *
   * @param track those of the track
   * @param mount three of the mounting
   * @param slip three until the top; those until impact and finish follow {@code nextSlip} further
   * @param hang two of the hanging arm, which both segments share
   */
  record Places(int track, int mount, int slip, int nextSlip, int hang) {}

  WornSegment(
      AttitudeTrack track, UnitMount mount, double hangSdRad, SkinSlip slip, Places places) {
    this.track = track;
    this.mount = mount;
    this.hangSdRad = hangSdRad;
    this.slip = slip;
    this.axis = PosedAxis.of(mount, hangSdRad, track, slip.takeawayS() - ADDRESS_S);
    this.places = places;
  }

  /** Attitude at an instant, a turn in unit axes after sample k of the track. */
  Quaternion qLevelSegment(int k, Vector3 onUnitRad, double timeS, double[] z) {
    return Quaternion.fromRotationVector(track.turnRad(k, z, places.track))
        .times(track.qLevelUnit(k))
        .times(Quaternion.fromRotationVector(onUnitRad))
        .times(qUnitSegment(timeS, z));
  }

  /** How the unit sits at an instant. */
  Quaternion qUnitSegment(double timeS, double[] z) {
    return mount.qUnitSegment().times(Quaternion.fromRotationVector(wornRad(timeS, z)));
  }

  private Vector3 wornRad(double timeS, double[] z) {
    int m = places.mount;
    double own = axis.ownSdRad();
    double x = mount.axialSdRad() * z[m];
    double y = own * z[m + 1] + hangSdRad * z[places.hang];
    double across = own * z[m + 2] + hangSdRad * z[places.hang + 1];
    double[] parts = slip.parts(timeS);
    for (int part = 0; part < parts.length; part++) {
      int s = places.slip + places.nextSlip * part;
      double size = mount.slipSdRad() * parts[part];
      x += mount.axialSlipSdRad() * parts[part] * z[s];
      y += size * z[s + 1];
      across += size * z[s + 2];
    }
    return new Vector3(x, y, across).plus(axis.turn(z, places.track));
  }

  /**
   * Puts the derivative of a small turn of the segment along a direction, given in both frames,
   * into a row, and adds that of the hanging arm.
   */
  void putTurn(int k, double timeS, Vector3 alongLevel, Vector3 alongSegment, double[] row) {
    track.putTurn(k, alongLevel, row, places.track);
    axis.addTo(row, places.track, alongSegment);
    double own = axis.ownSdRad();
    row[places.mount] = mount.axialSdRad() * alongSegment.x();
    row[places.mount + 1] = own * alongSegment.y();
    row[places.mount + 2] = own * alongSegment.z();
    double[] parts = slip.parts(timeS);
    for (int part = 0; part < parts.length; part++) {
      for (int i = 0; i < MOUNT; i++) {
        double size = (i == 0 ? mount.axialSlipSdRad() : mount.slipSdRad()) * parts[part];
        row[places.slip + places.nextSlip * part + i] = size * alongSegment.get(i);
      }
    }
    row[places.hang] += hangSdRad * alongSegment.y();
    row[places.hang + 1] += hangSdRad * alongSegment.z();
  }
}
