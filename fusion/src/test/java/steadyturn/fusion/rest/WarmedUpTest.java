package steadyturn.fusion.rest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
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
    // addresses, off by; two spreads of the mean are left to sway, an assumed one of 0.35 deg/s for
    // one and two addresses; the squares of what is beyond: sqrt(0.88^2 - 0.7^2) = 0.5333
    "1, 0.69, 0",
    "1, 0.88, 0.533292",
    "1, -0.88, 0.533292",
    "2, 0.48, 0",
    "2, 0.63, 0.389744",
    // from three on what they show, at least 0.1
    "4, 0.09, 0",
    "4, 0.13, 0.083066",
    "25, 0.03, 0",
    "25, 0.06, 0.044721"
  })
  void whatSwayCanNotBeOpensTheBias(int n, double off, double expected) {
    List<Vector3> rates = new ArrayList<>();
    for (int k = 0; k < n; k++) {
      rates.add(degrees(0, off, off / 2));
    }
    assertThat(byDegPerS(rates)).isCloseTo(expected, within(1e-6));
  }

  @ParameterizedTest
  @CsvSource({"0.55, 0", "0.9, 0.690411"})
  void theSwayIsReadFromTheAddresses(double off, double expected) {
    // Given: four addresses, off about each axis by a and minus a in turn besides, a = 0.5: mean
    // squares over three axes of 9 freedoms give 0.577, 0.289 of the mean, so 0.577 in two spreads.
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
}
