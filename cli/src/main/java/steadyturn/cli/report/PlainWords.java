package steadyturn.cli.report;

import java.util.Locale;
import java.util.Map;
import steadyturn.analysis.measure.Measure;
import steadyturn.ingest.sample.BodyPoint;

/** The words a teacher reads for the words of the output contract. */
final class PlainWords {

  private static final Map<String, String> KEY_POSITIONS =
      Map.of(
          "lead-arm-level-back", "arm level back",
          "lead-arm-level-down", "arm level down",
          "lead-arm-level-through", "arm level through",
          "pelvis-turnaround", "pelvis turns round");

  private static final Map<String, String> FLAGS =
      Map.ofEntries(
          Map.entry("address-short", "the still address was short"),
          Map.entry(
              "address-not-still", "the player was not still at address; intervals are wider"),
          Map.entry("finish-not-held", "the finish was not held; intervals are wider"),
          Map.entry(
              "impact-virtual",
              "no shock; impact is where the arm is back at its address direction"),
          Map.entry("no-shock", "noted as a hit, but no shock was felt"),
          Map.entry("shock-in-practice", "noted as a practice swing, but a shock was felt"),
          Map.entry("arm-gap", "samples of the arm unit are missing in the swing; bridged"),
          Map.entry("pelvis-only", "found without an arm unit; top and impact are inferred"),
          Map.entry("gyro-repaired", "faster than a unit can show for a moment; rounded off"),
          Map.entry(
              "gyro-beyond-repair", "faster than a unit can show for too long; rest withheld"),
          Map.entry(
              "wrist-units-disagree",
              "forearm and hand unit disagree: one slips, or sits on the other arm"),
          Map.entry("wrist-from-shaft", "no hand unit; wrist read from forearm and club shaft"),
          Map.entry("hand-moves-on-shaft", "the hand unit slipped, or the club moved in the grip"),
          Map.entry("off-the-lesson", "does not fit what the other swings say about the unit"));

  private PlainWords() {}

  /** The name of a measure, without its unit. */
  static String of(Measure measure) {
    return switch (measure) {
      case PELVIS_TURN -> "turn";
      case PELVIS_SLIDE -> "slide";
      case PELVIS_THRUST -> "thrust to the ball";
      case PELVIS_LIFT -> "lift";
      case PELVIS_TILT -> "forward tilt";
      case PELVIS_SIDETILT -> "side tilt, lead hip up";
      case PELVIS_SLIDE_PER_TURN -> "slide per turn";
      case PELVIS_TURN_TO_SLIDE -> "turn to slide";
      case PELVIS_TURN_SHARE -> "share of turn";
      case PELVIS_CENTRE_ALONG -> "pivot along the target line";
      case PELVIS_CENTRE_ACROSS -> "pivot towards the ball";
      case PELVIS_CIRCLE -> "circle that holds the pelvis";
      case WRIST_COCK -> "wrist cock";
      case WRIST_COCK_MAX -> "largest wrist cock";
      case WRIST_FLEXION -> "wrist flexion";
      case WRIST_RELEASE -> "release before impact";
      case WRIST_RELEASE_PART -> "release, part of downswing";
      case WRIST_KEPT -> "cock kept";
      case WRIST_RATE -> "fastest uncocking";
      case WRIST_RATE_TIME -> "fastest uncocking, before impact";
      case ARM_PEAK -> "fastest arm, before impact";
      case TEMPO_BACK -> "backswing";
      case TEMPO_DOWN -> "downswing";
      case TEMPO_RATIO -> "backswing : downswing";
      case ORDER_PELVIS -> "fastest pelvis, before impact";
      case ORDER_THORAX -> "fastest chest, before impact";
      case ORDER_ARM -> "fastest lead arm, before impact";
      case ORDER_HAND -> "fastest hand, before impact";
    };
  }

  /** The unit as printed: nothing for a ratio. */
  static String unit(Measure measure) {
    return measure.unit().equals("1") ? "" : measure.unit();
  }

  /** The name of a key position from its word in the contract. */
  static String keyPosition(String word) {
    return KEY_POSITIONS.getOrDefault(word, word.replace('-', ' '));
  }

  /** Whether a flag has words of its own here. */
  static boolean knowsFlag(String word) {
    return FLAGS.containsKey(word);
  }

  /** A flag as a sentence part. */
  static String flag(String word) {
    return FLAGS.getOrDefault(word, word.replace('-', ' '));
  }

  /** A sentence of another room with the words for body points made plain. */
  static String sentence(String notice) {
    String plain = notice;
    for (BodyPoint point : BodyPoint.values()) {
      plain = plain.replace(point.trackedPoint(), bodyPoint(point));
    }
    return plain;
  }

  static String bodyPoint(BodyPoint point) {
    return point.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
