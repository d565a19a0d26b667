package steadyturn.ingest.clock;

import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;
import steadyturn.ingest.sample.BodyPoint;

/**
 * One unit's clock against another's, over a stretch of time.
 *
 * @param unit whose clock it is
 * @param tiedTo against whose clock
 * @param fit brings times of the first onto the clock of the second
 * @param fromS begin of the stretch on the reference clock, s; before it an earlier link holds
 */
public record ClockLink(BodyPoint unit, BodyPoint tiedTo, ClockFit fit, double fromS) {

  /** From the beginning on. */
  ClockLink(BodyPoint unit, BodyPoint tiedTo, ClockFit fit) {
    this(unit, tiedTo, fit, Double.NEGATIVE_INFINITY);
  }

  /** The same links, and from a time on looser ones in place of some of them. */
  static List<ClockLink> loosened(
      List<ClockLink> links, Predicate<ClockLink> which, double sdS, double fromS) {
    return links.stream()
        .flatMap(
            l ->
                which.test(l)
                    ? Stream.of(
                        l, new ClockLink(l.unit, l.tiedTo, UnitTie.wider(l.fit, sdS), fromS))
                    : Stream.of(l))
        .toList();
  }

  ClockLink doubted(double sdS) {
    return new ClockLink(unit, tiedTo, UnitTie.wider(fit, sdS), fromS);
  }
}
