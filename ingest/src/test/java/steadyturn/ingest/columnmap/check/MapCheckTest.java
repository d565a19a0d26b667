package steadyturn.ingest.columnmap.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.columnmap.layout.ColumnRef;
import steadyturn.ingest.columnmap.layout.MappedVector;
import steadyturn.ingest.columnmap.layout.UnitColumns;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * A unit that lies still for five seconds and then tumbles about all axes at once for half a
 * minute, without any acceleration of its own: what its accelerometer shows is gravity, carried
 * along by dv/dt = -omega x v in steps of 0.5 ms. Then one thing in its map is wrong.
 */
class MapCheckTest {

  private static final int RATE_HZ = 100;
  private static final int STILL = 5 * RATE_HZ;
  private static final int SAMPLES = 33 * RATE_HZ;
  private static final UnitColumns COLUMNS =
      new UnitColumns(
          BodyPoint.PELVIS,
          "",
          Optional.empty(),
          Optional.of(vector("accel", "ax", "ay", "az")),
          Optional.empty(),
          Optional.of(vector("gyro", "gx", "gy", "gz")),
          OptionalDouble.empty());

  private static MappedVector vector(String key, String... names) {
    List<ColumnRef> columns = Arrays.stream(names).map(ColumnRef::named).toList();
    return new MappedVector(key, columns, 1, Double.POSITIVE_INFINITY);
  }

  private final double[][] accel = new double[3][SAMPLES];
  private final double[][] gyro = new double[3][SAMPLES];

  MapCheckTest() {
    double[] up = {0.6 * 9.81, 0, 0.8 * 9.81};
    for (int i = 0; i < SAMPLES; i++) {
      double t = i / (double) RATE_HZ;
      double[] rate = i < STILL ? new double[3] : rate(t);
      for (int axis = 0; axis < 3; axis++) {
        accel[axis][i] = up[axis] + (i % 2 == 0 ? 0.01 : -0.01);
        gyro[axis][i] = rate[axis];
      }
      for (int k = 0; k < 20 && i >= STILL; k++) {
        double[] w = rate(t + (k + 0.5) / (20.0 * RATE_HZ));
        step(up, w, 1 / (20.0 * RATE_HZ));
      }
    }
  }

  private static double[] rate(double t) {
    return new double[] {
      0.9 * Math.sin(0.7 * t), 0.7 * Math.cos(0.53 * t + 1), 0.8 * Math.sin(0.91 * t + 2)
    };
  }

  private static void step(double[] v, double[] w, double dt) {
    double x = v[0] - dt * (w[1] * v[2] - w[2] * v[1]);
    double y = v[1] - dt * (w[2] * v[0] - w[0] * v[2]);
    double z = v[2] - dt * (w[0] * v[1] - w[1] * v[0]);
    double scale = 9.81 / Math.sqrt(x * x + y * y + z * z);
    v[0] = x * scale;
    v[1] = y * scale;
    v[2] = z * scale;
  }

  private MapVerdict verdict() {
    double[] timeS = new double[SAMPLES];
    for (int i = 0; i < SAMPLES; i++) {
      timeS[i] = i / (double) RATE_HZ;
    }
    return MapCheck.of(
        new UnitStream(UnitFacts.plain(BodyPoint.PELVIS, RATE_HZ), timeS, accel, gyro), COLUMNS);
  }

  private static void times(double[] column, double factor) {
    for (int i = 0; i < column.length; i++) {
      column[i] *= factor;
    }
  }

  private String fault() {
    MapVerdict verdict = verdict();
    assertThat(verdict.faults()).hasSize(1);
    return verdict.faults().get(0);
  }

  @Test
  void aRightMapIsNotDoubted() {
    assertThat(verdict().faults()).isEmpty();
    assertThat(verdict().unasked()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "0, x, '\"-gx\", \"gy\", \"gz\"'",
    "1, y, '\"gx\", \"-gy\", \"gz\"'",
    "2, z, '\"gx\", \"gy\", \"-gz\"'"
  })
  void aWrongSignOfARateIsNamed(int axis, String name, String mended) {
    times(gyro[axis], -1);
    assertThat(fault())
        .isEqualTo("the sign of gyro " + name + " is likely wrong; try gyro = [" + mended + "].");
  }

  @ParameterizedTest
  @CsvSource({
    "0, x, y and z, '\"-ax\", \"ay\", \"az\"'",
    "1, y, x and z, '\"ax\", \"-ay\", \"az\"'",
    "2, z, x and y, '\"ax\", \"ay\", \"-az\"'"
  })
  void aWrongSignOfAnAccelerationIsTwoWrongRates(
      int axis, String name, String rates, String mended) {
    times(accel[axis], -1);
    assertThat(fault())
        .isEqualTo(
            "the sign of accel "
                + name
                + " is likely wrong, or the signs of gyro "
                + rates
                + "; try accel = ["
                + mended
                + "].");
  }

  @Test
  void allRatesTurnedAreToldAsSuch() {
    for (double[] column : gyro) {
      times(column, -1);
    }
    assertThat(fault())
        .isEqualTo(
            "the signs of all gyro axes are likely wrong; try gyro = [\"-gx\", \"-gy\", \"-gz\"].");
  }

  @ParameterizedTest
  @CsvSource({
    "0, 1, '\"gy\", \"gx\", \"gz\"'",
    "1, 2, '\"gx\", \"gz\", \"gy\"'",
    "0, 2, '\"gz\", \"gy\", \"gx\"'"
  })
  void exchangedRatesAreNamedInTheirRightOrder(int a, int b, String mended) {
    double[] kept = gyro[a];
    gyro[a] = gyro[b];
    gyro[b] = kept;
    assertThat(fault())
        .isEqualTo(
            "gyroscope and accelerometer axes do not belong together; try gyro = ["
                + mended
                + "], or reorder accel instead.");
  }

  @Test
  void aWrongUnitOfTheRatesIsNamed() {
    for (double[] column : gyro) {
      times(column, 180 / Math.PI);
    }
    assertThat(fault())
        .isEqualTo("gyro rates are about 57 times too large; gyro_unit is likely deg/s.");
    for (double[] column : gyro) {
      times(column, Math.pow(Math.PI / 180, 2));
    }
    assertThat(fault())
        .isEqualTo("gyro rates are about 57 times too small; gyro_unit is likely rad/s.");
  }

  @ParameterizedTest
  @CsvSource({
    "0.10197162, accel_unit is likely g.",
    "101.97162, accel_unit is likely mg.",
    "0.02, gravity seems to be taken out",
    "0.5, check accel_unit"
  })
  void aWrongUnitOfTheAccelerationsIsNamed(double factor, String told) {
    for (double[] column : accel) {
      times(column, factor);
    }
    assertThat(fault()).startsWith("still parts show ").contains(told);
  }

  @ParameterizedTest
  @CsvSource({"1.049, 0", "1.051, 1", "0.951, 0", "0.949, 1"})
  void gravityMayBeFivePercentOff(double factor, int faults) {
    for (double[] column : accel) {
      times(column, factor);
    }
    assertThat(verdict().faults()).hasSize(faults);
  }

  @Test
  void aUnitThatHardlyTurnsCannotBeAsked() {
    for (double[] column : gyro) {
      times(column, 0);
    }
    for (int axis = 0; axis < 3; axis++) {
      for (int i = 0; i < SAMPLES; i++) {
        accel[axis][i] = (axis == 2 ? 9.81 : 0) + (i % 2 == 0 ? 0.01 : -0.01);
      }
    }
    assertThat(verdict().faults()).isEmpty();
    assertThat(verdict().unasked())
        .singleElement()
        .asString()
        .startsWith("too little turning to check the gyroscope's unit, axes and signs. Record");
    for (double bias : new double[] {0.49, 0.51}) {
      Arrays.fill(gyro[1], bias);
      boolean tooLarge = bias > 0.5;
      assertThat(verdict().faults()).hasSize(tooLarge ? 1 : 0);
      assertThat(verdict().unasked()).hasSize(tooLarge ? 0 : 1);
    }
  }

  @Test
  void aUnitThatIsNeverQuietCannotBeAsked() {
    for (int i = 0; i < SAMPLES; i++) {
      accel[0][i] += i % 2 == 0 ? 3 : -3;
    }
    assertThat(verdict().faults()).isEmpty();
    assertThat(verdict().unasked().get(0)).startsWith("no quiet part found");
  }

  @Test
  void carriedAxesTurnAsTheWorldTurnsInTheSensor() {
    // Given: the sensor turns by +90 deg about its z. Expect: what lay along x at first now lies
    // along -y of the sensor, so a reading along -y adds to the first x.
    CarriedAxes axes = new CarriedAxes();
    axes.turn(0, 0, 1, 1, 0);
    double[] sum = new double[3];
    axes.add(0, -2, 5, sum);
    assertThat(sum).containsExactly(new double[] {2, 0, 5}, within(1e-15));
  }

  @Test
  void carriedAxesTurnAboutAnyAxis() {
    // Given: 120 deg about (1, 1, 1), which takes x to y, y to z, z to x. Expect: a sensor so
    // turned
    // reads along its x what lay along y at first (the inverse turn), and so on.
    double third = 1 / Math.sqrt(3);
    CarriedAxes axes = new CarriedAxes();
    axes.turn(third, third, third, Math.sin(2 * Math.PI / 3), Math.cos(2 * Math.PI / 3));
    double[] sum = new double[3];
    axes.add(1, 2, 3, sum);
    assertThat(sum).containsExactly(new double[] {3, 1, 2}, within(1e-12));
  }

  @Test
  void allGuessesAreDifferentAndHalfOfThemMirrored() {
    // 6 orders, 8 signs, 3 units.
    List<AxisGuess> all = AxisGuess.all();
    assertThat(all).hasSize(144).doesNotHaveDuplicates().contains(AxisGuess.asMapped());
    List<Integer> changes = new ArrayList<>();
    all.forEach(g -> changes.add(g.changes()));
    assertThat(changes.stream().filter(c -> c == 0)).hasSize(1);
    assertThat(new AxisGuess(List.of(0, 1, 2), List.of(-1, -1, 1), 1).changes()).isEqualTo(1);
    assertThat(new AxisGuess(List.of(0, 1, 2), List.of(-1, -1, -1), 1).changes()).isEqualTo(3);
    assertThat(new AxisGuess(List.of(1, 0, 2), List.of(-1, -1, 1), 2).changes()).isEqualTo(5);
  }
}
