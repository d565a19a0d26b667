package steadyturn.ingest.lab;

import java.io.ByteArrayOutputStream;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import steadyturn.ingest.serial.HostTime;

/**
 * A serial port made of a pair of pseudo-terminals by the program socat: what is sent here comes
 * out at the port's path, which any program opens like a port. Unplugging takes the path away.
 */
public final class VirtualPort implements AutoCloseable {

  private static final int MOST_WAITING = 20_000;

  /** What nobody took for so long is lost, s; shorter stalls of a busy machine are not. */
  private static final double LONGEST_WAIT_S = 5;

  private static final double OPEN_TIMEOUT_S = 5;

  /** Ends when this program does, however it ends: its input closes then. */
  private static final String SOCAT =
      "command -v socat >/dev/null || exit 127; socat \"$1\" \"$2\" & cat >/dev/null; kill $!";

  private static final int NO_SUCH_PROGRAM = 127;
  private static final String MISSING = "virtual ports need the program socat (apt install socat)";

  private final Path path;
  private final Path inner;
  private final BlockingQueue<Piece> waiting = new ArrayBlockingQueue<>(MOST_WAITING);
  private final Thread writer;
  private final Thread reader;
  private final BlockingQueue<byte[]> heard = new LinkedBlockingQueue<>();
  private Process socat;
  private volatile OutputStream out;
  private volatile boolean isClosed;
  private boolean isPlugged = true;

  /** Bytes and when they were sent. */
  @SuppressWarnings("ArrayRecordComponent") // handed over, never changed
  private record Piece(byte[] bytes, double sentS) {}

  private VirtualPort(Path path) throws IOException {
    this.path = path;
    inner = Path.of(path + ".unit");
    socat = startSocat();
    out = openInner();
    writer = new Thread(this::write, "virtual port " + path);
    writer.setDaemon(true);
    writer.start();
    reader = new Thread(this::read, "virtual port " + path + " heard");
    reader.setDaemon(true);
    reader.start();
  }

  /**
   * Makes a port at a path where nothing is yet.
   *
   * @throws IOException when something is there, or when socat is missing
   */
  public static VirtualPort at(Path path) throws IOException {
    if (Files.exists(path)) {
      throw new IOException(path + " exists already; choose a path where nothing is");
    }
    return new VirtualPort(path);
  }

  private Process startSocat() throws IOException {
    try {
      return new ProcessBuilder(
              "sh",
              "-c",
              SOCAT,
              "socat",
              "PTY,link=" + inner + ",raw,echo=0",
              "PTY,link=" + path + ",raw,echo=0,mode=666")
          .redirectErrorStream(true)
          .redirectOutput(ProcessBuilder.Redirect.DISCARD)
          .start();
    } catch (IOException e) {
      throw new IOException(MISSING, e);
    }
  }

  private OutputStream openInner() throws IOException {
    double untilS = HostTime.steadyS() + OPEN_TIMEOUT_S;
    while (!Files.exists(inner) || !Files.exists(path)) {
      if (!socat.isAlive() && socat.exitValue() == NO_SUCH_PROGRAM) {
        throw new IOException(MISSING);
      }
      if (!socat.isAlive() || HostTime.steadyS() > untilS) {
        socat.getOutputStream().close();
        throw new IOException("socat could not make a port at " + path);
      }
      HostTime.pause(10);
    }
    return new FileOutputStream(inner.toFile());
  }

  /** Sends bytes soon. What nobody takes within some seconds is lost. */
  public void send(byte[] bytes) {
    if (isPlugged && bytes.length > 0) {
      waiting.offer(new Piece(bytes, HostTime.steadyS()));
    }
  }

  /** What was sent to the unit since the last call. */
  public byte[] received() {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    for (byte[] piece = heard.poll(); piece != null; piece = heard.poll()) {
      all.writeBytes(piece);
    }
    return all.toByteArray();
  }

  private void read() {
    byte[] block = new byte[1024];
    while (!isClosed) {
      try (InputStream in = new FileInputStream(inner.toFile())) {
        for (int count = in.read(block); count > 0 && !isClosed; count = in.read(block)) {
          heard.add(Arrays.copyOf(block, count));
        }
      } catch (IOException e) {
        HostTime.pause(20); // unplugged
      }
    }
  }

  /** Plugs the unit in, or takes its path away. Called by the unit's thread only. */
  public void setPlugged(boolean plugged) throws IOException {
    if (plugged == isPlugged) {
      return;
    }
    isPlugged = plugged;
    if (plugged) {
      socat = startSocat();
      out = openInner();
    } else {
      endSocat();
      waiting.clear();
    }
  }

  private void endSocat() throws IOException {
    socat.getOutputStream().close();
    try {
      socat.waitFor(2, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    out.close();
    Files.deleteIfExists(path);
    Files.deleteIfExists(inner);
  }

  private void write() {
    while (!isClosed) {
      try {
        Piece piece = waiting.poll(50, TimeUnit.MILLISECONDS);
        if (piece != null && HostTime.steadyS() - piece.sentS() < LONGEST_WAIT_S) {
          double beganS = HostTime.steadyS();
          out.write(piece.bytes());
          forgetBacklog(HostTime.steadyS() - beganS);
        }
      } catch (IOException e) {
        HostTime.pause(5); // unplugged; the bytes are lost, as they are with a cable
      } catch (InterruptedException e) {
        return;
      }
    }
  }

  /** A write that was held up for long had no reader: what gathered meanwhile is lost. */
  private void forgetBacklog(double heldUpS) {
    if (heldUpS > LONGEST_WAIT_S) {
      waiting.clear();
    }
  }

  @Override
  public void close() throws IOException {
    isClosed = true;
    writer.interrupt();
    endSocat();
  }
}
