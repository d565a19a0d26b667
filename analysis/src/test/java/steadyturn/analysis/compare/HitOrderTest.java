package steadyturn.analysis.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HitOrderTest {

  @ParameterizedTest(name = "{0} clubs, {1} balls")
  @CsvSource({"2, 3", "2, 6", "2, 12", "2, 30", "3, 12", "3, 40", "4, 12", "5, 24", "7, 100"})
  void everyClubLiesAtTheSameMeanPlace(int clubs, int balls) {
    // Given: any number of clubs. Expect: as many balls as asked or a few more, and equal sums of
    // places, so that a steady drift adds the same to each mean.
    List<String> names = IntStream.range(0, clubs).mapToObj(i -> "club " + i).toList();
    HitOrder order = HitOrder.of(names, balls);
    List<String> all = order.balls();
    assertThat(all).hasSize(clubs * order.ballsEach());
    assertThat(order.ballsEach()).isBetween(balls, balls + order.rounds().size());
    long expect = (long) all.size() * (all.size() - 1) / 2 / clubs;
    for (String name : names) {
      long places = IntStream.range(0, all.size()).filter(i -> all.get(i).equals(name)).sum();
      assertThat(places).as(name).isEqualTo(expect);
    }
  }

  @Test
  void twoClubsGoThereBackBackThere() {
    assertThat(HitOrder.of(List.of("a", "b"), 4).balls())
        .containsExactly("a", "a", "b", "b", "b", "b", "a", "a");
    assertThat(HitOrder.of(List.of("a", "b"), 12).rounds().stream().map(r -> r.get(0).club()))
        .containsExactly("a", "b", "b", "a");
  }

  @Test
  void oneClubOrOneTwiceIsRefused() {
    assertThatThrownBy(() -> HitOrder.of(List.of("a"), 6))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> HitOrder.of(List.of("a", "a"), 6))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> HitOrder.of(List.of("a", "b"), 1))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
