package steadyturn.ingest.serial;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * Reads one serial port by a thread of its own until closed. A port that is gone is told once, then
 * looked for ten times a second; one that is there but cannot be read, at growing intervals up to
 * two seconds. What came before is not touched by that.
 */
public final class SerialPortSource implements AutoCloseable {

  /** Why nothing is read of a port whose cable is out: it is not there, or is so no more. */
  public static final List<String> UNPLUGGED = List.of("does not exist", "is gone");

  private static final boolean IS_WINDOWS = System.getProperty("os.name", "").startsWith("Windows");

  private static final int READ_TIMEOUT_MS = 200;
  private static final int BLOCK_BYTES = 1 << 14;

  /** More bytes than this within some ms are a backlog: ten units' worth at 1 kHz. */
  private static final int OLD_BYTES = 1500;

  private static final double LONGEST_DISCARD_S = 1;
  private static final int FIRST_WAIT_MS = 100;
  private static final int LONGEST_WAIT_MS = 2000;

  /** A pause after each read, so that bytes come in blocks: a quarter of the work at 1 kHz. */
  private static final int GATHER_MS = 4;

  /** A baud rate at which nothing makes sense for so long is left for the next, s. */
  private static final double TUNE_S = 4;

  private final String path;
  private final List<Integer> bauds;
  private final PortListener listener;
  private final Thread thread;
  private volatile boolean isClosed;
  private int tunedTo;

  private SerialPortSource(String path, List<Integer> bauds, PortListener listener) {
    this.path = path;
    this.bauds = List.copyOf(bauds);
    this.listener = listener;
    thread = new Thread(this::run, "port " + path);
    thread.setDaemon(true);
  }

  /**
   * Starts reading; the listener hears when the port is there.
   *
   * @param bauds tried in turn until the listener understands what comes
   */
  public static SerialPortSource open(String path, List<Integer> bauds, PortListener listener) {
    String whole = IS_WINDOWS ? path : Path.of(path).toAbsolutePath().toString();
    SerialPortSource source = new SerialPortSource(whole, bauds, listener);
    source.thread.start();
    return source;
  }

  public String path() {
    return path;
  }

  /** Ends the reading; returns when the thread has ended. */
  @Override
  public void close() {
    isClosed = true;
    thread.interrupt();
    try {
      thread.join(2000);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void run() {
    int waitMs = FIRST_WAIT_MS;
    String told = "";
    while (!isClosed) {
      double openedS = HostTime.steadyS();
      boolean isThere = isThere();
      String why = isThere ? readUntilGone() : UNPLUGGED.get(0);
      boolean workedForAWhile = HostTime.steadyS() - openedS > 1;
      if (!isClosed && (workedForAWhile || !why.equals(told))) {
        tell(() -> listener.gone(why));
        told = why;
      }
      pause(waitMs);
      boolean opensBadly = isThere && !workedForAWhile; // to look whether it is there costs nothing
      waitMs = opensBadly ? Math.min(LONGEST_WAIT_MS, 2 * waitMs) : FIRST_WAIT_MS;
    }
    tell(listener::ended);
  }

  /** The thread outlives its listener: a port that is not read must not look as if it were. */
  private static void tell(Runnable what) {
    try {
      what.run();
    } catch (RuntimeException | Error e) {
      return; // it was told; what it makes of that is its own
    }
  }

  /** Ports of Windows are no files; there only opening tells. */
  private boolean isThere() {
    return IS_WINDOWS || Files.exists(Path.of(path));
  }

  /** Opens and reads; returns why that ended, be it by a fault of the reader itself. */
  private String readUntilGone() {
    try {
      return read();
    } catch (RuntimeException | Error e) {
      return "could not be read (" + e + ")";
    }
  }

  private String read() {
    SerialPort port;
    try {
      port = SerialPort.getCommPort(path);
    } catch (SerialPortInvalidPortException e) {
      return "is no serial port";
    }
    port.setComPortParameters(baud(), 8, SerialPort.ONE_STOP_BIT, SerialPort.NO_PARITY);
    port.setFlowControl(SerialPort.FLOW_CONTROL_DISABLED);
    port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, READ_TIMEOUT_MS, 0);
    if (!port.openPort(0)) {
      return "cannot be opened (in use by another program, or no permission)";
    }
    try {
      discardOld(port);
      opened();
      return readAll(port);
    } finally {
      port.closePort();
    }
  }

  /** What waited at the port while nobody listened is old: reads it away until little comes. */
  private void discardOld(SerialPort port) {
    port.flushIOBuffers();
    byte[] block = new byte[BLOCK_BYTES];
    double untilS = HostTime.steadyS() + LONGEST_DISCARD_S;
    int waiting = OLD_BYTES;
    while (waiting >= OLD_BYTES && HostTime.steadyS() < untilS) {
      int count = port.readBytes(block, block.length);
      pause(GATHER_MS);
      waiting = count <= 0 ? 0 : port.bytesAvailable();
    }
  }

  /** A pseudo-terminal takes any baud rate and keeps none. */
  private void opened() {
    if (!isPseudo()) {
      listener.tuned(baud());
    }
    listener.opened();
  }

  private boolean isPseudo() {
    try {
      return !IS_WINDOWS && Path.of(path).toRealPath().startsWith("/dev/pts");
    } catch (IOException e) {
      return false;
    }
  }

  private int baud() {
    return bauds.get(tunedTo % bauds.size());
  }

  private String readAll(SerialPort port) {
    byte[] block = new byte[BLOCK_BYTES];
    double tunedS = HostTime.steadyS();
    while (!isClosed) {
      int count = port.readBytes(block, block.length);
      if (count < 0) {
        return UNPLUGGED.get(1);
      }
      if (count > 0) {
        listener.bytes(block, count, HostTime.steadyS(), HostTime.wallS());
        pause(GATHER_MS);
      } else if (!isThere()) {
        return UNPLUGGED.get(1);
      }
      double nowS = HostTime.steadyS();
      send(port, listener.toSend(nowS));
      if (bauds.size() > 1 && nowS - tunedS > TUNE_S && !listener.isUnderstood(nowS)) {
        tunedTo++;
        tunedS = nowS;
        port.setBaudRate(baud());
        opened();
      }
    }
    return "was closed";
  }

  /** What cannot be sent is lost; the unit's silence tells. */
  private static void send(SerialPort port, byte[] bytes) {
    if (bytes.length > 0) {
      port.writeBytes(bytes, bytes.length);
    }
  }

  private void pause(int ms) {
    if (isClosed) {
      return;
    }
    try {
      Thread.sleep(ms);
    } catch (InterruptedException e) {
      isClosed = true;
    }
  }
}
