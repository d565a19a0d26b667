package steadyturn.ingest.lab;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import steadyturn.ingest.sensor.UnitHello;
import steadyturn.ingest.sensor.frame.TextLineAdapter;

/** Writes the text line that {@link TextLineAdapter} reads. */
public final class TextLineEncoder implements UnitEncoder {

  @Override
  public byte[] hello(UnitHello hello) {
    return line(
        "hello,%s,%s,%.3f,%.4f,%.5f",
        word(hello.name()),
        word(hello.serialNumber()),
        hello.rateHz(),
        hello.accelFullScaleMps2(),
        hello.gyroFullScaleRadPerS());
  }

  @Override
  public byte[] sample(long counter, long micros, double[] accelMps2, double[] gyroRadPerS) {
    double[] a = accelMps2;
    double[] g = gyroRadPerS;
    return line(
        "%d.%06d,%.4f,%.4f,%.4f,%.5f,%.5f,%.5f",
        micros / 1_000_000, micros % 1_000_000, a[0], a[1], a[2], g[0], g[1], g[2]);
  }

  private static byte[] line(String format, Object... values) {
    String body = String.format(Locale.ROOT, format, values);
    return (body + "*" + TextLineAdapter.check(body) + "\r\n")
        .getBytes(StandardCharsets.ISO_8859_1);
  }

  /** Names travel as letters, digits, hyphen and underscore. */
  private static String word(String text) {
    return text.replaceAll("[^0-9A-Za-z_-]", "-");
  }
}
