package steadyturn.ingest.sample;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Collectors;

/** Where on the player (or the club) a unit is worn. */
public enum BodyPoint {
  PELVIS("pelvis", "pelvis"),
  LEAD_FOREARM("lead_forearm", "leadForearm"),
  LEAD_HAND("lead_hand", "leadHand"),
  CLUB_SHAFT("club_shaft", "clubShaft"),
  THORAX("thorax", "thorax");

  private final String trackedPoint;
  private final String tracksysLabel;

  BodyPoint(String trackedPoint, String tracksysLabel) {
    this.trackedPoint = trackedPoint;
    this.tracksysLabel = tracksysLabel;
  }

  /** The word in the {@code tracked_point} column of a channels file. */
  public String trackedPoint() {
    return trackedPoint;
  }

  /** The letters-only label in a file name's {@code tracksys-} entity. */
  public String tracksysLabel() {
    return tracksysLabel;
  }

  /** Whether a unit there moves with the trunk, not with the arms. */
  public boolean isTrunk() {
    return this == PELVIS || this == THORAX;
  }

  /** All {@code tracked_point} words, as a message lists them. */
  public static String words() {
    return Arrays.stream(values()).map(BodyPoint::trackedPoint).collect(Collectors.joining(", "));
  }

  /** Finds the point by its {@code tracked_point} word, exactly as written. */
  public static Optional<BodyPoint> ofTrackedPoint(String word) {
    return Arrays.stream(values()).filter(p -> p.trackedPoint.equals(word)).findFirst();
  }
}
