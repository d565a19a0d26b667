package steadyturn.fusion.orientation;

import java.util.Arrays;
import steadyturn.fusion.filter.SampleLimits;
import steadyturn.fusion.filter.SigmaFloor;
import steadyturn.fusion.filter.kalman.BackwardPass;
import steadyturn.fusion.filter.kalman.BlockTrace;
import steadyturn.fusion.filter.kalman.ErrorStateKalmanFilter;
import steadyturn.fusion.filter.kalman.KalmanSettings;
import steadyturn.fusion.rotation.MutableQuaternion;
import steadyturn.ingest.sample.UnitStream;

/**
 * Orientation from the whole recording: {@link ErrorStateKalmanFilter} forward, then backward, so
 * that each instant is judged by what came before and after, with the gyroscope's bias and matrix
 * learnt from all of it. Time and memory grow linearly with the recording.
 */
final class OrientationSmoother {

  private final BlockTrace trace = new BlockTrace();
  private final ErrorStateKalmanFilter filter;
  private final UnitStream stream;
  private final OrientationTrack track;
  private final SigmaFloor floor;
  private final MutableQuaternion q = new MutableQuaternion();

  /** For block k (as recorded) the index after its last sample, and the time it ended. */
  private int[] ends = new int[1024];

  OrientationSmoother(KalmanSettings settings, SampleLimits limits, UnitStream stream) {
    filter = new ErrorStateKalmanFilter(settings, limits, trace);
    this.stream = stream;
    floor = settings.floor();
    track = OrientationTrack.forInstants(stream.timeColumnS());
  }

  OrientationTrack run() {
    forward();
    BackwardPass back = new BackwardPass(trace);
    back.run();
    correct(back);
    return track;
  }

  private void forward() {
    int n = stream.size();
    int unlevelledFrom = 0;
    boolean unlevelled = true;
    for (int i = 0; i < n; i++) {
      OrientationRun.feed(filter, stream, i);
      if (unlevelled && filter.levelled()) {
        levelBetween(unlevelledFrom, i);
        unlevelled = false;
      } else if (!unlevelled && !filter.levelled()) {
        unlevelledFrom = i; // the sample behind the gap, too, waits for its level
        unlevelled = true;
      }
      filter.copyUnlevelled(q);
      track.set(i, q, filter.inclinationSigmaRad(), filter.headingSigmaRad());
      if (filter.atBlockEnd() && trace.blocks() > 0) {
        noteEnd(i + 1);
      }
    }
    if (unlevelled) {
      levelBetween(unlevelledFrom, n);
    }
  }

  /** The last block recorded ends before this sample; said again while no new one is recorded. */
  private void noteEnd(int end) {
    int block = trace.blocks() - 1;
    if (block >= ends.length) {
      ends = Arrays.copyOf(ends, 2 * ends.length);
    }
    if (ends[block] == 0) {
      ends[block] = end;
    }
  }

  /** Levels samples of a levelling block by what the whole block found. */
  private void levelBetween(int from, int to) {
    MutableQuaternion level = new MutableQuaternion();
    filter.copyLevelling(level);
    for (int i = from; i < to; i++) {
      track.copyTo(i, q);
      q.multiplyLeft(level);
      track.set(i, q, track.inclinationSigmaRad()[i], track.headingSigmaRad()[i]);
    }
  }

  /**
   * Turns the forward answer by the smoothed error: known at the block ends, in between laid out
   * linearly in time.
   */
  private void correct(BackwardPass back) {
    int from = 0;
    for (int block = 0; block < trace.blocks(); block++) {
      int before = Math.max(0, block - 1);
      for (int i = from; i < ends[block]; i++) {
        correctSample(i, block, before, back);
      }
      from = ends[block];
    }
    int last = trace.blocks() - 1;
    for (int i = from; last >= 0 && i < track.size(); i++) {
      turn(back, i, last, last, 1, 0);
    }
  }

  private void correctSample(int i, int block, int before, BackwardPass back) {
    double[] t = track.timeS();
    double part = 1;
    if (!trace.startsAnew(block)) {
      double startS = t[ends[before] - 1];
      part = (t[i] - startS) / (t[ends[block] - 1] - startS);
    }
    // before the block's own correction was applied, its share of it is still to come
    double own = i == ends[block] - 1 ? 0 : part;
    turn(back, i, before, block, part, own);
  }

  /** Turns a sample that lies {@code part} of the way between the ends of two blocks. */
  private void turn(BackwardPass back, int i, int before, int block, double part, double own) {
    track.copyTo(i, q);
    q.turnLeft(
            turnRad(back, 0, before, block, part, own),
            turnRad(back, 1, before, block, part, own),
            turnRad(back, 2, before, block, part, own))
        .normalize();
    track.set(
        i,
        q,
        sigma(
            i,
            mix(part, back.inclinationSigmaRad[before], back.inclinationSigmaRad[block]),
            filter.unseenTiltVariance()),
        sigma(i, mix(part, back.headingSigmaRad[before], back.headingSigmaRad[block]), 0));
  }

  private double turnRad(
      BackwardPass back, int axis, int before, int block, double part, double own) {
    double[] e = back.turnRad;
    return own * trace.correctionRad(block, axis)
        + mix(part, e[3 * before + axis], e[3 * block + axis]);
  }

  /** Own sigma and the floor; a lost rate adds nothing here, the forward pass has counted it. */
  private double sigma(int i, double own, double more) {
    double x = stream.gyroRadPerS(0, i);
    double y = stream.gyroRadPerS(1, i);
    double z = stream.gyroRadPerS(2, i);
    double beyond = Double.isNaN(x + y + z) ? floor.variance(0, 0, 0) : floor.variance(x, y, z);
    return Math.sqrt(own * own + beyond + more);
  }

  private static double mix(double part, double from, double to) {
    return from + part * (to - from);
  }
}
