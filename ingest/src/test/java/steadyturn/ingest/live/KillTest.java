package steadyturn.ingest.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class KillTest {

  @TempDir private Path folder;

  @BeforeAll
  static void needsSocat() {
    Socat.require();
  }

  @Test
  void aKilledRecorderLeavesADatasetThatLacksAtMostOneSecond() throws Exception {
    // The short form of fifty kills with three units (main method of KillRun). Given: seed 5, one
    // unit
    // at 1 kHz, signal 9 somewhere in the second second. Expect: the dataset opens, every sample in
    // it was sent, and none older than a second is missing.
    for (KillRun.Left left : KillRun.kill(folder, 2, 1, 1, 5)) {
      assertThat(left.lackingS()).isLessThan(1);
      assertThat(left.invented()).isZero();
      assertThat(left.samples()).isPositive();
    }
  }
}
