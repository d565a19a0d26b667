package steadyturn.ingest.serial;

import com.fazecast.jSerialComm.SerialPort;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/** The serial ports that the host knows of. */
public final class Ports {

  private Ports() {}

  /**
   * A port.
   *
   * @param path by which it is opened
   * @param says what its driver says of it
   */
  public record Port(String path, String says) {}

  /** All ports, by path. Virtual ones (pseudo-terminals) are not among them; open those by path. */
  public static List<Port> all() {
    return Arrays.stream(SerialPort.getCommPorts())
        .map(p -> new Port(p.getSystemPortPath(), p.getDescriptivePortName()))
        .sorted(Comparator.comparing(Port::path))
        .toList();
  }
}
