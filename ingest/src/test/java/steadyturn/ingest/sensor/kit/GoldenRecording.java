package steadyturn.ingest.sensor.kit;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import steadyturn.ingest.sample.Offered;

/**
 * Bytes as they came from a unit in four known situations, each some seconds long.
 *
 * @param rateHz the rate the unit was set to
 * @param zUp lying still with its z axis up
 * @param xUp standing still with its x axis up
 * @param left lying still with z up, then turned on the table by a quarter turn to the left
 *     (anticlockwise seen from above), then still again
 * @param tumble still for a second, then turned slowly in the hand through all attitudes
 * @param isPosed whether these four are what they say; else they are one and the same capture,
 *     which proves nothing of axes and signs
 * @param samplesAFrame how many samples one frame carries
 * @param helloEveryS a unit that tells its ranges by a message of its own, and whose samples are
 *     left out before the first of them, sends it every so many seconds; 0 where samples are
 *     believed from the first
 */
@SuppressWarnings("ArrayRecordComponent") // bytes of a file, read only
@Offered
public record GoldenRecording(
    double rateHz,
    byte[] zUp,
    byte[] xUp,
    byte[] left,
    byte[] tumble,
    boolean isPosed,
    int samplesAFrame,
    double helloEveryS) {

  /** Captures of a unit whose samples are believed from the first. */
  public GoldenRecording(
      double rateHz,
      byte[] zUp,
      byte[] xUp,
      byte[] left,
      byte[] tumble,
      boolean isPosed,
      int samplesAFrame) {
    this(rateHz, zUp, xUp, left, tumble, isPosed, samplesAFrame, 0);
  }

  /** Four posed recordings of a unit that sends its samples one by one. */
  public GoldenRecording(double rateHz, byte[] zUp, byte[] xUp, byte[] left, byte[] tumble) {
    this(rateHz, zUp, xUp, left, tumble, true, 1);
  }

  /** One capture of a unit in whatever movement. */
  public static GoldenRecording ofCapture(double rateHz, byte[] bytes, int samplesAFrame) {
    return new GoldenRecording(rateHz, bytes, bytes, bytes, bytes, false, samplesAFrame);
  }

  /**
   * The same of a unit that tells its ranges by a message of its own: its samples are believed from
   * the first hello on, so that who joins midway lacks those before the next.
   *
   * @param everyS how often that message comes, s
   */
  public GoldenRecording believedFromHello(double everyS) {
    return new GoldenRecording(rateHz, zUp, xUp, left, tumble, isPosed, samplesAFrame, everyS);
  }

  /** So many samples may pass before the next hello. */
  int samplesUntilHello() {
    return (int) Math.ceil(helloEveryS * rateHz);
  }

  /** Reads z-up.bin, x-up.bin, left.bin and tumble.bin from a folder beside the test class. */
  public static GoldenRecording beside(Class<?> test, String folder, double rateHz) {
    return new GoldenRecording(
        rateHz,
        bytes(test, folder + "/z-up.bin"),
        bytes(test, folder + "/x-up.bin"),
        bytes(test, folder + "/left.bin"),
        bytes(test, folder + "/tumble.bin"));
  }

  /** Whether that folder holds captures. */
  public static boolean isBeside(Class<?> test, String folder) {
    return test.getResource(folder + "/z-up.bin") != null;
  }

  private static byte[] bytes(Class<?> test, String name) {
    try (InputStream in = test.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalArgumentException(
            "there is no " + name + " among the test resources beside " + test.getName());
      }
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
