package steadyturn.ingest.recording.disk;

/** The version of the program, for whatever says what made it. */
public final class ProgramVersion {

  private static final String CURRENT = Shipped.text(ProgramVersion.class, "version.txt").strip();

  private ProgramVersion() {}

  /** Such as {@code 0.1.0-SNAPSHOT}; set by the build. */
  public static String current() {
    return CURRENT;
  }
}
