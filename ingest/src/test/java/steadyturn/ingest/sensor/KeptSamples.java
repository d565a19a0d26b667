package steadyturn.ingest.sensor;

import java.util.ArrayList;
import java.util.List;

/** Keeps everything an adapter said. */
public class KeptSamples implements SampleSink {

  /** Time, acceleration x y z, rate x y z. */
  public final List<double[]> samples = new ArrayList<>();

  public final List<UnitHello> hellos = new ArrayList<>();
  public long skippedBytes;
  public long lostSamples;

  @Override
  public void hello(UnitHello hello) {
    hellos.add(hello);
  }

  @Override
  public void sample(
      double timeS, double ax, double ay, double az, double gx, double gy, double gz) {
    samples.add(new double[] {timeS, ax, ay, az, gx, gy, gz});
  }

  @Override
  public void skipped(int bytes) {
    skippedBytes += bytes;
  }

  @Override
  public void lost(int count) {
    lostSamples += count;
  }
}
