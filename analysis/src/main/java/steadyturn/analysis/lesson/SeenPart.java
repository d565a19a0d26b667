package steadyturn.analysis.lesson;

import java.util.Optional;
import steadyturn.fusion.displace.Anchor;
import steadyturn.fusion.strapdown.Bridge;
import steadyturn.fusion.strapdown.StrapdownSamples;
import steadyturn.ingest.sample.Gaps;
import steadyturn.ingest.sample.UnitStream;

/**
 * The part of a swing's samples that hangs together: around its address, up to the first gap on
 * either side behind which nothing can be told.
 *
 * @param window the samples of that part
 * @param isCut whether it ends earlier than the samples do
 * @param hasGap whether a gap long enough to be spoken of lies inside it
 */
record SeenPart(UnitStream window, boolean isCut, boolean hasGap) {

  /** The stretch before the takeaway that stands for the address, s before it. */
  private static final double ADDRESS_FROM_S = 0.25;

  private static final double ADDRESS_TO_S = 0.03;

  /** So much of it is enough, where the rest cannot be bridged (our choice). */
  private static final double LOST_PART = 0.5;

  /** Shorter gaps are no matter for a flag, s. */
  private static final double SPOKEN_OF_S = 0.03;

  /** But the blow may lie in one as short as this, s. */
  private static final double IN_BLOW_S = 0.015;

  private static final double AROUND_BLOW_S = 0.04;

  /** How long after the impact a gap still is one in the swing, s. */
  private static final double AFTER_IMPACT_S = 0.3;

  /** None where the unit saw too little of the address. */
  static Optional<SeenPart> of(UnitStream window, double takeawayS, double impactS) {
    double addressS = takeawayS - ADDRESS_FROM_S;
    Gaps gaps = Gaps.of(window, Gaps.Need.BOTH);
    boolean hasGap =
        gaps.longestS(addressS, impactS + AFTER_IMPACT_S) > SPOKEN_OF_S
            || gaps.longestS(impactS - AROUND_BLOW_S, impactS + AROUND_BLOW_S) > IN_BLOW_S;
    double middleS = takeawayS - (ADDRESS_FROM_S + ADDRESS_TO_S) / 2;
    double fromS = window.timeS(0);
    double toS = Double.POSITIVE_INFINITY;
    if (gaps.inner().stream().anyMatch(g -> g.lengthS() > SPOKEN_OF_S)) {
      for (Bridge bridge : StrapdownSamples.of(window).bridges()) {
        if (bridge.isBeyond() && bridge.afterS() <= middleS + bridge.lengthS() / 2) {
          fromS = bridge.afterS();
        } else if (bridge.isBeyond()) {
          toS = Math.min(toS, Math.nextUp(bridge.beforeS()));
        }
      }
    }
    boolean isCut = toS <= window.timeS(window.size() - 1);
    UnitStream part = window.between(fromS, toS);
    return seesAddress(gaps, part, takeawayS)
        ? Optional.of(new SeenPart(part, isCut, hasGap))
        : Optional.empty();
  }

  /** A short gap may lie in the address: what is seen on both sides speaks for it. */
  private static boolean seesAddress(Gaps gaps, UnitStream part, double takeawayS) {
    double addressS = takeawayS - ADDRESS_FROM_S;
    double untilS = takeawayS - ADDRESS_TO_S;
    if (part.size() == 0 || !(part.timeS(0) < untilS)) {
      return false;
    }
    boolean isBridged =
        Math.max(part.timeS(0), gaps.firstS()) < addressS
            && Math.min(part.timeS(part.size() - 1), gaps.lastS()) > untilS
            && gaps.inner().stream()
                .filter(gap -> gap.afterS() > addressS && gap.beforeS() < untilS)
                .allMatch(gap -> gap.lengthS() < Anchor.SWAY_CORRELATION_S);
    return isBridged || gaps.lostPart(addressS, untilS) <= LOST_PART;
  }
}
