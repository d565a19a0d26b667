package steadyturn.analysis.rows;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import steadyturn.analysis.lesson.AimReason;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Curve;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.pelvis.PelvisPose;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.pelvis.LeverArm;
import steadyturn.ingest.marker.MarkerTracks;

/**
 * Points of the pelvis over a swing, in ground axes (x to the target, y left of it, z up; origin
 * mid-hip at address): mid-hip, both hip-joint centres and both front bony points. Where they lie
 * in the pelvis follows from its sizes (Harrington et al. 2007, as in {@link LeverArm}).
 */
public final class PelvisPoints {

  private static final List<String> NAMES =
      List.of("mid_hip", "hip_left", "hip_right", "front_left", "front_right");

  /** Turn, slide, thrust, lift, tilt, side tilt: the order of a pose. */
  private static final List<Measure> POSE = RowTable.curves().subList(0, PelvisPose.SIZE);

  private static final double RATE_HZ = 100;

  /** Between neighbours farther apart nothing is drawn, s. */
  private static final double LARGEST_STEP_S = 0.03;

  private PelvisPoints() {}

  /**
   * The points in even steps of 10 ms, by straight lines between the instants of the curves; not
   * seen in gaps; no instant where a part of the pose is withheld.
   */
  public static MarkerTracks of(LessonResult result, SwingResult swing) {
    List<Curve> pose = POSE.stream().flatMap(measure -> curve(swing, measure).stream()).toList();
    double[] timeS = pose.size() < PelvisPose.SIZE ? new double[0] : evenS(pose.get(0).timeS());
    List<Vector3> inPelvisM = inPelvisM(result);
    double openRad = openRad(result);
    int h = result.player().handed().sign();
    double[][][] placesM = new double[NAMES.size()][3][timeS.length];
    for (int i = 0; i < timeS.length; i++) {
      PelvisPose now = pose(pose, timeS[i]);
      Quaternion qGroundPelvis = now.qGroundPelvis(h, openRad);
      for (int k = 0; k < placesM.length; k++) {
        Vector3 place = now.midHipGroundM(h).plus(qGroundPelvis.rotate(inPelvisM.get(k)));
        placesM[k][0][i] = place.x();
        placesM[k][1][i] = place.y();
        placesM[k][2][i] = place.z();
      }
    }
    return new MarkerTracks(NAMES, timeS, placesM);
  }

  private static double[] evenS(List<Double> timeS) {
    double fromS = timeS.get(0);
    int steps = (int) Math.floor((timeS.get(timeS.size() - 1) - fromS) * RATE_HZ);
    return IntStream.rangeClosed(0, steps).mapToDouble(i -> fromS + i / RATE_HZ).toArray();
  }

  private static Optional<Curve> curve(SwingResult swing, Measure measure) {
    return swing.curves().stream().filter(curve -> curve.id().equals(measure.id())).findFirst();
  }

  private static PelvisPose pose(List<Curve> pose, double instantS) {
    List<Double> timeS = pose.get(0).timeS();
    int found = Collections.binarySearch(timeS, instantS);
    int after = found >= 0 ? Math.max(1, found) : Math.min(-found - 1, timeS.size() - 1);
    double stepS = timeS.get(after) - timeS.get(after - 1);
    double part = stepS > LARGEST_STEP_S ? Double.NaN : (instantS - timeS.get(after - 1)) / stepS;
    return PelvisPose.ofOutward(
        pose.stream()
            .map(Curve::value)
            .mapToDouble(v -> v.get(after - 1) + part * (v.get(after) - v.get(after - 1)))
            .toArray());
  }

  /** In pelvis axes from mid-hip, m. */
  private static List<Vector3> inPelvisM(LessonResult result) {
    double widthMm = LeverArm.pelvisWidthMm(result.player());
    double frontM = LeverArm.hipBehindFrontMm(LeverArm.pelvisDepthMm(result.player())) / 1000;
    double upM = LeverArm.hipBelowFrontMm(widthMm) / 1000;
    double hipM = LeverArm.hipHalfDistanceMm(widthMm) / 1000;
    double halfM = widthMm / 2000;
    return List.of(
        Vector3.ZERO,
        new Vector3(0, hipM, 0),
        new Vector3(0, -hipM, 0),
        new Vector3(frontM, halfM, upM),
        new Vector3(frontM, -halfM, upM));
  }

  /** How far the hips stood open to the target at address; square where no aim step tells. */
  private static double openRad(LessonResult result) {
    return result.notices().stream()
        .map(notice -> notice.reason())
        .filter(reason -> reason.code() == AimReason.SEEN)
        .flatMap(reason -> Stream.ofNullable(reason.args().get("openDeg")))
        .mapToDouble(open -> Math.toRadians(((Number) open).doubleValue()))
        .findFirst()
        .orElse(0);
  }
}
