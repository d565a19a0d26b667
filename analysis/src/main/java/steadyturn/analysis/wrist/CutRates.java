package steadyturn.analysis.wrist;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import steadyturn.fusion.attitude.Filling;
import steadyturn.fusion.attitude.GyroTrack;
import steadyturn.fusion.attitude.LevelTrack;
import steadyturn.fusion.attitude.PeakRepair;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.SkinSlip;
import steadyturn.fusion.wear.wrist.RateFromForce;
import steadyturn.fusion.wear.wrist.TwoAxisJoint;
import steadyturn.fusion.wear.wrist.WristAlignment;
import steadyturn.ingest.sample.UnitStream;

/**
 * The hand's rates beyond full scale on the way down, by what forearm and hand unit felt. The joint
 * is fitted up to the cut first: that tells how the hand lies to the forearm where it begins.
 */
record CutRates(
    UnitStream forearm,
    LevelTrack forearmTrack,
    Vector3 forearmBias,
    Vector3 handBias,
    WristAlignment alignment,
    SkinSlip skin,
    double syncSdS) {

  /** Shorter cuts are rounded off well enough by themselves, s. */
  private static final double SHORT_S = 0.02;

  /** The hand's stream with its long cuts filled anew; as it was where that cannot be done. */
  PeakRepair.Repaired filled(PeakRepair.Repaired hand, LevelTrack handTrack) {
    List<PeakRepair.Cut> cuts =
        hand.cuts().stream()
            .filter(c -> c.fromS() > skin.topS() && c.fromS() < skin.impactS() - SHORT_S)
            .filter(c -> c.toS() - c.fromS() > SHORT_S)
            .sorted(Comparator.comparingDouble(PeakRepair.Cut::fromS))
            .toList();
    return cuts.isEmpty() ? hand : filled(hand, handTrack, cuts.get(0));
  }

  private PeakRepair.Repaired filled(
      PeakRepair.Repaired hand, LevelTrack handTrack, PeakRepair.Cut cut) {
    TwoAxisJoint before =
        TwoAxisJoint.fit(
            forearmTrack,
            handTrack,
            alignment,
            skin,
            skin.takeawayS() - WristMotion.REFERENCE_FROM_S,
            cut.fromS() - 0.001,
            syncSdS);
    GyroTrack arm = GyroTrack.of(forearm, forearmBias);
    GyroTrack own = GyroTrack.of(hand.stream(), handBias);
    double fullMps2 = hand.stream().facts().accelFullScaleMps2();
    int k = arm.indexAt(own.timeS(own.indexAt(RateFromForce.startS(cut))));
    Optional<Filling> filling =
        RateFromForce.of(
            new RateFromForce.Units(arm, own, handBias, fullMps2, alignment),
            cut,
            before.qForearmHand(Math.min(k, before.size() - 1)),
            skin.impactS());
    return filling.map(f -> f.into(hand, cut)).orElse(hand);
  }
}
