package steadyturn.analysis.compare;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * In which order to hit clubs so that warming up, tiring and a unit that slips fall on all of them
 * alike. Each club once a round; a round and the one before it are mirror images, and four rounds
 * go there, back, back, there: so the balls of every club have the same mean place, and a steady
 * drift cancels in each difference. After four rounds another club begins.
 *
 * @param rounds in the order of hitting
 */
public record HitOrder(List<List<Stint>> rounds) {

  /** So many balls with a club before the next, about: changing after each is a nuisance. */
  private static final int BALLS_A_STINT = 3;

  /** Balls with one club, one after the other. */
  public record Stint(String club, int balls) {}

  public HitOrder {
    rounds = rounds.stream().map(List::copyOf).toList();
  }

  /**
   * Lays out a session.
   *
   * @param ballsEach with each club at least; rounded up to full rounds
   */
  public static HitOrder of(List<String> clubs, int ballsEach) {
    if (clubs.size() < 2 || clubs.stream().distinct().count() < clubs.size() || ballsEach < 2) {
      throw new IllegalArgumentException(
          "needs two clubs or more, each once, and two balls each, got "
              + clubs
              + " and "
              + ballsEach);
    }
    int rounds =
        ballsEach < 4 * (BALLS_A_STINT - 1)
            ? 2
            : 4 * Math.max(1, Math.round(ballsEach / (4f * BALLS_A_STINT)));
    int balls = (ballsEach + rounds - 1) / rounds;
    List<List<Stint>> order = new ArrayList<>();
    for (int round = 0; round < rounds; round++) {
      List<String> turn = new ArrayList<>(clubs);
      Collections.rotate(turn, -(round / 4));
      if (round % 4 == 1 || round % 4 == 2) {
        Collections.reverse(turn);
      }
      order.add(turn.stream().map(club -> new Stint(club, balls)).toList());
    }
    return new HitOrder(order);
  }

  /** Balls with each club. */
  public int ballsEach() {
    return rounds.size() * rounds.get(0).get(0).balls();
  }

  /** The club of every ball, in order. */
  public List<String> balls() {
    return rounds.stream()
        .flatMap(List::stream)
        .flatMap(stint -> Collections.nCopies(stint.balls(), stint.club()).stream())
        .toList();
  }
}
