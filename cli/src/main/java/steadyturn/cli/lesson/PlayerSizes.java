package steadyturn.cli.lesson;

import java.util.Optional;
import java.util.OptionalDouble;
import picocli.CommandLine.Option;
import steadyturn.cli.terminal.Console;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;

/** The options that tell the size of a player, mm. */
public final class PlayerSizes {

  @Option(names = "--pelvis-width", paramLabel = "MM")
  private Optional<Double> widthMm = Optional.empty();

  @Option(names = "--pelvis-depth", paramLabel = "MM")
  private Optional<Double> depthMm = Optional.empty();

  @Option(names = "--worn-depth", paramLabel = "MM")
  private Optional<Double> wornMm = Optional.empty();

  @Option(names = "--stature", paramLabel = "MM")
  private Optional<Double> statureMm = Optional.empty();

  /** A player of these sizes; none may be 0 or below. */
  public Player of(String id, Handedness handed, Console console) {
    return new Player(
        id,
        handed,
        given(widthMm, console),
        given(depthMm, console),
        given(statureMm, console),
        given(wornMm, console));
  }

  /** Whether a size was given that is not the one an archive knows. */
  public boolean isOtherThan(Player known) {
    return isOther(widthMm, known.pelvisWidthMm())
        || isOther(depthMm, known.pelvisDepthMm())
        || isOther(wornMm, known.wornDepthMm())
        || isOther(statureMm, known.statureMm());
  }

  private static boolean isOther(Optional<Double> givenMm, OptionalDouble knownMm) {
    return givenMm.filter(mm -> knownMm.isEmpty() || mm != knownMm.getAsDouble()).isPresent();
  }

  private static OptionalDouble given(Optional<Double> mm, Console console) {
    if (mm.isPresent() && !(mm.get() > 0)) {
      throw console.wrongUsage("a size is above 0 mm, was " + mm.get());
    }
    return mm.stream().mapToDouble(size -> size).findFirst();
  }
}
