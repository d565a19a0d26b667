package steadyturn.analysis.lab.family;

import java.util.Map;
import steadyturn.analysis.lab.body.WristAxes;
import steadyturn.ingest.sample.BodyPoint;

/** One drawn player with what is worn: all that is true of a lesson and constant in it. */
public record WornBody(
    Stance stance,
    Pelvis.Drawn pelvis,
    Map<BodyPoint, Mount> mounts,
    WristAxes wrist,
    Blow blow,
    Chip chip) {

  public WornBody {
    mounts = Map.copyOf(mounts);
  }

  /** How the unit of a body point is worn. */
  public Mount mount(BodyPoint point) {
    Mount mount = mounts.get(point);
    if (mount == null) {
      throw new IllegalArgumentException("no unit was drawn for " + point);
    }
    return mount;
  }
}
