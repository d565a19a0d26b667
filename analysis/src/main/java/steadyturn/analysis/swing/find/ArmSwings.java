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
  // our choices, as all that tells a full swing: how fast the downswing must be in the plane; how
  // fast where the hand is fast, as a cast spends the arm's speed early; how far back the arm must
  // go, and what part of that it must cover forward
  private static final double FAST_RAD_PER_S = Math.toRadians(500);
  private static final double SLOW_ARM_RAD_PER_S = Math.toRadians(350);
  private static final double FAST_HAND_RAD_PER_S = Math.toRadians(900);
  private static final double LEAST_BACK_RAD = Math.toRadians(60);
  private static final double LEAST_FORWARD_PART = 0.9;
  private static final double BEFORE_S = 0.75;

  private final Recording recording;
  private final WristAlignment alignment;
  private final RestBiases biases;
  private final Faults faults;
  private final Optional<WornUnit> forearm;
  private final Optional<WornUnit> hand;

  ArmSwings(Recording recording, WristAlignment alignment, RestBiases biases, Faults faults) {
    this.faults = faults;
    this.recording = recording;
    this.alignment = alignment;
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
    Vector3 bias = biases.radPerS(stream.point());
    return new WornUnit(stream, bias, longAxisUnit, alignment.longAxisSdRad());
  }

  /** All swings by time. */
  List<FoundSwing> all() {
    WornUnit arm = forearm.or(() -> hand).orElseThrow();
    List<FoundSwing> found = new ArrayList<>();
    double freeFromS = Double.NEGATIVE_INFINITY;
    boolean both = forearm.isPresent() && hand.isPresent();
    double slowest = both ? SLOW_ARM_RAD_PER_S : FAST_RAD_PER_S;
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
    for (int peak : FastBursts.peaks(arm.stream(), FAST_HAND_RAD_PER_S)) {
      double peakS = arm.stream().timeS(peak);
      boolean isOpen =
          all.stream().noneMatch(s -> s.takeawayS() < peakS && peakS < s.impactS() + AFTER_S);
      double fromS = peakS - StrokeShape.LONGEST_BACK_S - StrokeShape.LONGEST_DOWN_S - BEFORE_S;
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
    return arm.around(arm.stream().timeS(peak))
        .filter(m -> isFullSwing(m, recording.player().handed().sign()))
        .map(
            m -> new ArmSwingReader(recording, biases, alignment, forearm, hand, m, byHand).read());
  }

  private boolean isFullSwing(ArmMotion arm, int handedSign) {
    StrokeShape shape = arm.shape();
    double[] time = arm.stretch().timeColumnS();
    double forwardRad = shape.forwardRad(time, arm.inPlaneRadPerS());
    return arm.isReadable()
        && isFast(arm)
        && shape.backRad() > LEAST_BACK_RAD
        && shape.hasTempo(time)
        && forwardRad > LEAST_FORWARD_PART * shape.backRad()
        && arm.isGolfLike(handedSign);
  }

  private boolean isFast(ArmMotion arm) {
    if (arm.peakRadPerS() > FAST_RAD_PER_S) {
      return true;
    }
    return forearm.isPresent()
        && arm.peakRadPerS() > SLOW_ARM_RAD_PER_S
        && hand.flatMap(h -> h.around(arm.timeS(arm.shape().peak())))
            .filter(h -> h.peakRadPerS() > FAST_HAND_RAD_PER_S)
            .isPresent();
  }
}
