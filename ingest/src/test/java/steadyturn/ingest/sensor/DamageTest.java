package steadyturn.ingest.sensor;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import steadyturn.ingest.sensor.frame.TextLineAdapter;

class DamageTest {

  @ParameterizedTest
  @EnumSource(Damage.Protocol.class)
  void thousandsOfDamagedPiecesInventNoMoreThanTheCheckLetsThrough(Damage.Protocol protocol) {
    // The short form of a run over ten million (main method of Damage). Expect: no sample where the
    // check has 24 bits, twice the share of chance below; where there is none, no promise.
    // Exchanged
    // bytes are apart: the sums of 8 bits do not see the order of what they add.
    int pieces = protocol.sendsOnlySamples() ? 20_000 : 8_000;
    Damage.Tally tally = Damage.run(protocol, pieces, 42);
    boolean isSum = protocol.check == FrameCheck.BITS_8;
    double most = protocol.check == FrameCheck.BITS_24 ? 0 : pieces * protocol.check.mostInvented();
    assertThat(tally.invented() - (isSum ? tally.inventedByExchange() : 0))
        .isLessThanOrEqualTo((long) most);
    assertThat(tally.unaccountedBytes()).isZero();
    assertThat(tally.damaged()).isEqualTo(pieces);
    // Every second piece is whole; some of those are drawn in by a damaged neighbour.
    assertThat(tally.read()).isBetween(pieces / 3L, 2L * pieces);
    assertThat(tally.skippedBytes()).isPositive();
  }

  @Test
  void aRestThatNeverEndsIsPassedOver() {
    KeptSamples kept = new KeptSamples();
    AdapterFeed feed = new AdapterFeed(new TextLineAdapter(), kept);
    byte[] endless = new byte[10_000];
    java.util.Arrays.fill(endless, (byte) 'a');
    for (int k = 0; k < 100; k++) {
      feed.feed(endless, endless.length);
    }
    feed.forgetRest();
    assertThat(kept.skippedBytes).isEqualTo(1_000_000);
  }
}
