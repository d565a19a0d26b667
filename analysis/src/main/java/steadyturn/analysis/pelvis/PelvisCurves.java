package steadyturn.analysis.pelvis;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import steadyturn.analysis.measure.Curve;
import steadyturn.analysis.measure.Measure;
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
    List<Double> times = new ArrayList<>();
    List<PoseSpread> poses = new ArrayList<>();
    double next = track.timeS(0);
    for (int k = 0; k < track.size(); k++) {
      if (track.timeS(k) >= next) {
        next = track.timeS(k) + STEP_S - 1e-4;
        times.add(track.timeS(k));
        poses.add(PoseSpread.at(track, k, course));
      }
    }
    return IntStream.range(0, PelvisPose.SIZE).mapToObj(i -> curve(i, times, poses)).toList();
  }

  private static Curve curve(int component, List<Double> times, List<PoseSpread> poses) {
    Measure measure = PelvisPose.MEASURES.get(component);
    return new Curve(
        measure.id(),
        measure.unit(),
        times,
        poses.stream()
            .map(p -> PelvisPose.outward(component, p.pose().toArray()[component]))
            .toList(),
        poses.stream().map(p -> PelvisPose.outward(component, p.sd(component))).toList());
  }
}
