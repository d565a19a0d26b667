package steadyturn.analysis.swing.find;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.swing.Faults;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.attitude.Unseen;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.wrist.WristAlignment;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/** Finds the swings that a forearm or hand unit shows. */
final class ArmSwings {

  private static final double AFTER_S = 0.5;
  private static final double BEFORE_S = 0.75;

  private final Recording recording;
  private final WristAlignment alignment;
  private final FinderSettings settings;
  private final RestBiases biases;
  private final Faults faults;
  private final Optional<WornUnit> forearm;
  private final Optional<WornUnit> hand;

  ArmSwings(
      Recording recording,
      WristAlignment alignment,
      RestBiases biases,
      FinderSettings settings,
      Faults faults) {
    this.faults = faults;
    this.recording = recording;
    this.alignment = alignment;
    this.settings = settings;
    this.biases = biases;
    this.forearm =
        recording
            .unit(BodyPoint.LEAD_FOREARM)
            .map(s -> worn(s, alignment.qForearmUnitForearm().rotate(Vector3.X)));
    this.hand =
        recording
            .unit(BodyPoint.LEAD_HAND)
            .map(s -> worn(s, alignment.qHandUnitHand().rotate(Vector3.X)));
  }

  private WornUnit worn(UnitStream stream, Vector3 longAxisUnit) {
    return new WornUnit(stream, biases.radPerS(stream.point()), longAxisUnit);
  }

  /** All swings by time. */
  List<FoundSwing> all() {
    WornUnit arm = forearm.or(() -> hand).orElseThrow();
    List<FoundSwing> found = new ArrayList<>();
    double freeFromS = Double.NEGATIVE_INFINITY;
    boolean both = forearm.isPresent() && hand.isPresent();
    double slowest = both ? settings.slowArmRadPerS() : settings.fastRadPerS();
    for (int peak : FastBursts.peaks(arm.stream(), slowest)) {
      if (arm.stream().timeS(peak) < freeFromS) {
        continue;
      }
      Optional<FoundSwing> swing =
          faults
              .keep(
                  recording.id(), arm.stream().timeS(peak), () -> at(arm, forearm.isEmpty(), peak))
              .flatMap(s -> s);
      if (swing.isPresent()) {
        found.add(swing.get());
        freeFromS = swing.get().impactS() + AFTER_S;
      }
    }
    return both ? handFinds(found) : found;
  }

  /** Where the forearm lost a stroke, the hand alone may still show it. */
  private List<FoundSwing> handFinds(List<FoundSwing> found) {
    List<FoundSwing> all = new ArrayList<>(found);
    WornUnit arm = hand.orElseThrow();
    Unseen lost = Unseen.ofBoth(forearm.orElseThrow().stream());
    for (int peak : FastBursts.peaks(arm.stream(), settings.fastHandRadPerS())) {
      double peakS = arm.stream().timeS(peak);
      boolean isOpen =
          all.stream().noneMatch(s -> s.takeawayS() < peakS && peakS < s.impactS() + AFTER_S);
      double fromS = peakS - settings.longestBackS() - settings.longestDownS() - BEFORE_S;
      if (isOpen && lost.touches(fromS, peakS + AFTER_S)) {
        faults
            .keep(recording.id(), peakS, () -> at(arm, true, peak))
            .flatMap(s -> s)
            .ifPresent(all::add);
      }
    }
    all.sort(Comparator.comparingDouble(FoundSwing::impactS));
    return all;
  }

  /** The swing around a sample, read from the forearm or from the hand alone. */
  private Optional<FoundSwing> at(WornUnit arm, boolean byHand, int peak) {
    return arm.around(peak, settings)
        .filter(m -> isFullSwing(m, recording.player().handed().sign()))
        .map(
            m ->
                new ArmSwingReader(recording, biases, alignment, settings, forearm, hand, m, byHand)
                    .read());
  }

  private boolean isFullSwing(ArmMotion arm, int handedSign) {
    StrokeShape shape = arm.shape();
    double backS = shape.topS() - shape.takeawayS();
    double downS = arm.timeS(shape.peak()) - shape.topS();
    double forwardRad =
        StrokeShape.angle(
            arm.stretch().timeColumnS(),
            arm.inPlaneRadPerS(),
            shape.top(),
            Math.min(shape.end(), arm.track().size() - 1));
    return arm.isReadable()
        && isFast(arm)
        && shape.backRad() > settings.leastBackRad()
        && backS >= settings.shortestBackS()
        && backS <= settings.longestBackS()
        && downS >= settings.shortestDownS() / 2
        && downS <= settings.longestDownS()
        && forwardRad > settings.leastForwardPart() * shape.backRad()
        && arm.isGolfLike(handedSign);
  }

  private boolean isFast(ArmMotion arm) {
    if (arm.peakRadPerS() > settings.fastRadPerS()) {
      return true;
    }
    return forearm.isPresent()
        && arm.peakRadPerS() > settings.slowArmRadPerS()
        && hand.flatMap(h -> h.around(arm.timeS(arm.shape().peak()), settings))
            .filter(h -> h.peakRadPerS() > settings.fastHandRadPerS())
            .isPresent();
  }
}
