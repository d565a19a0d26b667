package steadyturn.ingest.recording;

import java.util.Locale;
import java.util.Optional;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;

/**
 * What others call our body points, only where there is one possible reading. Left and right turn
 * into lead once the player's side is known. Words such as hip, back, wrist or sternum stay out: a
 * unit there may sit on another segment or another side of it than ours.
 */
final class PointWords {

  private PointWords() {}

  static Optional<BodyPoint> pointOf(String word, Handedness handed) {
    Optional<BodyPoint> ours = BodyPoint.ofTrackedPoint(word);
    return ours.isPresent() ? ours : ofOthers(word, handed);
  }

  /** As {@link #pointOf} where the player's side is not known: left and right stay unknown. */
  static Optional<BodyPoint> pointOf(String word) {
    Optional<BodyPoint> ours = BodyPoint.ofTrackedPoint(word);
    return ours.isPresent() ? ours : ofTrunk(plain(word));
  }

  private static Optional<BodyPoint> ofOthers(String word, Handedness handed) {
    String plain = plain(word);
    String side = handed == Handedness.RIGHT ? "left" : "right";
    if (plain.equals(side + "forearm") || plain.equals("forearm" + side)) {
      return Optional.of(BodyPoint.LEAD_FOREARM);
    }
    if (plain.equals(side + "hand") || plain.equals("hand" + side)) {
      return Optional.of(BodyPoint.LEAD_HAND);
    }
    return ofTrunk(plain);
  }

  private static Optional<BodyPoint> ofTrunk(String plain) {
    return switch (plain) {
      case "pelvis", "sacrum" -> Optional.of(BodyPoint.PELVIS);
      case "thorax" -> Optional.of(BodyPoint.THORAX);
      case "leadforearm" -> Optional.of(BodyPoint.LEAD_FOREARM);
      case "leadhand" -> Optional.of(BodyPoint.LEAD_HAND);
      case "clubshaft" -> Optional.of(BodyPoint.CLUB_SHAFT);
      default -> Optional.empty();
    };
  }

  private static String plain(String word) {
    return word.toLowerCase(Locale.ROOT).replaceAll("[\\s_-]", "");
  }
}
