package steadyturn.analysis.coach;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.compare.LessonSwing;
import steadyturn.analysis.compare.SwingGroup;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Curve;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.swing.SwingEvent;

/** The mean motion of several swings, on an axis where 0 is takeaway, 75 the top, 100 impact. */
public final class MeanMotion {

  public static final double TAKEAWAY = 0;
  public static final double TOP = 75;
  public static final double IMPACT = 100;

  private final List<ModelCurve> curves;

  /** Of the swings whose hips are known all the way. */
  public MeanMotion(SwingGroup swings) {
    List<LessonSwing> seen =
        swings.swings().stream()
            .filter(s -> curve(s.swing(), Measure.PELVIS_TURN).isPresent())
            .filter(s -> curve(s.swing(), Measure.PELVIS_SLIDE).isPresent())
            .toList();
    curves = seen.isEmpty() ? List.of() : curves(new SwingGroup(swings.name(), seen));
  }

  private static List<ModelCurve> curves(SwingGroup group) {
    return ModelComparison.of(group, group, List.of()).curves();
  }

  public boolean has(Measure measure) {
    return curve(measure).isPresent();
  }

  private Optional<ModelCurve> curve(Measure measure) {
    return curves.stream().filter(c -> c.id().equals(measure.id())).findFirst();
  }

  /** Points of one measure over another, between two places. */
  public List<double[]> points(Measure x, Measure y, double from, double to) {
    List<double[]> out = new ArrayList<>();
    if (has(x) && has(y)) {
      ModelCurve cx = curve(x).orElseThrow();
      ModelCurve cy = curve(y).orElseThrow();
      for (int i = 0; i < cx.place().size(); i++) {
        double place = cx.place().get(i);
        double[] point = {cx.player().get(i), cy.player().get(i)};
        if (place >= from && place <= to && Double.isFinite(point[0] + point[1])) {
          out.add(point);
        }
      }
    }
    return out;
  }

  /**
   * The hips on their way: place on the axis, turn in deg, along and across in mm; the known ones.
   */
  public List<double[]> hips() {
    List<double[]> out = new ArrayList<>();
    Optional<ModelCurve> turn = curve(Measure.PELVIS_TURN);
    Optional<ModelCurve> along = curve(Measure.PELVIS_SLIDE);
    Optional<ModelCurve> across = curve(Measure.PELVIS_THRUST);
    if (turn.isPresent() && along.isPresent() && across.isPresent()) {
      for (int i = 0; i < turn.get().place().size(); i++) {
        double[] at = {
          turn.get().place().get(i),
          turn.get().player().get(i),
          along.get().player().get(i),
          across.get().player().get(i)
        };
        if (at[0] >= TAKEAWAY && at[0] <= IMPACT && Double.isFinite(at[1] + at[2] + at[3])) {
          out.add(at);
        }
      }
    }
    return out;
  }

  /** Points of one measure over another in one swing, from takeaway to impact. */
  public static List<double[]> points(SwingResult swing, Measure x, Measure y) {
    List<double[]> out = new ArrayList<>();
    Optional<Curve> cx = curve(swing, x);
    Optional<Curve> cy = curve(swing, y);
    double from = swing.timeS(SwingEvent.TAKEAWAY);
    double to = swing.timeS(SwingEvent.IMPACT);
    if (cx.isPresent() && cy.isPresent()) {
      for (int i = 0; i < cx.get().timeS().size(); i++) {
        double t = cx.get().timeS().get(i);
        if (t >= from && t <= to) {
          out.add(new double[] {cx.get().value().get(i), cy.get().value().get(i)});
        }
      }
    }
    return out;
  }

  public static Optional<Curve> curve(SwingResult swing, Measure measure) {
    return swing.curves().stream().filter(c -> c.id().equals(measure.id())).findFirst();
  }
}
