package steadyturn.analysis.swing.find;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.swing.EventReason;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.attitude.Unseen;
import steadyturn.fusion.wear.wrist.WristAlignment;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/** Reads the key positions of one stroke that an arm unit shows. */
final class ArmSwingReader {

  private static final double REFERENCE_S = 0.14;
  // a unit on skin follows the bone late, and its chip's filter by part of a sample: our
  // assumptions
  private static final double SKIN_LAG_S = 0.0015;
  private static final double SKIN_LAG_SD_S = 0.0025;
  private static final double FILTER_LAG_STEPS = 0.35;
  private static final double FOOT_PART = 0.5;
  // the wrist may begin to cock before or after the arm moves, at the top as well: our assumptions
  private static final double HAND_RAD_PER_S = Math.toRadians(2.5);
  private static final double HAND_TAKEAWAY_SD_S = 0.02;
  private static final double HAND_TOP_RAD_PER_S = Math.toRadians(40);
  private static final double HAND_TOP_SD_S = 0.035;
  // the skin of the forearm follows the wrist by such a part of its way: our assumption
  private static final double SKIN_PULL = 0.03;
  // the hands may lead or lag by 8 deg at a ball that is not there, at 600 deg/s: our assumption
  private static final double VIRTUAL_SD_S = 0.013;
  // the takeaway is read from a parabola over 50 ms
  private static final double TAKEAWAY_S = 0.025;
  private static final double SMOOTH_S = 0.008;
  private static final double ADDRESS_S = 0.75;
  private static final double HIPS_BEFORE_S = 0.6;
  private static final double HIPS_AFTER_S = 0.2;
  private static final double AFTER_IMPACT_S = 0.1;
  private static final Set<BodyPoint> ARM = EnumSet.of(BodyPoint.LEAD_FOREARM, BodyPoint.LEAD_HAND);
  private static final double FINISH_WITHIN_S = 4;

  private final Recording recording;
  private final RestBiases biases;
  private final WristAlignment alignment;
  private final Optional<ArmMotion> forearm;
  private final Optional<ArmMotion> hand;
  private final Optional<ArmHeight> height;
  private final Optional<PelvisMotion> hips;
  private final ArmMotion arm;
  private final WornUnit armUnit;
  private final Map<SwingEvent, EventTime> events = new EnumMap<>(SwingEvent.class);
  private final Map<SwingEvent, Double> lateS = new EnumMap<>(SwingEvent.class);
  private final List<String> flags = new ArrayList<>();

  ArmSwingReader(
      Recording recording,
      RestBiases biases,
      WristAlignment alignment,
      Optional<WornUnit> forearmUnit,
      Optional<WornUnit> handUnit,
      ArmMotion arm,
      boolean byHand) {
    this.recording = recording;
    this.biases = biases;
    this.alignment = alignment;
    this.arm = arm;
    double peakS = arm.timeS(arm.shape().peak());
    if (!byHand) {
      this.armUnit = forearmUnit.orElseThrow();
      this.height = Optional.of(ArmHeight.of(arm));
      this.forearm = Optional.of(arm);
      this.hand = handUnit.flatMap(u -> u.around(peakS)).filter(ArmMotion::isReadable);
    } else {
      this.armUnit = handUnit.orElseThrow();
      this.height = forearmUnit.flatMap(u -> ArmHeight.beside(u, arm));
      this.forearm = Optional.empty();
      this.hand = Optional.of(arm);
    }
    this.hips = hips();
  }

  /** The swing with all events that can be found. */
  FoundSwing read() {
    StrokeShape shape = arm.shape();
    double takeawayS = readTakeaway();
    double topS = readTop(shape);
    ArmBlow blow = new ArmBlow(recording, biases, forearm, hand, impactSpan());
    Optional<Instant> clear = blow.clear();
    Instant back = virtualImpact();
    Optional<Instant> shock = clear.or(() -> blow.weak(back));
    Instant impact = shock.map(this::blown).map(i -> i.beside(back)).orElse(back);
    EventReason why = shock.isPresent() ? EventReason.WEAK_BLOW : EventReason.VIRTUAL;
    put(SwingEvent.IMPACT, impact, clear.isPresent() ? Reason.NONE : Reason.of(why));
    ArmMotion.Span down = new ArmMotion.Span(topS, impact.timeS());
    readDown(down);
    hips.flatMap(p -> p.turnaround(arm.takeawayS() + 0.2, down.toS()))
        .ifPresent(i -> put(SwingEvent.PELVIS_TURNAROUND, i, Reason.NONE));
    Optional<Instant> finish = readFinish(impact.timeS());
    noteGaps(impact.timeS());
    return new FoundSwing(
        armUnit.stream(),
        List.copyOf(events.values()),
        shock.isPresent(),
        takeawayS,
        impact.timeS(),
        finish.map(Instant::timeS).orElse(impact.timeS() + 1.5),
        flags);
  }

  /** Address and takeaway; answers when the latter was, s. */
  private double readTakeaway() {
    boolean hands = forearm.isPresent();
    Reason takeawayWhy = hands ? Reason.NONE : Reason.of(EventReason.FROM_HAND);
    Instant begins = hands ? onBone(SwingEvent.TAKEAWAY, arm.takeaway(0)) : fromHand(arm);
    GapDoubt.Moment seen = arm.gaps().moment(begins, TAKEAWAY_S, TAKEAWAY_S);
    Instant takeaway = hands && !seen.isInGap() ? seen.at() : witnessed(seen.at(), hands);
    double addressS = takeaway.timeS() - REFERENCE_S;
    put(SwingEvent.ADDRESS, new Instant(addressS, takeaway.sdS()), seen, takeawayWhy);
    put(SwingEvent.TAKEAWAY, takeaway, seen, takeawayWhy);
    return takeaway.timeS();
  }

  /** When the bone did what its unit showed; a filter's lag is known no better than by its size. */
  private Instant onBone(SwingEvent event, Instant shown) {
    lateS.put(event, SKIN_LAG_S + filterS());
    return shown.earlier(SKIN_LAG_S + filterS(), Math.hypot(SKIN_LAG_SD_S, filterS()));
  }

  /** A blow goes through the bone; it shows with the foot of the filter's answer. */
  private Instant blown(Instant shown) {
    double footS = FOOT_PART * filterS();
    lateS.put(SwingEvent.IMPACT, footS);
    return shown.earlier(footS, footS);
  }

  private double filterS() {
    return FILTER_LAG_STEPS / armUnit.stream().facts().nominalRateHz();
  }

  /** Forearm level on the way up, and top; answers when the top was, s. */
  private double readTop(StrokeShape shape) {
    boolean hands = forearm.isPresent();
    Instant top =
        hands
            ? onBone(SwingEvent.TOP, arm.top(pull(shape.topS())))
            : arm.top(HAND_TOP_RAD_PER_S).and(HAND_TOP_SD_S);
    GapDoubt.Moment atTop = arm.gaps().moment(top, SMOOTH_S, SMOOTH_S);
    put(
        SwingEvent.TOP,
        atTop.at(),
        atTop,
        hands ? Reason.NONE : Reason.of(EventReason.TOP_FROM_HAND));
    double alignmentSd = alignment.longAxisSdRad();
    height.ifPresent(
        h ->
            h.levelUp(arm.takeawayS(), arm.timeS(shape.top()), alignmentSd)
                .ifPresent(i -> putLevel(SwingEvent.LEAD_ARM_LEVEL_BACK, h, i)));
    return atTop.at().timeS();
  }

  /** What a wrist that still cocks adds to the rate of the skin above it, rad/s. */
  private double pull(double timeS) {
    return SKIN_PULL * Math.abs(hand.map(h -> h.inPlaneRadPerS(timeS)).orElse(0.0));
  }

  /**
   * What hand and hips say of a takeaway that the forearm did not see. Where it saw a slow one,
   * they know no better: a hand may be well under way while the arm still creeps.
   */
  private Instant witnessed(Instant own, boolean hands) {
    Optional<Instant> atHand =
        hand.filter(h -> hands).map(h -> h.gaps().moment(fromHand(h), TAKEAWAY_S, TAKEAWAY_S).at());
    Optional<Instant> atHips =
        hips.flatMap(p -> p.leaves(arm.takeawayS() - HIPS_BEFORE_S / 2, arm.shape().topS()));
    Instant both = atHand.map(own::with).orElse(own);
    return atHips.map(both::with).orElse(both);
  }

  private static Instant fromHand(ArmMotion hand) {
    return hand.takeaway(HAND_RAD_PER_S).and(HAND_TAKEAWAY_SD_S);
  }

  private void readDown(ArmMotion.Span down) {
    height.ifPresent(h -> readArmLevels(h, down.toS()));
    Optional<Instant> seen =
        recording
            .unit(BodyPoint.CLUB_SHAFT)
            .flatMap(s -> ShaftLevel.seen(s, biases.radPerS(s.point()), arm.takeawayS(), down));
    seen.ifPresent(i -> put(SwingEvent.SHAFT_LEVEL_DOWN, i, Reason.NONE));
    if (seen.isEmpty()) {
      Reason why = Reason.of(EventReason.SHAFT_FROM_HAND);
      hand.ifPresent(
          h ->
              ShaftLevel.carried(h, recording.player().handed().sign(), down)
                  .ifPresent(i -> put(SwingEvent.SHAFT_LEVEL_DOWN, h.gaps(), i, why)));
    }
  }

  private void readArmLevels(ArmHeight forearm, double impactS) {
    double alignmentSd = alignment.longAxisSdRad();
    forearm
        .levelDown(arm.timeS(arm.shape().top()), impactS, alignmentSd)
        .ifPresent(i -> putLevel(SwingEvent.LEAD_ARM_LEVEL_DOWN, forearm, i));
    forearm
        .levelUp(impactS, Double.POSITIVE_INFINITY, alignmentSd)
        .ifPresent(i -> putLevel(SwingEvent.LEAD_ARM_LEVEL_THROUGH, forearm, i));
  }

  private Optional<PelvisMotion> hips() {
    int sign = recording.player().handed().sign();
    double fromS = arm.takeawayS() - HIPS_BEFORE_S;
    double toS = impactSpan().toS() + HIPS_AFTER_S;
    return recording
        .unit(BodyPoint.PELVIS)
        .flatMap(s -> PelvisMotion.over(s, biases.radPerS(s.point()), fromS, toS, sign));
  }

  private ArmMotion.Span impactSpan() {
    StrokeShape shape = arm.shape();
    double peakS = arm.timeS(shape.peak());
    double endS = arm.timeS(Math.min(shape.end(), arm.track().size() - 1));
    return new ArmMotion.Span(shape.topS() + 0.06, Math.min(endS, peakS + 0.3));
  }

  private Instant virtualImpact() {
    ArmMotion.Span where = impactSpan();
    double sdS = forearm.isPresent() ? VIRTUAL_SD_S : 3 * VIRTUAL_SD_S;
    double turnedSd = arm.gaps().turnSdRad(arm.takeawayS(), where.toS());
    double turnedS = turnedSd / arm.peakRadPerS();
    Instant back = new Instant(arm.nearestReturnS(where), Math.hypot(sdS, turnedS));
    return arm.gaps().moment(back, SMOOTH_S, SMOOTH_S).at();
  }

  /** The later of the moments from which arm and pelvis hold still. */
  private Optional<Instant> readFinish(double impactS) {
    Optional<Instant> arms = still(armUnit.stream(), impactS);
    Optional<Instant> hips = recording.unit(BodyPoint.PELVIS).flatMap(p -> still(p, impactS));
    Optional<Instant> finish = arms.map(a -> hips.filter(h -> h.timeS() > a.timeS()).orElse(a));
    finish.ifPresentOrElse(
        i -> put(SwingEvent.FINISH, i, Reason.NONE), () -> flags.add("finish-not-held"));
    return finish;
  }

  private Optional<Instant> still(UnitStream stream, double impactS) {
    return Finish.find(
        stream, biases.radPerS(stream.point()), impactS + 0.2, impactS + FINISH_WITHIN_S);
  }

  private void noteGaps(double impactS) {
    double fromS = arm.takeawayS() - ADDRESS_S;
    boolean isLost =
        recording.units().stream()
            .filter(u -> ARM.contains(u.point()))
            .map(u -> Unseen.ofBoth(u.between(fromS - 1, impactS + 1)))
            .anyMatch(u -> u.touches(fromS, impactS + AFTER_IMPACT_S));
    if (isLost) {
      flags.add("arm-gap");
    }
  }

  private void putLevel(SwingEvent event, ArmHeight forearm, Instant shown) {
    put(event, forearm.gaps(), onBone(event, shown), Reason.NONE);
  }

  /** A moment that two samples of a unit lie around. */
  private void put(SwingEvent event, GapDoubt gaps, Instant at, Reason why) {
    GapDoubt.Moment moment = gaps.moment(at, 0, 0);
    put(event, moment.at(), moment, why);
  }

  private void put(SwingEvent event, Instant at, GapDoubt.Moment moment, Reason why) {
    put(event, at, moment.isInGap() && why.isNone() ? Reason.of(EventReason.GAP) : why);
  }

  private void put(SwingEvent event, Instant at, Reason why) {
    events.put(
        event,
        new EventTime(
            event,
            at.timeS(),
            at.sdS(),
            why.isNone() ? Grade.MEASURED : Grade.ESTIMATED,
            why,
            lateS.getOrDefault(event, 0.0)));
  }
}
