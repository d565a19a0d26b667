package steadyturn.fusion.attitude;

import java.util.EnumMap;
import java.util.Map;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/** The rest bias of every unit of a recording, found once. */
public record RestBiases(Map<BodyPoint, Vector3> byPoint) {

  /** One pass over each unit's columns. */
  public static RestBiases of(Recording recording) {
    Map<BodyPoint, Vector3> found = new EnumMap<>(BodyPoint.class);
    for (UnitStream unit : recording.units()) {
      found.put(unit.point(), RestBias.of(unit));
    }
    return new RestBiases(found);
  }

  /** Bias of the unit at a point, unit axes, rad/s; zero where there is no unit. */
  public Vector3 radPerS(BodyPoint point) {
    return byPoint.getOrDefault(point, Vector3.ZERO);
  }
}
