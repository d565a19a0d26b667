package steadyturn.ingest.live;

import java.util.Optional;
import steadyturn.ingest.sensor.KnownUnit;
import steadyturn.ingest.sensor.UnitHello;

/**
 * What a unit says of itself, and what of that holds for its table: what was said first, as the
 * samples on the disk were taken with it. A unit that lost its power comes back with other ranges;
 * what it says before it is set up counts only until it says more.
 */
final class StatedUnit {

  /** What comes of one source, a hello or what is known without one. */
  private static final class Said {
    private KnownUnit now = KnownUnit.NOTHING;
    private KnownUnit ofTable = KnownUnit.NOTHING;
    private boolean isStale;
    private boolean isProvisional;

    boolean isNews(KnownUnit told, boolean isWaiting) {
      boolean isNews = !told.equals(now) || (isStale && !isWaiting);
      now = told;
      isStale = isWaiting;
      return isNews;
    }

    void holdForTable() {
      if (isProvisional && !isStale) {
        ofTable = KnownUnit.NOTHING;
        isProvisional = false;
      }
      isProvisional |= isStale && ofTable.equals(KnownUnit.NOTHING);
      ofTable = ofTable.or(now);
    }

    boolean isLess() {
      return !isStale && now.isLessThan(ofTable);
    }

    boolean isMore() {
      return !isStale && ofTable.isLessThan(now);
    }
  }

  private final Said byHello = new Said();
  private final Said otherwise = new Said();
  private Optional<UnitHello> hello = Optional.empty();

  /**
   * Takes a hello; whether it says something new.
   *
   * @param isWaiting whether the unit waits to be set up
   */
  boolean isNews(UnitHello said, boolean isWaiting) {
    boolean isRenamed = hello.filter(before -> before.name().equals(said.name())).isEmpty();
    hello = Optional.of(said);
    return byHello.isNews(said.known(), isWaiting) || isRenamed;
  }

  /** Takes what is known without one; whether it is new. */
  boolean isNews(KnownUnit told, boolean isWaiting) {
    return otherwise.isNews(told, isWaiting);
  }

  Optional<UnitHello> hello() {
    return hello;
  }

  /** What it says now; what it says in a hello goes before what is known besides. */
  KnownUnit now() {
    return byHello.now.or(otherwise.now);
  }

  /** What holds for the samples of its table. */
  KnownUnit ofTable() {
    return byHello.ofTable.or(otherwise.ofTable);
  }

  /** The table is begun, or goes on: what it did not know before is now said of it. */
  void holdForTable() {
    byHello.holdForTable();
    otherwise.holdForTable();
  }

  /** Whether it runs slower, or with narrower ranges, than the same source said of the table. */
  boolean isLessThanTable() {
    return byHello.isLess() || otherwise.isLess();
  }

  /** Whether it runs faster, or with wider ranges. */
  boolean isMoreThanTable() {
    return byHello.isMore() || otherwise.isMore();
  }
}
