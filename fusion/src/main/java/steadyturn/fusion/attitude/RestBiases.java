package steadyturn.fusion.attitude;

import java.util.Map;
import java.util.stream.Collectors;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/** The rest bias of every unit of a recording, found once. */
public record RestBiases(Map<BodyPoint, Vector3> byPoint) {

  /** One pass over each unit's columns. */
  public static RestBiases of(Recording recording) {
    return new RestBiases(
        recording.units().parallelStream()
            .collect(Collectors.toMap(UnitStream::point, RestBias::of)));
  }

  /** Bias of the unit at a point, unit axes, rad/s; zero where there is no unit. */
  public Vector3 radPerS(BodyPoint point) {
    return byPoint.getOrDefault(point, Vector3.ZERO);
  }
}
