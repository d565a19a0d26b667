package steadyturn.ingest.lab;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import steadyturn.ingest.sensor.TextLineAdapter;
import steadyturn.ingest.sensor.UnitHello;

/** Writes the text line that {@link TextLineAdapter} reads. */
public final class TextLineEncoder implements UnitEncoder {

  @Override
  public byte[] hello(UnitHello hello) {
    return line(
        String.format(
            Locale.ROOT,
            "hello,%s,%s,%.3f,%.4f,%.5f",
            word(hello.name()),
            word(hello.serialNumber()),
            hello.rateHz(),
            hello.accelFullScaleMps2(),
            hello.gyroFullScaleRadPerS()));
  }

  @Override
  public byte[] sample(long counter, long micros, double[] accelMps2, double[] gyroRadPerS) {
    return line(
        String.format(
            Locale.ROOT,
            "%d.%06d,%.4f,%.4f,%.4f,%.5f,%.5f,%.5f",
            micros / 1_000_000,
            micros % 1_000_000,
            accelMps2[0],
            accelMps2[1],
            accelMps2[2],
            gyroRadPerS[0],
            gyroRadPerS[1],
            gyroRadPerS[2]));
  }

  private static byte[] line(String body) {
    return (body + "*" + TextLineAdapter.check(body) + "\r\n")
        .getBytes(StandardCharsets.ISO_8859_1);
  }

  /** Names travel as letters, digits, hyphen and underscore. */
  private static String word(String text) {
    return text.replaceAll("[^0-9A-Za-z_-]", "-");
  }
}
