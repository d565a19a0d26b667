package steadyturn.fusion.rest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.fusion.attitude.RestBias;
import steadyturn.fusion.rotation.Vector3;

/** Mean rates of addresses, in deg/s, against the rate on the table; our bounds in each case. */
class WarmedUpTest {

  private static final Vector3 TABLE = degrees(1, -2, 0.5);

  private static Vector3 degrees(double x, double y, double z) {
    return new Vector3(x, y, z).times(Math.toRadians(1));
  }

  private static double byDegPerS(List<Vector3> off) {
    return Math.toDegrees(WarmedUp.byRadPerS(off.stream().map(TABLE::plus).toList(), TABLE));
  }

  @ParameterizedTest
  @CsvSource({
    // addresses, off by; 2.5 spreads of the mean are left to sway, an assumed one of 0.35 deg/s for
    // one and two addresses; the squares of what is beyond: sqrt(0.88^2 - 0.875^2) = 0.0937
    "1, 0.87, 0",
    "1, 0.88, 0.093675",
    "1, -0.88, 0.093675",
    "2, 0.61, 0",
    "2, 0.63, 0.118691",
    // from three on what they show, at least 0.1
    "4, 0.12, 0",
    "4, 0.13, 0.035707",
    "25, 0.04, 0",
    "25, 0.06, 0.033166"
  })
  void whatSwayCanNotBeOpensTheBias(int n, double off, double expected) {
    List<Vector3> rates = new ArrayList<>();
    for (int k = 0; k < n; k++) {
      rates.add(degrees(0, off, off / 2));
    }
    assertThat(byDegPerS(rates)).isCloseTo(expected, within(1e-6));
  }

  @ParameterizedTest
  @CsvSource({"0.7, 0", "0.9, 0.537742"})
  void theSwayIsReadFromTheAddresses(double off, double expected) {
    // Given: four addresses, off about each axis by a and minus a in turn besides, a = 0.5: mean
    // squares over three axes of 9 freedoms give 0.577, 0.289 of the mean, 0.722 in 2.5 spreads.
    double a = 0.5;
    List<Vector3> rates =
        List.of(
            degrees(off + a, a, a),
            degrees(off - a, -a, -a),
            degrees(off + a, a, a),
            degrees(off - a, -a, -a));
    assertThat(byDegPerS(rates)).isCloseTo(expected, within(1e-6));
  }

  @Test
  void withoutAnAddressNothingIsTold() {
    assertThat(WarmedUp.byRadPerS(List.of(), TABLE)).isZero();
  }

  private static RestBias.Quiet quiet(int blocks, double off) {
    return new RestBias.Quiet(TABLE.plus(degrees(0, off, 0)), blocks);
  }

  @ParameterizedTest
  @CsvSource({
    // half seconds around each of two swings, off by; three spreads of the medians' difference are
    // left to sway, 3 x 1.25 x 0.35 x sqrt(2/9) = 0.618718; half of sqrt(1 - 0.618718^2), of
    // sqrt(0.62^2 - 0.618718^2)
    "9, 0.6, 0",
    "9, 0.62, 0.0199217",
    "9, -1, 0.3928064",
    "0, 5, 0"
  })
  void aBiasThatMovesBetweenTwoSwingsMayDrift(int blocks, double off, double expected) {
    // Given: quiet moments at the table's rate, and off it. Expect: the same in either order.
    List<RestBias.Quiet> around = List.of(quiet(blocks, 0), quiet(blocks, off));
    assertThat(Math.toDegrees(WarmedUp.amongRadPerS(around))).isCloseTo(expected, within(1e-6));
    assertThat(Math.toDegrees(WarmedUp.amongRadPerS(List.of(around.get(1), around.get(0)))))
        .isCloseTo(expected, within(1e-6));
  }

  @ParameterizedTest
  @CsvSource({
    // 12 half seconds: 2.5 x 1.25 x 0.35 / sqrt(12) = 0.315738; sqrt(0.4^2 - 0.315738^2)
    "0.3, 0",
    "0.4, 0.2455794",
    "-0.4, 0.2455794"
  })
  void quietMomentsTogetherTellOfTheTable(double off, double expected) {
    List<RestBias.Quiet> around = List.of(quiet(5, off), quiet(0, 9), quiet(7, off));
    assertThat(Math.toDegrees(WarmedUp.sinceRadPerS(around, TABLE)))
        .isCloseTo(expected, within(1e-6));
    assertThat(WarmedUp.sinceRadPerS(List.of(RestBias.Quiet.NONE), TABLE)).isZero();
  }
}
