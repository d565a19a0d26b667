package steadyturn.ingest.sensor;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class DamageTest {

  @ParameterizedTest
  @EnumSource(Damage.Protocol.class)
  void twentyThousandDamagedPiecesInventNoSampleAndLoseNoByte(Damage.Protocol protocol) {
    // The short form of a run over ten million (main method of Damage).
    Damage.Tally tally = Damage.run(protocol, 20_000, 42);
    assertThat(tally.invented()).isZero();
    assertThat(tally.unaccountedBytes()).isZero();
    assertThat(tally.damaged()).isEqualTo(20_000);
    // Every second piece is whole; some of those are drawn in by a damaged neighbour.
    assertThat(tally.read()).isBetween(10_000L, 40_000L);
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
