package steadyturn.analysis.swing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import steadyturn.ingest.reason.Reason;

class FaultsTest {

  @Test
  void aMistakeCostsItsSwingAndIsToldWithItsPlace() {
    // Given: three swings of which the second meets a mistake. Expect: the other two, and one line
    // with where and what; nothing for another recording. Exact.
    Faults faults = new Faults(false);
    List<Optional<Integer>> out = List.of(part(faults, 1), part(faults, 0), part(faults, 5));
    assertThat(out).containsExactly(Optional.of(10), Optional.empty(), Optional.of(2));
    assertThat(faults.of("a")).hasSize(1);
    Reason fault = faults.of("a").get(0);
    assertThat(fault.args()).containsEntry("atS", 12.3);
    assertThat(fault.args().get("mistake")).asString().contains("by zero");
    assertThat(fault.args().get("place")).asString().contains("FaultsTest.java");
    assertThat(faults.of("b")).isEmpty();
  }

  private static Optional<Integer> part(Faults faults, int by) {
    return faults.keep("a", 12.3, () -> 10 / by);
  }

  @Test
  void whereAssertionsAreOnNobodyOverlooksAMistake() {
    // Given: tests run with assertions on. Expect: thrown on.
    assertThatThrownBy(() -> part(Faults.usual(), 0)).isInstanceOf(ArithmeticException.class);
  }
}
