package steadyturn.ingest.serial;

import java.io.ByteArrayOutputStream;
import java.util.List;

/**
 * One port for several listeners, such as units behind one receiver: each hears everything.
 *
 * @param listeners in the order in which they are told
 */
public record SharedPort(List<PortListener> listeners) implements PortListener {

  public SharedPort {
    listeners = List.copyOf(listeners);
  }

  @Override
  public void bytes(byte[] block, int count, double steadyS, double wallS) {
    listeners.forEach(listener -> listener.bytes(block, count, steadyS, wallS));
  }

  @Override
  public void tuned(int baud) {
    listeners.forEach(listener -> listener.tuned(baud));
  }

  @Override
  public void opened() {
    listeners.forEach(PortListener::opened);
  }

  @Override
  public byte[] toSend(double steadyS) {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    listeners.forEach(listener -> all.writeBytes(listener.toSend(steadyS)));
    return all.toByteArray();
  }

  @Override
  public boolean isUnderstood(double steadyS) {
    return listeners.stream().anyMatch(listener -> listener.isUnderstood(steadyS));
  }

  @Override
  public void gone(String why) {
    listeners.forEach(listener -> listener.gone(why));
  }

  @Override
  public void ended() {
    listeners.forEach(PortListener::ended);
  }
}
