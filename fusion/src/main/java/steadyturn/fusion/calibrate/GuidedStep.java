package steadyturn.fusion.calibrate;

import java.util.List;
import java.util.Optional;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.UnitStream;

/**
 * One step of a calibration while a person does it: looks at the newest samples again and again,
 * and says what was taken, what went wrong, and what is still missing. What it took is a list of
 * marks on the recording, from which the same errors are found as from a file.
 */
public interface GuidedStep {

  /** What to do, in a sentence or two. */
  String task();

  /** What is still to be done, in some words. */
  String missing();

  boolean isDone();

  /** Whether something is just going well and only needs time. */
  default boolean isUnderWay() {
    return false;
  }

  /** Samples before this instant are no longer looked at, s. */
  double neededFromS();

  /**
   * Looks at the samples so far.
   *
   * @param recent all samples since {@link #neededFromS}
   * @return what the person should hear, if anything
   */
  Optional<String> look(UnitStream recent);

  /** Samples were lost up to this instant: what is under way begins anew, what was taken stays. */
  void beginAnew(double fromS);

  /** The stretches taken, s on the unit's own time axis. */
  List<Mark> taken();
}
