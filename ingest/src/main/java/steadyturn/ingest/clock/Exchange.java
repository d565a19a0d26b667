package steadyturn.ingest.clock;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * One question and answer between two clocks (RFC 5905, the protocol of network time): asked and
 * answered on the first clock, received and sent on the second.
 *
 * @param askedS first clock, s
 * @param receivedS second clock, s
 * @param sentS second clock, s
 * @param answeredS first clock, s
 */
public record Exchange(double askedS, double receivedS, double sentS, double answeredS) {

  /**
   * What is to be added to the first clock to get the second, s; wrong by at most half the delay.
   */
  public double offsetS() {
    return ((receivedS - askedS) + (sentS - answeredS)) / 2;
  }

  /** Time on the way, there and back, s. */
  public double delayS() {
    return (answeredS - askedS) - (sentS - receivedS);
  }

  /** The exchange with the least delay, whose offset is the surest. */
  public static Optional<Exchange> surest(List<Exchange> exchanges) {
    return exchanges.stream().min(Comparator.comparingDouble(Exchange::delayS));
  }
}
