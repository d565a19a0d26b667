package steadyturn.analysis.swing.find;

import java.util.Optional;
import steadyturn.fusion.attitude.GyroTrack;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;

/** The blow of the ball as the units of one arm felt it. */
final class ArmBlow {

  // a ring of a slow unit can be overlooked for two samples
  private static final double SAME_BLOW_S = 0.015;
  // the ball is struck within 20 ms of the arm's return (1 SD): our assumption, three times that
  private static final double WEAK_WITHIN_S = 0.06;

  // so long after a blow the ring still shows (our choice)
  private static final double RING_S = 0.03;
  private static final double LONGEST_STEP_S = 0.012;

  private final Recording recording;
  private final RestBiases biases;
  private final Optional<ArmMotion> forearm;
  private final Optional<ArmMotion> hand;
  private final ArmMotion.Span where;

  ArmBlow(
      Recording recording,
      RestBiases biases,
      Optional<ArmMotion> forearm,
      Optional<ArmMotion> hand,
      ArmMotion.Span where) {
    this.recording = recording;
    this.biases = biases;
    this.forearm = forearm;
    this.hand = hand;
    this.where = where;
  }

  /** A blow that grass cannot give. */
  Optional<Instant> clear() {
    Optional<Onset> atHand = hand.flatMap(h -> clear(h.track(), BallBlow.Least.HAND));
    Optional<Onset> atForearm = forearm.flatMap(f -> clear(f.track(), BallBlow.Least.FOREARM));
    if (atHand.isPresent() && atForearm.isPresent()) {
      // units that feel blows apart say that one of two was the ball, or that their clocks are off
      double apartS = Math.abs(atHand.get().byS() - atForearm.get().byS());
      return atHand.map(
          h -> apartS < SAME_BLOW_S ? h.and(atForearm.get()) : h.instant().and(apartS));
    }
    return atHand.or(() -> atForearm).or(this::inShaft).map(Onset::instant);
  }

  /** The shaft feels the blow, too, but its unit is often cut off at full scale before it. */
  private Optional<Onset> inShaft() {
    return recording
        .unit(BodyPoint.CLUB_SHAFT)
        .map(s -> s.between(where.fromS() - 0.1, where.toS() + 0.1))
        .filter(s -> s.size() > 20)
        .map(s -> GyroTrack.of(s, biases.radPerS(s.point())))
        .flatMap(t -> clear(t, BallBlow.Least.HAND));
  }

  private Optional<Onset> clear(GyroTrack track, BallBlow.Least least) {
    return BallBlow.find(track, from(track, where), to(track, where), least)
        .map(o -> afterGap(track, o));
  }

  /** Behind lost forces, the ring may be all that is left of a blow inside them. */
  private static Onset afterGap(GyroTrack track, Onset onset) {
    int i = track.indexAt(onset.byS());
    double last = onset.byS();
    while (i > 0 && last > onset.byS() - RING_S) {
      i--;
      boolean isGap = last - track.timeS(i) > LONGEST_STEP_S;
      if (track.hasForce(i)) {
        if (isGap) {
          return new Onset(track.timeS(i), onset.byS());
        }
        last = track.timeS(i);
      }
    }
    return onset;
  }

  /**
   * A blow of which slow units took weak samples only, in a swing that is noted as a hit: near the
   * return to the address direction, and in both units at once.
   */
  Optional<Instant> weak(Instant back) {
    if (!isNotedAsHit(back.timeS())) {
      return Optional.empty();
    }
    ArmMotion.Span near =
        new ArmMotion.Span(back.timeS() - WEAK_WITHIN_S, back.timeS() + WEAK_WITHIN_S);
    Optional<Onset> atHand = hand.flatMap(h -> weak(h.track(), near, BallBlow.Least.HAND));
    Optional<Onset> atForearm = forearm.flatMap(f -> weak(f.track(), near, BallBlow.Least.FOREARM));
    return atHand.flatMap(
        h -> atForearm.filter(f -> Math.abs(h.byS() - f.byS()) < SAME_BLOW_S).map(h::and));
  }

  private boolean isNotedAsHit(double timeS) {
    return recording.marks().stream()
        .filter(m -> m.trialType().equals("hit"))
        .anyMatch(m -> m.onsetS() <= timeS && timeS <= m.endS());
  }

  private static Optional<Onset> weak(GyroTrack track, ArmMotion.Span near, BallBlow.Least least) {
    return BallBlow.findWeak(track, from(track, near), to(track, near), least);
  }

  private static int from(GyroTrack track, ArmMotion.Span span) {
    return track.indexAt(span.fromS());
  }

  private static int to(GyroTrack track, ArmMotion.Span span) {
    return Math.min(track.size(), track.indexAt(span.toS()));
  }
}
