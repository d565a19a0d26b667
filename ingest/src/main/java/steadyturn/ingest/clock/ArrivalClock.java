package steadyturn.ingest.clock;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Tells when the samples of a unit without a clock were taken, from the arrivals of their blocks.
 * Nothing arrives before it was taken, so the line of times lies under all arrivals ({@link
 * LowerEnvelope}); its slope is the unit's true rate. Samples are held back until the rate is
 * known, and then for {@link #LOOK_S}: where all that comes after a block is late by a sample or
 * more, and so late too often to be chance, samples were lost before it. They leave a gap there.
 * Times never go back, and follow better knowledge slowly.
 */
public final class ArrivalClock {

  /** So long is learned before the first sample gets its time, s. */
  private static final double LEARN_S = 2;

  private static final int ENOUGH_BLOCKS = 8;

  /** With fewer blocks it ends all the same, s. */
  private static final double LEARN_AT_MOST_S = 10;

  /** A stillness before the rate is known begins it anew, s. */
  private static final double LONGEST_STILL_S = 0.5;

  /** A rate wanders with the unit's temperature: what is older than this tells nothing, s. */
  private static final double WINDOW_S = 30;

  private static final double STRETCH_S = 0.1;

  private static final double REFIT_S = 0.25;

  /** After a break the rate from before it is surer until so much was seen again, at most, s. */
  private static final double ENOUGH_FOR_RATE_S = 10;

  /** So long a sample waits for what arrives after it, s: our choice, what a listener may wait. */
  private static final double LOOK_S = 1;

  /** All blocks late by chance: rarer than this is a loss. */
  private static final double CHANCE = 1e-5;

  /** What came before is looked at so far back, s. */
  private static final double BEFORE_S = 2;

  /** A line under m stretches lies too high by some three of their spreads over m; and surely. */
  private static final double SURE = 3 * 3;

  /** Up to so many samples lost leave their own lengths, more a gap as long as it looks. */
  private static final int FEW = 10;

  /** So much lateness of all blocks is a loss, in samples. */
  private static final double LOST_SAMPLES = 0.5;

  private static final double RECENT_S = 2;

  /** Times follow what is known better within so long, s, and change their pace at most so much. */
  private static final double FOLLOW_S = 2;

  private static final double MOST_PACE = 0.5;

  /** Samples counted so far ahead of their arrival were not there, s. */
  private static final double MOST_AHEAD_S = 0.5;

  private static final double LEAST_STEP_S = 1e-6;

  /** So many samples were there when a block had come. */
  private record Block(long count, double hostS) {}

  private final ArrayDeque<Block> held = new ArrayDeque<>();
  private LowerEnvelope envelope = new LowerEnvelope(STRETCH_S);
  private boolean isKnown;
  private boolean isCut;
  private boolean isAnew = true;
  private long count;
  private long timed;
  private double countStepS;
  private double gapsS;
  private double offsetS;
  private double slope;
  private double rateSeenS;
  private double lastS = Double.NEGATIVE_INFINITY;
  private double refitAtS;

  /**
   * A block came with so many samples, those that its counter missed among them.
   *
   * @param hostS the host's steady clock, s
   * @return the host's times at which the next samples were taken, s: of none while they are held
   *     back, else of all that have no time yet
   */
  public double[] came(int samples, double hostS) {
    List<double[]> out = new ArrayList<>();
    if (!isKnown && !held.isEmpty() && hostS - held.getLast().hostS > LONGEST_STILL_S) {
      out.add(cut());
    }
    count += samples;
    Block block = new Block(count, hostS);
    if (!isKnown) {
      held.add(block);
      out.add(learn());
    } else {
      if (lateS(block) < -MOST_AHEAD_S) {
        out.add(releaseUntil(Double.POSITIVE_INFINITY));
        begunAnew(lateS(block));
      }
      held.add(block);
      out.add(releaseUntil(hostS - LOOK_S));
    }
    return out.stream().flatMapToDouble(Arrays::stream).toArray();
  }

  /** The way was cut, or ends: what is held back gets its times by what is known. */
  public double[] cut() {
    if (!isKnown && !held.isEmpty()) {
      fitFirst();
    }
    double[] out = isKnown ? releaseUntil(Double.POSITIVE_INFINITY) : releaseAll();
    isCut = true;
    return out;
  }

  /** Samples a second as learned; NaN until then. */
  public double rateHz() {
    return isKnown ? 1 / (countStepS * (1 + slope)) : Double.NaN;
  }

  /** What that rate is worth, relative: the spread over half the time that was seen. */
  public double rateSpread() {
    return isKnown
        ? spreadS() / (Math.max(envelope.spanS(), LEARN_S) / 2)
        : Double.POSITIVE_INFINITY;
  }

  /** How far the least delays lie above their line, s: what a time is worth. */
  public double spreadS() {
    return envelope.medianAboveS(new double[] {offsetS, slope});
  }

  private double[] learn() {
    double lengthS = held.getLast().hostS - held.getFirst().hostS;
    boolean isEnough = lengthS >= LEARN_S && held.size() >= ENOUGH_BLOCKS;
    if (!isEnough && lengthS < LEARN_AT_MOST_S) {
      return new double[0];
    }
    fitFirst();
    isKnown = true;
    return releaseAll();
  }

  /** The line under the first blocks; the first block's own number of samples tells no rate. */
  private void fitFirst() {
    Block first = held.getFirst();
    Block last = held.getLast();
    countStepS =
        (last.hostS - first.hostS) / Math.max(1, (last.count - first.count)); // none of one block
    envelope = new LowerEnvelope(STRETCH_S);
    held.forEach(b -> envelope.add(atS(b.count), b.hostS - atS(b.count)));
    rateSeenS = 0;
    isCut = false;
    isAnew = true;
    fit();
    refitAtS = atS(last.count);
  }

  /** Gives times to what came until then. */
  private double[] releaseUntil(double hostS) {
    List<double[]> out = new ArrayList<>();
    while (!held.isEmpty() && held.getFirst().hostS <= hostS) {
      mendLoss();
      Block first = held.removeFirst();
      envelope.add(atS(first.count), first.hostS - atS(first.count));
      if (atS(first.count) - refitAtS > REFIT_S) {
        refit(atS(first.count));
      }
      out.add(release(first.count));
    }
    return out.stream().flatMapToDouble(Arrays::stream).toArray();
  }

  private double[] releaseAll() {
    held.clear();
    return release(count);
  }

  /** What was lost before the first held block leaves its gap. */
  private void mendLoss() {
    double leastS = held.stream().mapToDouble(this::lateS).min().orElse(0);
    if (isCut) {
      begunAnew(leastS);
      return;
    }
    double nowS = atS(held.getFirst().count);
    double beforeS = envelope.least(slope, nowS - BEFORE_S) - offsetS;
    double laterS = leastS - beforeS;
    int lost = (int) (laterS / countStepS + 1 - LOST_SAMPLES);
    boolean isLoss =
        lost > 0
            && envelope.spanS() > BEFORE_S / 2
            && laterS > LOST_SAMPLES * countStepS + drawnOnS()
            && isNoChance(new double[] {offsetS + beforeS, slope}, laterS);
    if (isLoss && lost > FEW) {
      begunAnew(leastS);
    } else if (isLoss) {
      gapsS += lost * countStepS;
      lastS += lost * countStepS * (1 + slope);
    }
  }

  /** How wrong the rate may make it: a sample may be lost in what it was learned from, s. */
  private double drawnOnS() {
    double spanS = Math.max(envelope.spanS(), LEARN_S);
    return (countStepS + SURE * spreadS() / envelope.size()) * (LOOK_S + BEFORE_S) / 2 / spanS;
  }

  /**
   * Whether the held blocks are later than a line too often for chance. Those later still by
   * another loss tell nothing; neighbours share their way, so that stretches count, not blocks.
   */
  private boolean isNoChance(double[] line, double laterS) {
    double mostS = laterS + envelope.mostAboveS(line);
    long seen =
        held.stream()
            .filter(b -> b.hostS - atS(b.count) * (1 + line[1]) - line[0] <= mostS)
            .mapToLong(b -> (long) Math.floor(atS(b.count) / STRETCH_S))
            .distinct()
            .count();
    return Math.pow(envelope.shareAbove(line, laterS), (double) seen) < CHANCE;
  }

  /** From the held samples on all is later by a gap; the rate stays. */
  private void begunAnew(double gapS) {
    gapsS += gapS / (1 + slope);
    envelope = new LowerEnvelope(STRETCH_S);
    refitAtS = held.isEmpty() ? refitAtS : atS(held.getFirst().count) + LOOK_S;
    isCut = false;
    isAnew = true;
  }

  private void refit(double nowS) {
    refitAtS = nowS;
    envelope.forgetBefore(nowS - WINDOW_S);
    double staysLateS = envelope.least(slope, nowS - RECENT_S) - offsetS;
    if (staysLateS > Math.max(LOST_SAMPLES * countStepS, spreadS())) {
      envelope.forgetBefore(nowS - RECENT_S);
      isAnew = true;
    }
    fit();
  }

  private void fit() {
    double spanS = envelope.spanS();
    boolean tellsRate = spanS >= rateSeenS;
    double[] line = tellsRate ? envelope.line() : new double[] {envelope.least(slope), slope};
    rateSeenS = Math.min(ENOUGH_FOR_RATE_S, Math.max(rateSeenS, spanS));
    offsetS = line[0];
    slope = line[1];
  }

  /** The unit's time by its number of samples, before the rate is bettered, s. */
  private double atS(long samples) {
    return samples * countStepS + gapsS;
  }

  private double lineS(long samples) {
    return atS(samples) * (1 + slope) + offsetS;
  }

  private double lateS(Block block) {
    return block.hostS - lineS(block.count);
  }

  /** Times of the samples up to this one that have none: evenly, and towards the line. */
  private double[] release(long upTo) {
    int n = (int) (upTo - timed);
    double[] out = new double[n];
    double stepS = countStepS * (1 + slope);
    double paceS = stepS;
    if (!isAnew && n > 0) {
      double behindS = lineS(upTo) - lastS - n * stepS;
      double changeS = behindS * Math.min(1, n * stepS / FOLLOW_S) / n;
      paceS += Math.max(-MOST_PACE * stepS, Math.min(MOST_PACE * stepS, changeS));
    }
    for (int i = 0; i < n; i++) {
      double nextS = isAnew ? lineS(timed + i + 1) : lastS + paceS;
      out[i] = Math.max(nextS, lastS + LEAST_STEP_S);
      lastS = out[i];
    }
    timed = upTo;
    isAnew = false;
    return out;
  }
}
