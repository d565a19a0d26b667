package steadyturn.analysis.limits;

import java.util.List;
import steadyturn.ingest.reason.ReasonCode;

/** What was measured of a swing and no body does: the swing, the value, the least and the most. */
public enum SwingReason implements ReasonCode {
  WRIST_BENT("Deg"),
  WRIST_FAST("DegPerS"),
  HIPS_TURNED("Deg"),
  HIPS_TURN_FAST("DegPerS"),
  HIPS_MOVED("Mm"),
  HIPS_TILTED("Deg"),
  HIPS_FAST("Mps"),
  HIPS_OUT_OF_TIME("Ms"),
  TEMPO_TIME("S"),
  TEMPO("Ratio");

  private final String unit;

  SwingReason(String unit) {
    this.unit = unit;
  }

  @Override
  public List<String> args() {
    return List.of("swing", "value" + unit, "least" + unit, "most" + unit);
  }
}
