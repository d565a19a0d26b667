package steadyturn.analysis.lesson;

import static steadyturn.analysis.measure.MeasureValue.Z95;

import java.util.List;
import java.util.Optional;
import steadyturn.analysis.lesson.TargetLine.Aim;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.Handedness;

/** What the aim step brought. */
final class AimNotice {

  private AimNotice() {}

  /**
   * The reason; none where no aim step was done.
   *
   * @param aims of all swings with a pelvis unit
   * @param isDone whether a good aim step is at hand
   */
  static Optional<Reason> of(List<Aim> aims, Handedness handed, boolean isDone) {
    List<Aim> known = aims.stream().filter(Aim::byStep).toList();
    if (!isDone || aims.isEmpty()) {
      return Optional.empty();
    }
    if (known.isEmpty()) {
      return Optional.of(Reason.of(AimReason.NOT_SEEN));
    }
    // hips that have turned towards the target since the step stand open to it
    double openDeg =
        -handed.sign()
            * Math.toDegrees(
                known.stream().mapToDouble(Aim::targetFromHipsRad).average().orElse(0));
    double sdDeg = Math.toDegrees(known.stream().mapToDouble(Aim::sdRad).average().orElse(0));
    double reach = Z95 * sdDeg;
    return Optional.of(Reason.of(AimReason.SEEN, openDeg, openDeg - reach, openDeg + reach));
  }
}
