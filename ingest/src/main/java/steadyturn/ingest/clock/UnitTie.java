package steadyturn.ingest.clock;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.UnitStream;
import steadyturn.ingest.shock.BlowDelay;
import steadyturn.ingest.shock.Shock;

/**
 * Ties one unit's clock to another's by all witnesses there are: what was known beforehand, the
 * turning that both share, the blows that both feel. A witness moves a clock only as far as it is
 * surer than what was known, and one that contradicts the others counts for what it can be worth.
 *
 * @param fit brings the unit's times onto the other's clock
 * @param trouble that the witnesses disagree; none where they do not
 */
record UnitTie(ClockFit fit, Reason trouble) {

  /** Shocks reach the hand and the forearm as good as together (our choice). */
  private static final double ARM_DELAY_SD_S = 0.0004;

  /**
   * The trunk feels a blow through a filter of flesh, so that its onset is found late by some
   * milliseconds (our choice, besides the delay itself).
   */
  private static final double TRUNK_ONSET_SD_S = 0.0022;

  /**
   * How often a pair of shocks is not the same blow: in simulated lessons made for tuning 5 to 20
   * of 100 pairs of shocks within 60 ms lay more than 20 ms apart, the weaker the more often.
   */
  private static final double STRANGER = 0.08;

  /** No rate is stated so much off, part. */
  private static final double WRONG_RATE = 0.02;

  /** How often clocks lie farther apart than what is known of them allows (our choice). */
  private static final double WRONG = 0.001;

  /**
   * What the turning of forearm and hand is worth at best: the hand's comes 3 ms later (as made for
   * tuning), give or take 5.
   */
  private static final double TURNING_FLOOR_SD_S = 0.005;

  private static final int ENOUGH_PAIRS = 3;

  /** Fewer pairs, or few of those there are, agree by chance in a wide search. */
  private static final int MANY_PAIRS = 4;

  /** A trunk that feels no blow where they belong, but as many elsewhere, is doubted. */
  private static final int FEWEST_OF_TRUNK = 3;

  private static final double SURE = 3;
  private static final double REACH_S = 0.12;

  /** Where few blows agree, many may do farther away, s. */
  private static final double WIDE_SD_S = 0.2;

  /** Blows as clear as that are felt by both arm units. */
  private static final double CLEAR = 20;

  private static final double NEAR_S = 0.06;

  /** Found within this they are the same, s; one in so many may be another's. */
  private static final double ONSET_S = 0.002;

  private static final int STRANGERS = 4;

  /** So far apart may the two ends of a recording be that only blows can tell, s. */
  private static final double UNSEEN_SKEW_S = 0.15;

  /** The same where the shared turning has told of more, s. */
  private static final double LEFT_BY_TURNING_S = 0.02;

  /** A piece of a stream or all of it, with its shocks. */
  record Felt(UnitStream stream, List<Shock> shocks) {

    private boolean isTrunk() {
      return stream.point().isTrunk();
    }

    Felt moved(ClockFit by) {
      return new Felt(
          UnitTie.moved(stream, by),
          shocks.stream()
              .map(s -> new Shock(by.toReferenceS(s.timeS()), s.sizeMps2(), s.clarity()))
              .toList());
    }
  }

  /**
   * Ties them.
   *
   * @param guess what is tried first
   * @param known spreads of what is left after it
   */
  static UnitTie of(Felt unit, Felt other, ClockFit guess, ClockFit known) {
    boolean withTrunk = unit.isTrunk() || other.isTrunk();
    Optional<ClockFit> turning =
        withTrunk ? Optional.empty() : byTurning(unit.moved(guess).stream, other.stream, known);
    ClockFit near = turning.map(t -> behind(guess, t)).orElse(guess);
    ClockFit left = turning.map(UnitTie::spreads).orElse(known);
    Blows blows = blows(unit.moved(near), other, left, turning.isPresent());
    if (blows.pairs.isEmpty()) {
      return new UnitTie(behind(near, left), Reason.NONE);
    }
    double floorSdS =
        withTrunk ? Math.hypot(BlowDelay.TRUNK_SD_S, TRUNK_ONSET_SD_S) : ARM_DELAY_SD_S;
    ClockFit line = ClockLine.fit(blows.pairs, floorSdS, blows.open);
    // what a trunk feels in every swing may be a moment of its own movement: one witness, however
    // often it comes back
    int witnesses = withTrunk ? Math.min(1, line.pairs()) : line.pairs();
    boolean isOne = line.pairs() == 1;
    UnitTie tie = judged(near, left, line, isOne, witnesses, blows.reachS, other);
    return withTrunk ? tie : new UnitTie(honest(tie.fit, unit, other), tie.trouble);
  }

  /** Clear blows that stay apart say how wrong the clock is. */
  private static ClockFit honest(ClockFit fit, Felt unit, Felt other) {
    int felt = 0;
    int apart = 0;
    double squares = 0;
    for (Shock shock : unit.shocks) {
      double atS = fit.toReferenceS(shock.timeS());
      double nearestS =
          other.shocks.stream()
              .filter(s -> Math.min(s.clarity(), shock.clarity()) > CLEAR)
              .mapToDouble(s -> Math.abs(s.timeS() - atS))
              .min()
              .orElse(NEAR_S);
      boolean isApart = nearestS > SURE * Math.hypot(fit.sdAtS(shock.timeS()), ONSET_S);
      felt += nearestS < NEAR_S ? 1 : 0;
      apart += nearestS < NEAR_S && isApart ? 1 : 0;
      squares += nearestS < NEAR_S ? nearestS * nearestS : 0;
    }
    return apart > 1 && apart * STRANGERS > felt ? wider(fit, Math.sqrt(squares / felt)) : fit;
  }

  /**
   * Pairs of blows.
   *
   * @param reachS how far apart they were looked for
   * @param open spreads within which they were looked for
   */
  private record Blows(List<TimePair> pairs, double reachS, ClockFit open) {}

  /**
   * Sets the likeness that blows are the same against the chance that others met. Where they are
   * not believed and yet lie far off what is known, either may be right.
   *
   * @param isOne whether a single pair of several shocks says it, which may be a stray one
   * @param witnesses how many of the pairs say something of their own
   */
  private static UnitTie judged(
      ClockFit near,
      ClockFit left,
      ClockFit line,
      boolean isOne,
      int witnesses,
      double reachS,
      Felt other) {
    double awayS = line.correctionS(line.centreS());
    double sdS = Math.hypot(left.sdAtS(line.centreS()), line.sdS());
    double away = awayS / sdS;
    double anywhere = 1 / (2 * reachS);
    double same = Math.exp(-0.5 * away * away) / (sdS * Math.sqrt(2 * Math.PI)) + WRONG * anywhere;
    double strange = Math.pow(STRANGER, witnesses) * anywhere;
    double chance = strange / (strange + same);
    boolean disagree = Math.abs(away) > SURE && !isOne && chance > WRONG;
    Reason trouble =
        disagree
            ? Reason.of(
                ClockReason.DISAGREE,
                other.stream.point(),
                1000 * awayS,
                line.pairs(),
                1000 * left.sdAtS(line.centreS()))
            : Reason.NONE;
    ClockFit fit =
        chance < 0.5
            ? wider(line, Math.sqrt(chance) * Math.hypot(left.sdS(), awayS))
            : wider(left, disagree ? awayS : Math.sqrt(1 - chance) * awayS);
    return new UnitTie(behind(near, fit), trouble);
  }

  /** Of a clock that seems to jump: where the rate is not the stated one it may run wrong. */
  static ClockFit believed(UnitStream unit, ClockFit tie) {
    double times = unit.usualStepS() * unit.facts().nominalRateHz();
    return Math.abs(times - 1) < WRONG_RATE ? tie : wider(tie, WRONG_RATE * unit.lengthS());
  }

  static ClockFit wider(ClockFit fit, double sdS) {
    return new ClockFit(
        fit.offsetS(),
        fit.skewPpm(),
        fit.centreS(),
        Math.hypot(fit.sdS(), sdS),
        fit.skewSdPpm(),
        fit.pairs());
  }

  /** By shared turning, with the start where the two agree, else without it. */
  private static Optional<ClockFit> byTurning(UnitStream unit, UnitStream other, ClockFit known) {
    List<TimePair> pairs = TurningMatch.of(unit, other);
    ClockFit open = new ClockFit(0, 0, known.centreS(), 1, 2000, 0);
    ClockFit alone = pairs.isEmpty() ? open : ClockLine.fit(pairs, TURNING_FLOOR_SD_S, open);
    if (alone.pairs() < Math.max(ENOUGH_PAIRS, pairs.size() / 2)) {
      return Optional.empty();
    }
    double offS = alone.correctionS(alone.centreS());
    boolean agrees =
        Math.abs(offS) < SURE * Math.hypot(alone.sdS(), known.sdAtS(alone.centreS()))
            && Math.abs(alone.skewPpm()) < SURE * Math.hypot(alone.skewSdPpm(), known.skewSdPpm());
    return Optional.of(agrees ? ClockLine.fit(pairs, TURNING_FLOOR_SD_S, known) : alone);
  }

  private static Blows blows(Felt unit, Felt other, ClockFit left, boolean hasTurning) {
    boolean withTrunk = unit.isTrunk() || other.isTrunk();
    double reachS = hasTurning ? 4 * left.sdS() : Math.max(REACH_S, SURE * left.sdS());
    Blows near = blows(unit, other, reachS, left);
    double unseenS = hasTurning ? LEFT_BY_TURNING_S : UNSEEN_SKEW_S;
    double skewSdPpm = 1e6 * unseenS / Math.max(20, unit.stream.lengthS());
    double wideSdS = hasTurning ? left.sdS() : WIDE_SD_S;
    ClockFit open = new ClockFit(0, 0, left.centreS(), wideSdS, skewSdPpm, 0);
    Blows wide = blows(unit, other, SURE * wideSdS + (hasTurning ? unseenS : 0), open);
    int fewer = Math.min(unit.shocks.size(), other.shocks.size());
    boolean isFelt =
        near.pairs.stream().anyMatch(p -> Math.abs(p.laterS()) < SURE * left.sdAtS(p.timeS()));
    int known = withTrunk && !isFelt ? FEWEST_OF_TRUNK : MANY_PAIRS;
    int many = Math.max(known, (fewer + 1) / 2);
    int least = Math.max(near.pairs.size() + 2, many);
    return wide.pairs.size() >= least ? wide : near;
  }

  private static Blows blows(Felt unit, Felt other, double reachS, ClockFit open) {
    double sampleSdS =
        Math.hypot(unit.stream.usualStepS(), other.stream.usualStepS()) / Math.sqrt(12);
    double delayS = delayS(other) - delayS(unit);
    List<TimePair> pairs =
        ShockMatch.of(unit.shocks, other.shocks, sampleSdS, reachS, open).stream()
            .map(p -> new TimePair(p.timeS(), p.laterS() - delayS, p.sdS()))
            .toList();
    return new Blows(pairs, reachS, open);
  }

  private static double delayS(Felt felt) {
    return felt.isTrunk() ? BlowDelay.TRUNK_S : 0;
  }

  private static ClockFit spreads(ClockFit fit) {
    return new ClockFit(0, 0, fit.centreS(), fit.sdS(), fit.skewSdPpm(), fit.pairs());
  }

  /** One correction behind another, with the spreads of the second. */
  private static ClockFit behind(ClockFit first, ClockFit second) {
    ClockFit both = first.then(second);
    return new ClockFit(
        both.offsetS(),
        both.skewPpm(),
        second.centreS(),
        second.sdS(),
        second.skewSdPpm(),
        second.pairs());
  }

  static UnitStream moved(UnitStream unit, ClockFit fit) {
    return unit.withTimes(Arrays.stream(unit.timeColumnS()).map(fit::toReferenceS).toArray());
  }
}
