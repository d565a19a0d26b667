package steadyturn.analysis.measure;

import java.util.Arrays;
import java.util.Optional;

/** Every measure by its id and unit; definitions, signs and sources are in docs/measures.md. */
public enum Measure {
  PELVIS_TURN("pelvis.turn", "deg"),
  PELVIS_SLIDE("pelvis.slide", "mm"),
  PELVIS_THRUST("pelvis.thrust", "mm"),
  PELVIS_LIFT("pelvis.lift", "mm"),
  PELVIS_TILT("pelvis.tilt", "deg"),
  PELVIS_SIDETILT("pelvis.sidetilt", "deg"),
  PELVIS_SLIDE_PER_TURN("pelvis.slide-per-turn", "mm/deg"),
  PELVIS_TURN_TO_SLIDE("pelvis.turn-to-slide", "deg/cm"),
  PELVIS_TURN_SHARE("pelvis.turn-share", "%"),
  PELVIS_CENTRE_ALONG("pelvis.centre-along", "mm"),
  PELVIS_CENTRE_ACROSS("pelvis.centre-across", "mm"),
  PELVIS_CENTRE_DISTANCE("pelvis.centre-distance", "mm"),
  PELVIS_CIRCLE("pelvis.circle", "mm"),
  WRIST_COCK("wrist.cock", "deg"),
  WRIST_COCK_MAX("wrist.cock-max", "deg"),
  WRIST_FLEXION("wrist.flexion", "deg"),
  WRIST_RELEASE("wrist.release", "ms"),
  WRIST_RELEASE_PART("wrist.release-part", "%"),
  WRIST_KEPT("wrist.kept", "%"),
  WRIST_RATE("wrist.rate", "deg/s"),
  WRIST_RATE_TIME("wrist.rate-time", "ms"),
  ARM_PEAK("arm.peak", "ms"),
  TEMPO_BACK("tempo.back", "s"),
  TEMPO_DOWN("tempo.down", "s"),
  TEMPO_RATIO("tempo.ratio", "1"),
  ORDER_PELVIS("order.pelvis", "ms"),
  ORDER_THORAX("order.thorax", "ms"),
  ORDER_ARM("order.arm", "ms"),
  ORDER_HAND("order.hand", "ms");

  private final String id;
  private final String unit;

  Measure(String id, String unit) {
    this.id = id;
    this.unit = unit;
  }

  /** The measure of an id of the output contract. */
  public static Optional<Measure> ofId(String id) {
    return Arrays.stream(values()).filter(m -> m.id.equals(id)).findFirst();
  }

  /** The stable id of the output contract. */
  public String id() {
    return id;
  }

  /** The unit of value, low and high, as printed. */
  public String unit() {
    return unit;
  }
}
