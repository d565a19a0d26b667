package steadyturn.analysis.swing;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Supplier;
import steadyturn.ingest.reason.Reason;

/**
 * Keeps a programmer's mistake to the swing it meets: the part that failed is given up, the mistake
 * is noted, the others go on. Strict where assertions are on, as in tests: there the mistake is
 * thrown on, so that nobody overlooks it.
 */
public final class Faults {

  private final boolean isStrict;
  private final List<Fault> met = new CopyOnWriteArrayList<>();

  private record Fault(String recording, Reason reason) {}

  /** Strict ones throw what they meet. */
  Faults(boolean isStrict) {
    this.isStrict = isStrict;
  }

  /** Kept, or thrown on where assertions are on. */
  public static Faults usual() {
    return new Faults(Faults.class.desiredAssertionStatus());
  }

  /**
   * Does what belongs to one swing.
   *
   * @param recording id of the recording
   * @param atS where the swing is, s on the recording's common axis
   * @return its result, or nothing where it failed
   */
  public <T> Optional<T> keep(String recording, double atS, Supplier<T> part) {
    try {
      return Optional.of(part.get());
    } catch (RuntimeException | StackOverflowError mistake) {
      if (isStrict) {
        throw mistake;
      }
      met.add(
          new Fault(
              recording, Reason.of(FaultReason.SWING, atS, mistake.toString(), place(mistake))));
      return Optional.empty();
    }
  }

  /** The program's own line nearest to the mistake. */
  private static String place(Throwable mistake) {
    for (StackTraceElement line : mistake.getStackTrace()) {
      if (line.getClassName().startsWith("steadyturn.")) {
        return line.toString();
      }
    }
    return "";
  }

  /** What was met in a recording. */
  public List<Reason> of(String recording) {
    return met.stream().filter(f -> f.recording.equals(recording)).map(Fault::reason).toList();
  }
}
