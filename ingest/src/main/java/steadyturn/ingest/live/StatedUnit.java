package steadyturn.ingest.live;

import java.util.Optional;
import steadyturn.ingest.sensor.KnownUnit;
import steadyturn.ingest.sensor.UnitHello;

/**
 * What a unit says of itself, and what of that holds for its table: what was said first, as the
 * samples on the disk were taken with it. A unit that lost its power comes back with other ranges.
 */
final class StatedUnit {

  private Optional<UnitHello> hello = Optional.empty();
  private KnownUnit known = KnownUnit.NOTHING;
  private KnownUnit helloOfTable = KnownUnit.NOTHING;
  private KnownUnit knownOfTable = KnownUnit.NOTHING;
  private boolean isLessThanTable;

  /** Takes a hello; whether it says something new. */
  boolean isNews(UnitHello said) {
    boolean isNews = hello.filter(said::equals).isEmpty();
    hello = Optional.of(said);
    return isNews && compare();
  }

  /** Takes what is known without one; whether it is new. */
  boolean isNews(KnownUnit told) {
    boolean isNews = !told.equals(known);
    known = told;
    return isNews && compare();
  }

  Optional<UnitHello> hello() {
    return hello;
  }

  /** What it says now; what it says in a hello goes before what is known besides. */
  KnownUnit now() {
    return ofHello().or(known);
  }

  /** What holds for the samples of its table. */
  KnownUnit ofTable() {
    return helloOfTable.or(knownOfTable);
  }

  /** The table is begun, or goes on: what it did not know before is now said of it. */
  void holdForTable() {
    helloOfTable = helloOfTable.or(ofHello());
    knownOfTable = knownOfTable.or(known);
    compare();
  }

  /** Whether it runs slower, or with narrower ranges, than the same source said of the table. */
  boolean isLessThanTable() {
    return isLessThanTable;
  }

  /** Whether it runs faster, or with wider ranges. */
  boolean isMoreThanTable() {
    return helloOfTable.isLessThan(ofHello()) || knownOfTable.isLessThan(known);
  }

  private boolean compare() {
    isLessThanTable = ofHello().isLessThan(helloOfTable) || known.isLessThan(knownOfTable);
    return true;
  }

  private KnownUnit ofHello() {
    return hello.map(UnitHello::known).orElse(KnownUnit.NOTHING);
  }
}
