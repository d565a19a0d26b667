package steadyturn.analysis.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.stat.StatUtils;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.ingest.reason.Reason;

/**
 * What a comparison says, held against R 4.2.2. The R calls that made the figures stand beside
 * them; {@code bf} is the Behrens-Fisher tail by R's own quadrature:
 *
 * <pre>
 * bf = function(x,a,f1,b,f2) integrate(function(t)
 *   dt(t,f1)*pt((x-a*t)/b,f2,lower.tail=FALSE), -Inf, Inf, rel.tol=1e-10)$value
 * q  = function(p,a,f1,b,f2) uniroot(function(x) bf(x,a,f1,b,f2)-p, c(0,80), tol=1e-10)$root
 * a = c(-40.2,-41.9,-39.1,-42.3,-40.8); b = c(-43.0,-41.2,-44.9,-42.6,-45.1,-42.2)
 * sa = sd(a)/sqrt(5); sb = sd(b)/sqrt(6); d = mean(b)-mean(a)
 * </pre>
 */
class FiguresOfRTest {

  private static final double[] A = {-40.2, -41.9, -39.1, -42.3, -40.8};
  private static final double[] B = {-43.0, -41.2, -44.9, -42.6, -45.1, -42.2};

  private static GroupSummary group(double... values) {
    double spread = Math.sqrt(StatUtils.variance(values));
    return new GroupSummary(
        "g", values.length, 0, StatUtils.mean(values), spread, 0, 0, Map.of("", 1.0));
  }

  @Test
  void holmsStepsAreThoseOfR() {
    // Given: p.adjust(c(0.004,0.03,0.011,0.2,0.0009,0.6), "holm"). Expect: 0.0200 0.0900 0.0440
    // 0.4000 0.0054 0.6000. Three are under 0.05, so the levels are 5 % by 6, 5, 4 for these and
    // by 3 for all others. Within 1e-12: roundings.
    List<Holm> steps = Holm.steps(List.of(0.004, 0.03, 0.011, 0.2, 0.0009, 0.6), 0.05);
    double[] chances = {0.02, 0.09, 0.044, 0.4, 0.0054, 0.6};
    int[] left = {5, 3, 4, 3, 6, 3};
    for (int k = 0; k < 6; k++) {
      assertThat(steps.get(k).chance()).isCloseTo(chances[k], within(1e-12));
      assertThat(steps.get(k).level()).isCloseTo(0.05 / left[k], within(1e-12));
    }
  }

  @Test
  void chanceAndRangeOfADifferenceAreThoseOfR() {
    // Given: 2*bf(abs(d),sa,4,sb,5) = 0.04814248193; d-q(.025,..), d+q(.025,..) = -4.587436114,
    // -0.02589721952; the same at .0025 = -6.378504115, 1.765170781. Within 1 %: the quadrature.
    MeanDifference d = MeanDifference.of(group(A), group(B), 0, 3, 0.005);
    assertThat(d.value()).isCloseTo(-2.306666667, within(1e-9));
    assertThat(d.chance() / 0.04814248193).isCloseTo(1, within(0.01));
    assertThat(d.low()).isCloseTo(-4.587436114, within(0.01));
    assertThat(d.high()).isCloseTo(-0.02589721952, within(0.01));
    assertThat(d.detectable()).isCloseTo((6.378504115 + 1.765170781) / 2, within(0.03));
    MeanDifference real = d.ofRealRow(group(A), group(B), 0, 0.005);
    assertThat(real.low()).isCloseTo(-6.378504115, within(0.03));
    assertThat(real.high()).isCloseTo(1.765170781, within(0.03));
  }

  @ParameterizedTest
  @CsvSource({"3, 0.2444505498", "6, 0.003833101302"})
  void equivalenceHasTheChanceOfTwoOneSidedTestsOfR(double margin, double chance) {
    // Given: bf(3-abs(d),sa,4,sb,5) and the same with 6. Within 1 %.
    MeanDifference d = MeanDifference.of(group(A), group(B), 0, margin, 0.05);
    assertThat(d.beyondMargin() / chance).isCloseTo(1, within(0.01));
  }

  @Test
  void withManySwingsEquivalenceIsThatOfTheTTestOfR() {
    // Given: A <- 90+6*qnorm((0:59+.5)/60), B <- 92.5+5*qnorm((0:59+.5)/60);
    // t.test(B,A,alternative="less",mu=4)$p.value = 0.06936802725 and t.test(B,A)$p.value =
    // 0.01440806993, which are Welch's. Expect: a little more, as two spreads are judged apart; by
    // R's bf 0.07100820227 (2.4 % more) and 0.01524689306 (5.8 % more). Within 1 % of these.
    var normal = new org.apache.commons.math3.distribution.NormalDistribution();
    double[] first = new double[60];
    double[] second = new double[60];
    for (int i = 0; i < 60; i++) {
      double z = normal.inverseCumulativeProbability((i + 0.5) / 60);
      first[i] = 90 + 6 * z;
      second[i] = 92.5 + 5 * z;
    }
    MeanDifference d = MeanDifference.of(group(first), group(second), 0, 4, 0.05);
    assertThat(d.beyondMargin() / 0.07100820227).isCloseTo(1, within(0.01));
    assertThat(d.chance() / 0.01524689306).isCloseTo(1, within(0.01));
    assertThat(d.beyondMargin()).isBetween(0.06936802725, 0.06936802725 * 1.06);
    assertThat(d.chance()).isBetween(0.01440806993, 0.01440806993 * 1.06);
  }

  @Test
  void furtherBallsAreThoseOfR() {
    // Given: spreads of 8 in four balls each, 20 to tell at a level of 0.005, power averaged over
    // r <- sqrt(f/qchisq(u,f)), f = 6, u in 0..1:
    // integrate(Vectorize(function(u) {r <- ..; s <- r*8/sqrt(4+N);
    //   bf(q(.0025,s,3+N,s,3+N)-20, s,3+N,s,3+N)}), 0, 1).
    // R: N = 5 gives 0.783, N = 6 gives 0.834. Expect: 6, the first above 0.8.
    GroupSummary four = new GroupSummary("g", 4, 0, 0, 8, 0, 0, Map.of("", 1.0));
    FurtherBalls more = FurtherBalls.of(four, four, 20, 0.005);
    assertThat(more.balls()).hasValue(6);
    assertThat(more.difference()).isEqualTo(20);
    assertThat(more.power()).isEqualTo(0.8);
  }

  @Test
  void noNumberOfBallsTakesAwayWhatTwoLessonsDoNotShare() {
    // Given: 5 of error that each lesson has anew, so 7 between two; 10 to tell. Expect: none.
    GroupSummary monday = new GroupSummary("a", 4, 0, 0, 1, 0, 5, Map.of("monday", 1.0));
    GroupSummary friday = new GroupSummary("b", 4, 0, 0, 1, 0, 5, Map.of("friday", 1.0));
    assertThat(FurtherBalls.of(monday, friday, 10, 0.05).balls()).isEmpty();
  }

  @Test
  void aDriftIsTheSlopeOfRsLinearModel() {
    // Given: y <- c(1.0,2.3,1.9,3.4,0.5,1.1,1.8,2.6); x <- (c(1,2,5,6,3,4,7,8)-1)/7; g <- 4 and 4;
    // f <- lm(y~g+x): slope 2.408823529; confint(f,"x",.99) = -0.1560488584, 4.973695917.
    // Within 1e-8: roundings of the printed figures.
    SwingGroup first = turns("a", new int[] {1, 2, 5, 6}, 1.0, 2.3, 1.9, 3.4);
    SwingGroup second = turns("b", new int[] {3, 4, 7, 8}, 0.5, 1.1, 1.8, 2.6);
    List<SwingGroup> both = List.of(first, second);
    Drift drift = Drift.of(both, new MeasureAt(Measure.PELVIS_TURN, "top"), 0.01).orElseThrow();
    assertThat(drift.change()).isCloseTo(2.408823529, within(1e-8));
    assertThat(drift.low()).isCloseTo(-0.1560488584, within(1e-8));
    assertThat(drift.high()).isCloseTo(4.973695917, within(1e-8));
    assertThat(drift.isSure()).isFalse();
    // the second was hit two places of seven later
    assertThat(drift.between(first, second, both).inDifference())
        .isCloseTo(2.408823529 * 2 / 7, within(1e-8));
  }

  private static SwingGroup turns(String name, int[] balls, double... turnsDeg) {
    List<LessonSwing> swings = new ArrayList<>();
    for (int i = 0; i < balls.length; i++) {
      MeasureValue turn =
          MeasureValue.of(
              Measure.PELVIS_TURN, "top", turnsDeg[i], 0.1, Grade.MEASURED, Reason.NONE);
      swings.add(
          new LessonSwing(
              "monday",
              new SwingResult(
                  i, name, SwingKind.HIT, List.of(), List.of(), List.of(turn), List.of()),
              balls[i]));
    }
    return new SwingGroup(name, swings);
  }
}
