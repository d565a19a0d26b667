package steadyturn.ingest.clock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Tells when the samples of a unit without a clock were taken, from the arrivals of their blocks.
 * Nothing arrives before it was taken, so the line of times lies under all arrivals ({@link
 * LowerEnvelope}); its slope is the unit's true rate. Until the rate is known, and while blocks
 * come so late that samples may be missing, samples are held back; a block that stays late shows an
 * outage, whose length is its least lateness. Times never go back, and follow better knowledge
 * slowly.
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

  /** Lateness beyond so many times the usual is looked into; and beyond so many samples, and s. */
  private static final double LATE = 3;

  private static final double LATE_SAMPLES = 1.5;
  private static final double LATE_S = 0.03;

  /** When lateness has not become less for so long, samples are missing, s. */
  private static final double DOUBT_S = 0.7;

  private static final double LESS_S = 0.005;

  /** So much lateness of all blocks of {@link #RECENT_S} is a loss, in samples. */
  private static final double LOST_SAMPLES = 0.75;

  private static final double RECENT_S = 2;

  /** Times follow what is known better within so long, s, and change their pace at most so much. */
  private static final double FOLLOW_S = 2;

  private static final double MOST_PACE = 0.5;

  /** Samples counted so far ahead of their arrival were not there, s. */
  private static final double MOST_AHEAD_S = 0.5;

  private static final double LEAST_STEP_S = 1e-6;
  private static final int LATENESSES = 256;

  /** So many samples were there when a block had come. */
  private record Block(long count, double hostS) {}

  private final List<Block> held = new ArrayList<>();
  private final double[] latenesses = new double[LATENESSES];
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
  private double leastLateS;
  private double leastLateAtS;
  private long blocks;
  private double usualLateS;
  private double refitAtS;

  /**
   * A block came with so many samples, those that its counter missed among them.
   *
   * @param hostS the host's steady clock, s
   * @return the host's times at which the next samples were taken, s: of none while they are held
   *     back, else of all that have no time yet
   */
  public double[] came(int samples, double hostS) {
    double[] before = new double[0];
    if (!isKnown && !held.isEmpty() && hostS - lastHeld().hostS > LONGEST_STILL_S) {
      before = cut();
    }
    count += samples;
    double[] now = isKnown ? follow(new Block(count, hostS)) : learn(new Block(count, hostS));
    return joined(before, now);
  }

  /** The way was cut, or ends: what is held back gets its times by what is known. */
  public double[] cut() {
    if (!held.isEmpty() && isKnown) {
      begunAnew(leastLateS);
    } else if (!held.isEmpty()) {
      fitFirst();
    }
    double[] out = release();
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

  private double[] learn(Block block) {
    held.add(block);
    double lengthS = block.hostS - held.get(0).hostS;
    boolean isEnough = lengthS >= LEARN_S && held.size() >= ENOUGH_BLOCKS;
    if (!isEnough && lengthS < LEARN_AT_MOST_S) {
      return new double[0];
    }
    fitFirst();
    isKnown = true;
    return release();
  }

  /** The line under the first blocks; the first block's own number of samples tells no rate. */
  private void fitFirst() {
    Block first = held.get(0);
    Block last = lastHeld();
    countStepS =
        (last.hostS - first.hostS) / Math.max(1, (last.count - first.count)); // none of one block
    envelope = new LowerEnvelope(STRETCH_S);
    held.forEach(b -> envelope.add(atS(b.count), b.hostS - atS(b.count)));
    rateSeenS = 0;
    isCut = false;
    isAnew = true;
    fit();
    held.forEach(this::noteLate);
    usual();
    refitAtS = atS(last.count);
  }

  private double[] follow(Block block) {
    double lateS = lateS(block);
    if (lateS < -MOST_AHEAD_S) {
      begunAnew(lateS);
    }
    boolean isUsual = !isCut && lateS <= mostLateS();
    if (!isUsual) {
      leastLateAtS = held.isEmpty() || lateS < leastLateS - LESS_S ? block.hostS : leastLateAtS;
      leastLateS = held.isEmpty() ? lateS : Math.min(leastLateS, lateS);
    }
    held.add(block);
    if (!isUsual && block.hostS - leastLateAtS < DOUBT_S) {
      return new double[0];
    }
    if (!isUsual) {
      begunAnew(leastLateS);
    }
    held.forEach(this::seen);
    if (atS(block.count) - refitAtS > REFIT_S) {
      refit(atS(block.count));
    }
    return release();
  }

  /** From the held samples on all is later by a gap; the rate stays. */
  private void begunAnew(double gapS) {
    gapsS += gapS / (1 + slope);
    envelope = new LowerEnvelope(STRETCH_S);
    isCut = false;
    isAnew = true;
  }

  private void seen(Block block) {
    envelope.add(atS(block.count), block.hostS - atS(block.count));
    noteLate(block);
  }

  private void refit(double nowS) {
    refitAtS = nowS;
    usual();
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

  private double mostLateS() {
    return Math.max(LATE * usualLateS, LATE_SAMPLES * countStepS + LATE_S);
  }

  private void noteLate(Block block) {
    latenesses[(int) (blocks++ % LATENESSES)] = lateS(block);
  }

  private void usual() {
    double[] sorted = Arrays.copyOf(latenesses, (int) Math.min(blocks, LATENESSES));
    Arrays.sort(sorted);
    usualLateS = sorted[(int) (0.95 * (sorted.length - 1))];
  }

  /** Times of all samples that have none: evenly, and towards the line. */
  private double[] release() {
    int n = (int) (count - timed);
    double[] out = new double[n];
    double stepS = countStepS * (1 + slope);
    double paceS = stepS;
    if (!isAnew && n > 0) {
      double behindS = lineS(count) - lastS - n * stepS;
      double changeS = behindS * Math.min(1, n * stepS / FOLLOW_S) / n;
      paceS += Math.max(-MOST_PACE * stepS, Math.min(MOST_PACE * stepS, changeS));
    }
    for (int i = 0; i < n; i++) {
      double nextS = isAnew ? lineS(timed + i + 1) : lastS + paceS;
      out[i] = Math.max(nextS, lastS + LEAST_STEP_S);
      lastS = out[i];
    }
    timed = count;
    isAnew = false;
    held.clear();
    return out;
  }

  private Block lastHeld() {
    return held.get(held.size() - 1);
  }

  private static double[] joined(double[] a, double[] b) {
    double[] both = Arrays.copyOf(a, a.length + b.length);
    System.arraycopy(b, 0, both, a.length, b.length);
    return both;
  }
}
