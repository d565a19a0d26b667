package steadyturn.analysis.limits;

import java.util.List;
import steadyturn.ingest.reason.ReasonCode;

/** What was measured of a swing and no body does: the swing, the value, the least and the most. */
public enum SwingReason implements ReasonCode {
  WRIST_BENT,
  WRIST_FAST,
  HIPS_TURNED,
  HIPS_MOVED,
  HIPS_TILTED,
  HIPS_FAST,
  HIPS_OUT_OF_TIME,
  TEMPO;

  @Override
  public List<String> args() {
    return List.of("swing", "value", "least", "most");
  }
}
