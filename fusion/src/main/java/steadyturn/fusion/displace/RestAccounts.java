package steadyturn.fusion.displace;

import java.util.List;
import java.util.Optional;

/**
 * What a swing costs between two rests, from a drifting address, to an unheld finish: the sum of
 * squared contradictions to each account.
 *
 * @param leastGain by how much a drift must explain it better
 */
public record RestAccounts(double still, double moving, double unheld, double leastGain) {

  /** Twice the log of how much better another account of a swing must be than two rests. */
  public static final double EVIDENCE = 40;

  /**
   * So much better where the velocity at address goes there and back as sway does, and so many
   * times as much as the player's sway is wider than assumed (our choice, as the next).
   */
  private static final double EVIDENCE_AGAINST_SWAY = 100;

  /** What lasts of the velocity for half a second is sway up to so many times its spread. */
  private static final double LASTS = 1.6;

  /** Nobody is taken to stand calmer than this, m/s. */
  private static final double CALM_MPS = 0.005;

  /**
   * Accounts of a swing.
   *
   * @param sway at address, where it was seen
   */
  public static RestAccounts of(
      double still, double moving, double unheld, Optional<RestSway> sway) {
    return new RestAccounts(
        still, moving, unheld, sway.map(RestAccounts::leastGain).orElse(EVIDENCE));
  }

  /** Sway contradicts a rest as a drift does, and the longer the more; but it comes back soon. */
  private static double leastGain(RestSway sway) {
    double times = Math.max(1, sway.levelMps() / Anchor.ADDRESS_SWAY_MPS);
    boolean lasts = sway.lastingMps() > LASTS * Math.max(CALM_MPS, sway.levelMps());
    return lasts ? EVIDENCE : EVIDENCE_AGAINST_SWAY * times * times;
  }

  /** Whether a drifting address explains it much better, and no worse than an unheld finish. */
  public boolean drifts() {
    return still - moving > leastGain && still - moving > still - unheld - EVIDENCE / 2;
  }

  /**
   * Whether the player of these swings drifts: one says so clearly, or two and more than half lean
   * to it, as sway does not do so in most.
   */
  public static boolean areOfDrifting(List<RestAccounts> swings) {
    long leaning = swings.stream().filter(RestAccounts::leansToDrift).count();
    return swings.stream().anyMatch(RestAccounts::drifts)
        || (leaning > 1 && 2 * leaning > swings.size());
  }

  private boolean leansToDrift() {
    return still - moving > Math.max(EVIDENCE, leastGain * EVIDENCE / EVIDENCE_AGAINST_SWAY);
  }

  /** Whether an unheld finish explains it much better, and no worse than a drifting address. */
  public boolean movesOn() {
    return still - unheld > EVIDENCE && still - unheld > still - moving - EVIDENCE / 2;
  }

  /**
   * Whether this swing drifted like another of the lesson: it says so less clearly, or rests do not
   * explain it and a drift does not either.
   */
  public boolean mayDrift() {
    return still - moving > EVIDENCE / 4 || Math.min(still, moving) > EVIDENCE;
  }
}
