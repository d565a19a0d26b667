package steadyturn.analysis.lab.body;

import steadyturn.fusion.rotation.Quaternion;

/** Where a player's wrist axes lie: turns of the square axes into the real ones. */
public record WristAxes(Quaternion qFlexion, Quaternion qCock) {

  /** Square to each other and to the bones. */
  public static final WristAxes SQUARE = new WristAxes(Quaternion.IDENTITY, Quaternion.IDENTITY);
}
