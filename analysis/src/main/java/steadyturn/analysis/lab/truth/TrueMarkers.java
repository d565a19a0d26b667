package steadyturn.analysis.lab.truth;

import java.util.List;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.marker.MarkerTracks;

/**
 * What cameras would have seen of a simulated pelvis: four markers at 100 Hz in axes and on a clock
 * of the laboratory's own, with noise, each moving on its skin (all of it our assumption).
 */
public final class TrueMarkers {

  private static final double RATE_HZ = 100;
  private static final double NOISE_M = 0.0007;

  /** Skin shift of one marker for each rad that the pelvis has turned, m (1 SD). */
  private static final double SKIN_M_PER_RAD = 0.006;

  private static final double CLOCK_STARTS_S = 31.7;
  private static final double CLOCK_RATE = 1 + 35e-6;
  private static final double HALF_BACK_M = 0.045;

  private TrueMarkers() {}

  /**
   * The markers from time 0 of the recording's common axis on.
   *
   * @param fromS first instant, s
   * @param untilS last instant, s
   */
  public static MarkerTracks of(LessonTruth truth, double fromS, double untilS) {
    RandomGenerator random = new Well19937c(truth.seed() + 77);
    Vector3[] corners = corners(truth);
    Vector3[] skin = new Vector3[corners.length];
    for (int k = 0; k < skin.length; k++) {
      skin[k] = Vector3.each(axis -> SKIN_M_PER_RAD * random.nextGaussian());
    }
    double room = 2 * Math.PI * random.nextDouble();
    int frames = (int) Math.floor((untilS - fromS) * RATE_HZ);
    double[] timeS = new double[frames];
    double[][][] placesM = new double[corners.length][3][frames];
    for (int i = 0; i < frames; i++) {
      double t = fromS + i / RATE_HZ;
      timeS[i] = CLOCK_STARTS_S + CLOCK_RATE * i / RATE_HZ;
      Quaternion q = truth.path().qGroundPelvis(t);
      Vector3 midHip = truth.path().midHipM(t);
      double turnedRad = q.azimuthOfYRad();
      for (int k = 0; k < corners.length; k++) {
        Vector3 place = midHip.plus(q.rotate(corners[k].plus(skin[k].times(turnedRad))));
        double[] seen = {
          Math.cos(room) * place.x() - Math.sin(room) * place.y(),
          Math.sin(room) * place.x() + Math.cos(room) * place.y(),
          place.z()
        };
        for (int axis = 0; axis < 3; axis++) {
          placesM[k][axis][i] = seen[axis] + NOISE_M * random.nextGaussian();
        }
      }
    }
    return new MarkerTracks(List.of("RASI", "LASI", "RPSI", "LPSI"), timeS, placesM);
  }

  /** Harrington et al. 2007, from mid-hip; the back points a hand's breadth apart. */
  private static Vector3[] corners(LessonTruth truth) {
    double widthM = truth.pelvisWidthMm() / 1000;
    double depthM = truth.pelvisDepthMm() / 1000;
    double frontM = 0.24 * depthM + 0.0099;
    double upM = 0.30 * widthM + 0.0109;
    return new Vector3[] {
      new Vector3(frontM, -widthM / 2, upM),
      new Vector3(frontM, widthM / 2, upM),
      new Vector3(frontM - depthM, -HALF_BACK_M, upM),
      new Vector3(frontM - depthM, HALF_BACK_M, upM)
    };
  }
}
