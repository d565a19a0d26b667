package steadyturn.fusion.wear.wrist;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.function.DoubleFunction;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.ejml.data.DMatrixRMaj;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.fusion.attitude.AttitudeTrack;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.SkinSlip;

/**
 * The wrist between two tracks of exact truth, with no unknown but those that are asked about;
 * about all axes at once, at 200 Hz from 0 to 2.2 s.
 */
class WristClosedFormTest {

  private static final SkinSlip SLIP = new SkinSlip(1, 1.8, 2.05, 2.7);
  private static final Quaternion ARM_SITS =
      Quaternion.fromRotationVector(new Vector3(0.3, -0.2, 0.25));
  private static final Quaternion HAND_SITS =
      Quaternion.fromRotationVector(new Vector3(-0.2, 0.15, -0.3));

  private static double flexionRad(double t) {
    return 0.3 * Math.sin(2.1 * t);
  }

  private static double deviationRad(double t) {
    return -0.4 + 0.7 * Math.sin(3.3 * t);
  }

  private static Quaternion forearm(double t) {
    return Quaternion.aboutZ(0.9 * Math.sin(1.7 * t))
        .times(Quaternion.aboutY(0.8 - 0.9 * Math.sin(1.3 * t)))
        .times(Quaternion.aboutX(1.1 * Math.sin(1.9 * t)));
  }

  private static Quaternion hand(double t) {
    return forearm(t)
        .times(Quaternion.aboutY(flexionRad(t)))
        .times(Quaternion.aboutZ(deviationRad(t)));
  }

  /** A track of an attitude known exactly, but for a tilt of so much about level x and y. */
  private record Exact(DoubleFunction<Quaternion> qLevelUnit, double tiltSdRad)
      implements AttitudeTrack {

    @Override
    public int size() {
      return 441;
    }

    @Override
    public double timeS(int k) {
      return k / 200.0;
    }

    @Override
    public Quaternion qLevelUnit(int k) {
      return qLevelUnit.apply(timeS(k));
    }

    @Override
    public boolean isSeen(double instantS) {
      return true;
    }

    @Override
    public Vector3 rateUnitRadPerS(int k) {
      double h = 1e-6;
      return qLevelUnit
          .apply(timeS(k) - h)
          .conjugate()
          .times(qLevelUnit.apply(timeS(k) + h))
          .rotationVector()
          .times(0.5 / h);
    }

    @Override
    public int parameters() {
      return 2;
    }

    @Override
    public Vector3 turnRad(int k, double[] z, int from) {
      return new Vector3(z[from], z[from + 1], 0).times(tiltSdRad);
    }

    @Override
    public void putTurn(int k, Vector3 alongLevel, double[] row, int from) {
      row[from] = tiltSdRad * alongLevel.x();
      row[from + 1] = tiltSdRad * alongLevel.y();
    }
  }

  private static Exact track(
      DoubleFunction<Quaternion> segment, Quaternion sits, double tiltSdRad) {
    return new Exact(t -> segment.apply(t).times(sits.conjugate()), tiltSdRad);
  }

  private static UnitMount exact(Quaternion sits) {
    return new UnitMount(sits, 0, 0, 0, 0);
  }

  private static TwoAxisJoint joint(double headingRad) {
    WristAlignment known =
        new WristAlignment(exact(ARM_SITS), exact(HAND_SITS), 0, WristAlignment.Source.COCKING);
    return TwoAxisJoint.fit(
        track(WristClosedFormTest::forearm, ARM_SITS, 0),
        track(t -> Quaternion.aboutZ(headingRad).times(hand(t)), HAND_SITS, 0),
        known,
        SLIP,
        0.75,
        2.05,
        0);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 1.1, -2.7})
  void anglesAndTheRateAreThoseOfTheTruthHoweverTheUnitsSit(double headingRad) {
    // Given: two units that sit anyhow, known exactly; level frames of different headings. Expect:
    // flexion, deviation and the rate of the deviation, differentiated by hand. Within 1e-6, and
    // 1e-4 rad/s of a numerical rate.
    TwoAxisJoint joint = joint(headingRad);
    for (int k = 0; k < 440; k += 37) {
      double t = joint.timeS(k);
      assertThat(joint.angles(k).flexionRad()).isCloseTo(flexionRad(t), within(1e-6));
      assertThat(joint.angles(k).deviationRad()).isCloseTo(deviationRad(t), within(1e-6));
      double rate = 0.7 * 3.3 * Math.cos(3.3 * t);
      assertThat(joint.deviationRateRadPerS(k)).isCloseTo(rate, within(1e-4));
      Vector3 x = forearm(t).rotate(Vector3.X);
      assertThat(joint.elevationRad(k, false)).isCloseTo(Math.asin(x.z()), within(1e-9));
    }
    assertThat(joint.residualRmsRad()).isLessThan(1e-7);
    assertThat(joint.clockShiftS()).isZero();
  }

  @Test
  void theHeadingIsKnownByThePlayAndTheShapeOfTheWrist() {
    // Given: nothing unknown but the heading and the wrist's shape. Our choices: a play of 1.5 deg
    // that stays the same for 0.2 s (samples used every 10 ms, so twenty of them count as one),
    // axes
    // out of square by 4 deg, and by 0.12 of deviation and flexion. Expect: the heading's variance
    // from dense normal equations of the four, the slopes of the constraint (forearm y times hand
    // z)
    // by turning the exact truth by 1e-6 rad; the deviation moves by the heading times the height
    // of
    // hand z. Within 2e-3: flexion and deviation of the joint stand in for those of the truth.
    RealMatrix normal = MatrixUtils.createRealDiagonalMatrix(new double[] {0, 1, 1, 1});
    double weight = 1 / (20 * Math.pow(Math.toRadians(1.5), 2));
    for (int k = 150; k <= 410; k += 2) {
      double t = k / 200.0;
      double slope = (constraint(k, 1e-6) - constraint(k, -1e-6)) / 2e-6;
      RealMatrix row =
          MatrixUtils.createRowRealMatrix(
              new double[] {
                slope, -Math.toRadians(4), -0.12 * deviationRad(t), -0.12 * flexionRad(t)
              });
      normal = normal.add(row.transpose().multiply(row).scalarMultiply(weight));
    }
    double headingSd = Math.sqrt(MatrixUtils.inverse(normal).getEntry(0, 0));
    TwoAxisJoint joint = joint(0.6);
    for (int k : new int[] {160, 280, 400}) {
      double height = Math.abs(hand(k / 200.0).rotate(Vector3.Z).z());
      assertThat(joint.sdRad(joint.deviationRow(k)))
          .isCloseTo(headingSd * height, within(2e-3 * headingSd));
    }
  }

  private static double constraint(int k, double headingRad) {
    double t = k / 200.0;
    Vector3 y = forearm(t).rotate(Vector3.Y);
    return y.dot(Quaternion.aboutZ(headingRad).times(hand(t)).rotate(Vector3.Z));
  }

  @Test
  void aShaftThatHoldsStillInTheHandIsKnownByHeadingClockAndSlip() {
    // Given: hand and shaft held together exactly. Expect, by hand: 0.5 deg of heading times what
    // hand z has risen or sunk since address; 2 ms of clock times the hand's rate; 1 deg of skin
    // and 1.5 deg of grip (constants.csv), all by squares. With a tilt of 1 deg of each unit, what
    // its two axes have changed along hand z since address is added. Within 1e-6.
    double address = 0.9;
    for (double tiltSd : new double[] {0, Math.toRadians(1)}) {
      UnitMount mount = new UnitMount(HAND_SITS, 0, 0, Math.toRadians(1), 0);
      HandOnShaft pair =
          new HandOnShaft(
              track(WristClosedFormTest::hand, HAND_SITS, tiltSd),
              track(WristClosedFormTest::hand, ARM_SITS, tiltSd),
              mount,
              address,
              2.05,
              0.002);
      for (int k : new int[] {240, 330, 400}) {
        double t = k / 200.0;
        Vector3 now = hand(t).rotate(Vector3.Z);
        Vector3 then = hand(address).rotate(Vector3.Z);
        double heading = Math.toRadians(0.5) * (now.z() - then.z());
        double late =
            0.002 * track(WristClosedFormTest::hand, HAND_SITS, 0).rateUnitRadPerS(k).norm();
        double slip = Math.toRadians(Math.hypot(1, 1.5));
        double tilt = tiltSd * Math.hypot(now.x() - then.x(), now.y() - then.y());
        double expected =
            Math.sqrt(heading * heading + late * late + slip * slip + 2 * tilt * tilt);
        assertThat(pair.sdRad(t)).isCloseTo(expected, within(1e-6));
        assertThat(pair.turnHandRad(t + 0.0012).norm()).isLessThan(1e-4);
      }
      assertThat(pair.disagree()).isFalse();
    }
  }

  @Test
  void whatOnePoseTellsOfALongAxisIsSplitIntoSharedTiltedAndOwn() {
    // Given: a long axis known to 2.5 deg, 1.5 of it from how both arms hung, 1.6 deg of tilt by
    // the accelerometer, an arm that leans at address. Expect: own = 2.5^2 - 1.5^2 - (1.6 times how
    // upright x stands)^2, by squares, never below none; without a shared part the whole.
    UnitMount mount = new UnitMount(HAND_SITS, Math.toRadians(2.5), 0, 0, 0);
    Exact track = track(WristClosedFormTest::hand, HAND_SITS, Math.toRadians(1.6));
    PosedAxis axis = PosedAxis.of(mount, Math.toRadians(1.5), track, 0.7);
    double upright = hand(0.7).rotate(Vector3.X).z();
    double own = 2.5 * 2.5 - 1.5 * 1.5 - Math.pow(1.6 * upright, 2);
    assertThat(Math.toDegrees(axis.ownSdRad())).isCloseTo(Math.sqrt(own), within(1e-6));
    assertThat(PosedAxis.of(mount, 0, track, 0.7).ownSdRad()).isEqualTo(Math.toRadians(2.5));
    assertThat(PosedAxis.of(mount, Math.toRadians(2.5), track, 0.7).ownSdRad()).isZero();
    // a tilt of the level by 1.6 deg about x is a bias of 1.6 deg (in g) along -y; in the pose,
    // where x hangs down, it turned the axis by x cross that bias, in segment axes at address
    Vector3 bias = hand(0.7).conjugate().rotate(Vector3.X.cross(Vector3.Z));
    Vector3 turned = Vector3.X.cross(bias).times(Math.toRadians(1.6));
    assertThat(axis.turn(new double[] {9, 1, 0}, 1).minus(turned).norm()).isLessThan(1e-9);
    double[] row = {0, 0.5, 0};
    axis.addTo(row, 1, Vector3.Y);
    assertThat(row[1]).isCloseTo(0.5 + turned.y(), within(1e-9));
  }

  @Test
  void aRateGoesOnWithItsSlopeForTwentyMillisecondsThenLevel() {
    // Given: 5 rad/s, growing by 100 rad/s^2, over nearly 60 ms. Expect by hand: 5.5 after 5 ms, 7
    // from
    // 20 ms on; pieces of 10 ms.
    RateChain chain = RateChain.begin(2, 2.0599, 5, 100);
    assertThat(chain.size()).isEqualTo(6);
    assertThat(chain.at(2)).isCloseTo(5, within(1e-9));
    assertThat(chain.at(2.005)).isCloseTo(5.5, within(1e-9));
    assertThat(chain.at(2.013)).isCloseTo(6.3, within(1e-9));
    assertThat(chain.at(2.02)).isCloseTo(7, within(1e-9));
    assertThat(chain.at(2.055)).isCloseTo(7, within(1e-9));
    assertThat(chain.moved(1, 0.5).at(2.015)).isCloseTo(6.75, within(1e-9));
    double[] row = new double[8];
    chain.addRow(2.013, 2, row, 1);
    assertThat(Arrays.copyOf(row, 4)).containsExactly(new double[] {0, 1.4, 0.6, 0}, within(1e-9));
  }

  @Test
  void aChainBendsByItsSecondDifferencesAndMeetsWhatIsKnown() {
    // Given: three knots. Expect: the normal equations of the second differences k0 - 2 e + (e - 10
    // ms s), k1 - 2 k0 + e, k2 - 2 k1 + k0, each good to 15000 rad/s^3 x (10 ms)^2 = 1.5 rad/s; and
    // of a rate known to 0.3 rad/s. Solved from any start, the chain is the straight line they
    // leave free: 5 + 100 t, as it is met at its end.
    RateChain chain = RateChain.begin(0, 0.03, 5, 100).moved(new double[] {0.3, -0.4, 0.8}, 0);
    DMatrixRMaj normal = new DMatrixRMaj(3, 3);
    DMatrixRMaj right = new DMatrixRMaj(3, 1);
    chain.addBends(normal, right, 0);
    double w = 1 / (1.5 * 1.5);
    assertThat(normal.data)
        .containsExactly(
            new double[] {6 * w, -4 * w, w, -4 * w, 5 * w, -2 * w, w, -2 * w, w}, within(1e-9));
    chain.addKnown(0.03, 8, normal, right, 0);
    assertThat(normal.get(2, 2)).isCloseTo(w + 1 / 0.09, within(1e-9));
    DMatrixRMaj change = new DMatrixRMaj(3, 1);
    org.ejml.dense.row.CommonOps_DDRM.solve(normal, right, change);
    RateChain solved = chain.moved(change.data, 0);
    for (double t : new double[] {0.004, 0.01, 0.017, 0.03}) {
      assertThat(solved.at(t)).isCloseTo(5 + 100 * t, within(1e-9));
    }
  }
}
