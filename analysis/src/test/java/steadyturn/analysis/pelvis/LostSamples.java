package steadyturn.analysis.pelvis;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.strapdown.Bridge;
import steadyturn.fusion.strapdown.UnitMotion;

/**
 * A made pelvis whose samples between two instants are missing, and told as a bridge; what is left
 * is the exact truth, but its spread is as large as asked for.
 *
 * @param parts by how much the spreads of the motion are multiplied
 */
record LostSamples(
    MadePelvis made, double parts, int[] kept, List<Bridge> bridges, double takeawayS)
    implements UnitMotion {

  static LostSamples none(MadePelvis made) {
    int[] all = IntStream.range(0, made.size()).toArray();
    return new LostSamples(made, 1, all, List.of(), MadePelvis.TAKEAWAY_S);
  }

  /** Without the samples inside, the ends themselves are there. */
  LostSamples without(double fromS, double toS, double turnSdRad, double placeSdM) {
    int[] left =
        IntStream.of(kept)
            .filter(k -> made.timeS(k) < fromS + 1e-9 || made.timeS(k) > toS - 1e-9)
            .toArray();
    int after = (int) IntStream.of(left).filter(k -> made.timeS(k) < fromS + 1e-9).count();
    List<Bridge> all = new ArrayList<>(bridges);
    all.add(new Bridge(after, fromS, toS, turnSdRad, 0, placeSdM));
    return new LostSamples(made, parts, left, all, takeawayS);
  }

  LostSamples spread(double times) {
    return new LostSamples(made, times, kept, bridges, takeawayS);
  }

  LostSamples takenAwayAt(double instantS) {
    return new LostSamples(made, parts, kept, bridges, instantS);
  }

  PelvisTrack track() {
    return PelvisTrack.of(
        this,
        made.geometry(),
        made.handed(),
        made.aimRad() + made.errors()[8],
        MadePelvis.AIM_SD_RAD,
        takeawayS);
  }

  @Override
  public int size() {
    return kept.length;
  }

  @Override
  public double timeS(int k) {
    return made.timeS(kept[k]);
  }

  @Override
  public Quaternion qLevelUnit(int k) {
    return made.qLevelUnit(kept[k]);
  }

  @Override
  public Vector3 positionM(int k) {
    return made.positionM(kept[k]);
  }

  @Override
  public int parameters() {
    return made.parameters();
  }

  @Override
  public double[][] covariance() {
    double[][] out = made.covariance();
    for (double[] row : out) {
      for (int i = 0; i < row.length; i++) {
        row[i] *= parts * parts;
      }
    }
    return out;
  }

  @Override
  public double[][] sensitivity(int k) {
    return made.sensitivity(kept[k]);
  }
}
