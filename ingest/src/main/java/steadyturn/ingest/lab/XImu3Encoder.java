package steadyturn.ingest.lab;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import steadyturn.ingest.sample.StandardGravity;
import steadyturn.ingest.sensor.frame.SlipFrames;
import steadyturn.ingest.sensor.maker.XImu3Adapter;

/** An x-IMU3: switched on it sends 50 text messages a second, until it is told otherwise. */
public final class XImu3Encoder implements UnitEncoder {

  private static final Pattern COMMAND = Pattern.compile("\\{\"([a-z_]+)\":([^}]*)\\}");

  private final String prefix;
  private final StringBuilder commands = new StringBuilder();
  private int divisor;
  private boolean isBinary;

  /**
   * A unit as it comes out of the factory.
   *
   * @param prefix how a multiplexer marks its messages; empty without one
   */
  public XImu3Encoder(String prefix) {
    this.prefix = prefix;
    powerOff();
  }

  @Override
  public void powerOff() {
    divisor = 8;
    isBinary = false;
  }

  @Override
  public double rateHz() {
    return 400.0 / divisor;
  }

  @Override
  public byte[] sample(long counter, long micros, double[] accelMps2, double[] gyroRadPerS) {
    double[] v = new double[6];
    for (int axis = 0; axis < 3; axis++) {
      v[axis] = Math.toDegrees(gyroRadPerS[axis]);
      v[3 + axis] = accelMps2[axis] / StandardGravity.MPS2;
    }
    byte[] message = isBinary ? binary(micros, v) : text(micros, v);
    return joined(prefix.getBytes(ISO_8859_1), message);
  }

  private static byte[] binary(long micros, double[] v) {
    ByteBuffer plain = ByteBuffer.allocate(33).order(ByteOrder.LITTLE_ENDIAN);
    plain.put((byte) 0xC9).putLong(micros);
    for (double value : v) {
      plain.putFloat((float) value);
    }
    return SlipFrames.stuffed(XImu3Adapter.MARKS, plain.array());
  }

  private static byte[] text(long micros, double[] v) {
    StringBuilder line = new StringBuilder("I," + micros);
    for (double value : v) {
      line.append(String.format(Locale.ROOT, ",%.4f", value));
    }
    return (line + "\n").getBytes(ISO_8859_1);
  }

  private static byte[] joined(byte[] first, byte[] second) {
    ByteArrayOutputStream both = new ByteArrayOutputStream();
    both.writeBytes(first);
    both.writeBytes(second);
    return both.toByteArray();
  }

  @Override
  public byte[] heard(byte[] bytes) {
    commands.append(new String(bytes, ISO_8859_1));
    StringBuilder answers = new StringBuilder();
    int end = commands.indexOf("\n");
    while (end >= 0) {
      String line = commands.substring(0, end);
      if (line.startsWith(prefix + "{")) {
        answers.append(prefix).append(answer(line.substring(prefix.length()))).append('\n');
      }
      commands.delete(0, end + 1);
      end = commands.indexOf("\n");
    }
    return answers.toString().getBytes(ISO_8859_1);
  }

  private String answer(String command) {
    Matcher parts = COMMAND.matcher(command);
    if (!parts.matches()) {
      return command;
    }
    switch (parts.group(1)) {
      case "inertial_message_rate_divisor" -> divisor = Integer.parseInt(parts.group(2));
      case "binary_mode_enabled" -> isBinary = Boolean.parseBoolean(parts.group(2));
      case "serial_number" -> {
        return "{\"serial_number\":\"0123ABCD\"}";
      }
      default -> {} // acknowledged all the same
    }
    return command;
  }
}
