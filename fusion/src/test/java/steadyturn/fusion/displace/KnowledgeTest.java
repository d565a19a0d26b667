package steadyturn.fusion.displace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.strapdown.UnitState;
import steadyturn.fusion.trial.ConstantsTable;
import steadyturn.fusion.trial.MadeUnit;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;

/** What rests and stance bounds say of a unit that lies still and level for 4 s, at 100 Hz. */
class KnowledgeTest extends ConstantsTable {

  private static final double G = 9.8;

  private static Rows rows(List<Anchor> anchors, List<StanceBound> stance, Vector3 velocity) {
    SwingSpan span =
        SwingSpan.of(
            MadeUnit.of(
                UnitFacts.plain(BodyPoint.PELVIS, 100),
                4.01,
                t -> Vector3.ZERO,
                t -> new Vector3(0, 0, G)),
            anchors,
            stance);
    UnitState still = UnitState.start(Quaternion.IDENTITY, Vector3.ZERO, 0);
    double[] step = new double[still.size()];
    for (int axis = 0; axis < 3; axis++) {
      step[UnitState.VELOCITY + axis] = velocity.get(axis);
    }
    return Knowledge.of(span, still.plus(step), G);
  }

  private static double information(Rows rows, int p) {
    double sum = 0;
    for (int row = 0; row < rows.size(); row++) {
      sum += rows.derivative(row)[p] * rows.derivative(row)[p];
    }
    return sum;
  }

  /** Information of zero velocities every 0.1 s on a steady one: 1' N^-1 1. */
  private static double steady(double lengthS, double sd, double drift) {
    int m = (int) Math.round(lengthS / 0.1) + 1;
    RealMatrix n = MatrixUtils.createRealMatrix(m, m);
    for (int i = 0; i < m; i++) {
      for (int j = 0; j < m; j++) {
        double sway = sd * sd * Math.exp(-0.1 * Math.abs(i - j) / 0.3);
        n.setEntry(i, j, sway + drift * drift + (i == j ? 1e-8 : 0));
      }
    }
    double sum = 0;
    for (double[] row : new LUDecomposition(n).getSolver().getInverse().getData()) {
      for (double v : row) {
        sum += v;
      }
    }
    return sum;
  }

  @Test
  void aStanceBoundPullsTheCarriedPointBackAgainstItsWay() {
    // Given: a state that drifts by (0.1, 0.2, -0.3) m/s, a bound of 5 cm over 1.5 s. Expect: along
    // each axis the residual -v 1.5 s / 5 cm, by the velocity 1.5 s / 5 cm: a step of residual over
    // derivative takes the drift away. Within rounding; the other sign would double it.
    Vector3 drift = new Vector3(0.1, 0.2, -0.3);
    Rows rows =
        rows(
            List.of(Anchor.address(0, 0.5)),
            List.of(new StanceBound(1, 2.5, new Vector3(0.1, 0.05, -0.08), 0.05)),
            drift);
    for (int axis = 0; axis < 3; axis++) {
      int row = rows.size() - 3 + axis;
      assertThat(rows.residual(row)).isCloseTo(-drift.get(axis) * 30, within(1e-9));
      assertThat(rows.derivative(row)[UnitState.VELOCITY + axis]).isCloseTo(30, within(1e-9));
    }
  }

  @ParameterizedTest
  @CsvSource({"1,0", "0.5,0", "2,0.09"})
  void aRestSaysThatVelocityIsSwayAlikeOverThreeTenthsOfASecond(double lengthS, double drift) {
    // Given: an anchor of 7 mm/s along the ground, 3 up and down, 0.9 deg/s, with or without drift.
    // Expect: the velocity's information 1' N^-1 1, N = sway^2 exp(-dt / 0.3) + drift^2 and 0.1
    // mm/s of its own; its residuals' cost by a velocity that is off, v' v times that. Within 1e-9.
    Anchor anchor = new Anchor(1, 1 + lengthS, 0.007, 0.003, Math.toRadians(0.9), drift);
    Vector3 off = new Vector3(0.02, -0.01, 0.03);
    Rows rows = rows(List.of(anchor), List.of(), off);
    double level = steady(lengthS, 0.007, drift);
    double up = steady(lengthS, 0.003, drift * 3 / 7);
    assertRelative(information(rows, UnitState.VELOCITY), level);
    assertRelative(information(rows, UnitState.VELOCITY + 1), level);
    assertRelative(information(rows, UnitState.VELOCITY + 2), up);
    double cost = (0.0004 + 0.0001) * level + 0.0009 * up;
    assertRelative(rows.cost(), cost);
  }

  private static void assertRelative(double found, double expected) {
    assertThat(found).isCloseTo(expected, within(1e-6 * expected));
  }

  @ParameterizedTest
  @CsvSource({"0.5,1", "0.6,1", "1.2,2", "3,5"})
  void theMeanRateOfARestIsTheBiasButForSway(double lengthS, double independent) {
    // Expect: the bias about the vertical known to 0.9 deg/s over the root of how many times twice
    // 0.3 s fit into the rest, one at least.
    Anchor anchor = new Anchor(0.5, 0.5 + lengthS, 0.007, 0.003, Math.toRadians(0.9), 0);
    Rows rows = rows(List.of(anchor), List.of(), Vector3.ZERO);
    double sd = Math.toRadians(0.9);
    assertRelative(information(rows, UnitState.GYRO_BIAS + 2), independent / (sd * sd));
  }

  @Test
  void aStanceBoundHoldsThePointOnTheLeverArm() {
    // Given: from 1 to 3 s a point 0.3 m ahead and 0.4 m to the left stays within 50 mm. Expect:
    // information (2 s / 50 mm)^2 on each velocity, (2 s x 0.5 m / 50 mm)^2 on the rate's bias
    // about the vertical, and the cost of a velocity that is off.
    StanceBound bound = new StanceBound(1, 3, new Vector3(0.3, 0.4, -0.2), 0.05);
    Anchor anchor = new Anchor(0, 0.5, 0.007, 0.003, Math.toRadians(0.9), 0);
    Vector3 off = new Vector3(0.02, -0.01, 0.03);
    Rows with = rows(List.of(anchor), List.of(bound), off);
    Rows without = rows(List.of(anchor), List.of(), off);
    for (int axis = 0; axis < 3; axis++) {
      double more =
          information(with, UnitState.VELOCITY + axis)
              - information(without, UnitState.VELOCITY + axis);
      assertRelative(more, 1600);
    }
    double turn =
        information(with, UnitState.GYRO_BIAS + 2) - information(without, UnitState.GYRO_BIAS + 2);
    assertThat(turn).isCloseTo(400, within(0.5));
    assertRelative(with.cost() - without.cost(), 1600 * (0.0004 + 0.0001 + 0.0009));
    assertThat(with.size()).isEqualTo(without.size() + 3);
  }

  @Test
  void aPointThatWentWhereItIsExpectedContradictsNothing() {
    // Given: from 1 to 3 s a point that moves at (0.02, -0.01, 0.03) m/s, expected 40, -20 and 60
    // mm
    // away from where it was. Expect: no cost of that bound; without the expectation (2 s / 50
    // mm)^2
    // times the squared speed, which is what pulls a player who slides back towards the address.
    Vector3 lever = new Vector3(0.3, 0.4, -0.2);
    Anchor anchor = new Anchor(0, 0.5, 0.007, 0.003, Math.toRadians(0.9), 0);
    Vector3 off = new Vector3(0.02, -0.01, 0.03);
    double alone = rows(List.of(anchor), List.of(), off).cost();
    StanceBound there = new StanceBound(1, 3, lever, off.times(2), 0.05);
    assertThat(rows(List.of(anchor), List.of(there), off).cost()).isCloseTo(alone, within(1e-6));
    StanceBound anywhere = new StanceBound(1, 3, lever, 0.05);
    assertThat(rows(List.of(anchor), List.of(anywhere), off).cost() - alone)
        .isCloseTo(1600 * 0.0014, within(1e-3));
  }

  @Test
  void anAnchorThatCannotBeIsRefused() {
    double[][] bad = {
      {1, 1, 1, 1, 1, 0},
      {0, 1, 0, 1, 1, 0},
      {0, 1, 1, 0, 1, 0},
      {0, 1, 1, 1, 0, 0},
      {0, 1, 1, 1, 1, -1}
    };
    for (double[] a : bad) {
      assertThatThrownBy(() -> new Anchor(a[0], a[1], a[2], a[3], a[4], a[5]))
          .isInstanceOf(IllegalArgumentException.class);
    }
    assertThat(new Anchor(0, 1, 1, 1, 1, 0).driftSdMps()).isZero();
  }

  @Override
  protected double value(String id) {
    Anchor address = Anchor.address(0, 1);
    Anchor finish = Anchor.finish(0, 1);
    Anchor drifting = address.drifting(0.4);
    return switch (id) {
      case "address-sway" -> 1000 * address.velocitySdMps();
      case "address-up" -> 1000 * address.upSdMps();
      case "address-rate" -> Math.toDegrees(address.rateSdRadPerS());
      case "finish-sway" -> 1000 * finish.velocitySdMps();
      case "finish-up" -> 1000 * finish.upSdMps();
      case "finish-rate" -> Math.toDegrees(finish.rateSdRadPerS());
      case "finish-rising" -> 1000 * finish.risingToo().upSdMps();
      case "drifting-sway" -> 1000 * drifting.velocitySdMps();
      case "drifting-up" -> 1000 * drifting.upSdMps();
      case "drifting-rate" -> Math.toDegrees(drifting.rateSdRadPerS());
      case "drifting-drift" -> 1000 * drifting.driftSdMps();
      case "sway-correlation" -> Anchor.SWAY_CORRELATION_S;
      default -> prior(id);
    };
  }

  private static double prior(String id) {
    UnitPriors p = id.startsWith("raw") ? UnitPriors.raw() : UnitPriors.calibrated();
    return switch (id.substring(id.indexOf('-') + 1)) {
      case "tilt" -> Math.toDegrees(p.tiltRad());
      case "velocity" -> p.velocityMps();
      case "gyro-bias" -> Math.toDegrees(p.gyroBiasRadPerS());
      case "gyro-drift" -> Math.toDegrees(p.gyroBiasDriftRadPerS());
      case "accel-bias" -> p.accelBiasMps2() / 9.80665e-3;
      case "accel-drift" -> p.accelBiasDriftMps2() / 9.80665e-3;
      case "gyro-matrix" -> p.gyroMatrix();
      case "accel-scale" -> p.accelScale();
      case "known-bias" -> Math.toDegrees(p.withGyroBias(0.001).gyroBiasRadPerS());
      default -> throw new IllegalArgumentException("no constant " + id);
    };
  }
}
