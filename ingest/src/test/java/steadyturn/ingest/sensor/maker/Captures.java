package steadyturn.ingest.sensor.maker;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import steadyturn.ingest.columnmap.RealRecordings;

/** What real units sent, from the open recordings beside the project. */
final class Captures {

  private static final Pattern NOTIFICATION =
      Pattern.compile("\"hex\":\"([0-9a-f]+)\",\"t\":([0-9.]+)");

  private Captures() {}

  /** One notification of a Bluetooth unit: bytes and when they arrived. */
  @SuppressWarnings("ArrayRecordComponent") // read only
  record Block(byte[] bytes, double arrivedS) {}

  private static String text(String name) {
    try {
      return Files.readString(RealRecordings.file("units").resolve(name));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** 100 Hz, turned by hand (repo RGu0/WT901@9ccb834c, MIT). */
  static List<Block> wt901Blocks() {
    List<Block> blocks = new ArrayList<>();
    Matcher found = NOTIFICATION.matcher(text("wt901-100hz.jsonl"));
    while (found.find()) {
      blocks.add(
          new Block(HexFormat.of().parseHex(found.group(1)), Double.parseDouble(found.group(2))));
    }
    return blocks;
  }

  static byte[] wt901() {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    wt901Blocks().forEach(block -> all.writeBytes(block.bytes()));
    return all.toByteArray();
  }

  /** A logger's file (repo wadpac/GGIRread@45ef623c, Apache-2.0). */
  static byte[] ax6() {
    try {
      return Files.readAllBytes(RealRecordings.file("units").resolve("ax6_testfile.cwa"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Recorded messages with their decoded values (repo Scottapotamas/xsens-mti, Apache-2.0). */
  static String mti() {
    return text("mti-recorded-packets.md");
  }

  /** At rest, 50 Hz, in g and deg/s (repo xioTechnologies/x-IMU3-CSV@6bd638a, MIT). */
  static List<String> xImu3Lines() {
    return text("x-imu3-inertial-at-rest.csv").lines().skip(1).toList();
  }
}
