package steadyturn.analysis.lesson;

import static steadyturn.analysis.measure.MeasureValue.Z95;

import java.util.List;
import java.util.Optional;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.words.Words;

/** Says in a sentence what the aim step brought. */
final class AimWords {

  private AimWords() {}

  /**
   * The sentence; none where no aim step was done.
   *
   * @param aims of all swings with a pelvis unit
   * @param isDone whether a good aim step is at hand
   */
  static Optional<String> of(List<Aim> aims, Handedness handed, boolean isDone) {
    List<Aim> known = aims.stream().filter(Aim::byStep).toList();
    if (!isDone || aims.isEmpty()) {
      return Optional.empty();
    }
    if (known.isEmpty()) {
      return Optional.of(Words.say("aim.not-seen"));
    }
    // hips that have turned towards the target since the step stand open to it
    double openDeg =
        -handed.sign()
            * Math.toDegrees(
                known.stream().mapToDouble(Aim::targetFromHipsRad).average().orElse(0));
    double sdDeg = Math.toDegrees(known.stream().mapToDouble(Aim::sdRad).average().orElse(0));
    double reach = Z95 * sdDeg;
    return Optional.of(
        Words.say(
            "aim.seen",
            Math.abs(openDeg),
            side(openDeg),
            Math.abs(openDeg - reach),
            side(openDeg - reach),
            Math.abs(openDeg + reach),
            side(openDeg + reach)));
  }

  private static String side(double openDeg) {
    return Words.say(openDeg >= 0 ? "aim.open" : "aim.closed");
  }
}
