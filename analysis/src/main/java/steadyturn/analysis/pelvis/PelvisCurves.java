package steadyturn.analysis.pelvis;

import java.util.ArrayList;
import java.util.List;
import steadyturn.analysis.measure.Curve;
import steadyturn.analysis.swing.EventTime;

/** The pose over the time of a swing, for plots, about 100 points a second. */
public final class PelvisCurves {

  private static final double STEP_S = 0.01;

  private PelvisCurves() {}

  /**
   * One curve a pose component.
   *
   * @param events the key positions of the swing, as far as they are known
   */
  public static List<Curve> of(PelvisTrack track, List<EventTime> events, SkinShift skin) {
    SkinCourse course = SkinCourse.of(skin, events);
    List<List<Double>> values = new ArrayList<>();
    List<List<Double>> spreads = new ArrayList<>();
    List<Double> times = new ArrayList<>();
    PelvisPose.MEASURES.forEach(
        c -> {
          values.add(new ArrayList<>());
          spreads.add(new ArrayList<>());
        });
    double next = track.timeS(0);
    for (int k = 0; k < track.size(); k++) {
      if (track.timeS(k) < next) {
        continue;
      }
      next = track.timeS(k) + STEP_S - 1e-4;
      times.add(track.timeS(k));
      PoseSpread spread = PoseSpread.at(track, k, course);
      double[] pose = spread.pose().toArray();
      for (int i = 0; i < pose.length; i++) {
        values.get(i).add(PelvisPose.outward(i, pose[i]));
        spreads.get(i).add(PelvisPose.outward(i, spread.sd(i)));
      }
    }
    List<Curve> out = new ArrayList<>();
    for (int i = 0; i < PelvisPose.MEASURES.size(); i++) {
      out.add(
          new Curve(
              PelvisPose.MEASURES.get(i).id(),
              PelvisPose.MEASURES.get(i).unit(),
              times,
              values.get(i),
              spreads.get(i)));
    }
    return out;
  }

  /** Radians to degrees, metres to millimetres. */
}
