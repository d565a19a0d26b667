package steadyturn.analysis.swing.find;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.ingest.sample.BodyPoint;

/** Blows of many shapes on made swings, seeds 400 and up; the ball is struck at 0 s. */
class BlowShapesTest {

  private static final int COUNT = Integer.getInteger("steadyturn.made", 12);

  /** Forces over time since impact, g at the hand; sizes are our choice. */
  enum Shape {
    /** A ring that begins at once. */
    SHARP,
    /** One wave that takes 15 to 20 ms to rise. */
    SOFT,
    /** A soft half-wave of the shaft and the hands, then a ring five times as large. */
    SOFT_THEN_SHARP,
    /** The ground a moment before the ball, a fifth as hard. */
    TURF_FIRST,
    /** Ball, then ground, about as hard. */
    TWO_HITS;

    DoubleUnaryOperator drawn(Random random) {
      double size = 40 + 50 * random.nextDouble();
      double hz = 90 + 120 * random.nextDouble();
      DoubleUnaryOperator ring = ring(size, hz, 0.004 + 0.004 * random.nextDouble());
      double riseS = 0.015 + 0.005 * random.nextDouble();
      double leadS = 0.008 + 0.008 * random.nextDouble();
      return switch (this) {
        case SHARP -> ring;
        case SOFT ->
            t ->
                t < 0 || t > 2 * riseS ? 0 : 1.3 * size * square(Math.sin(Math.PI * t / 2 / riseS));
        case SOFT_THEN_SHARP ->
            t ->
                ring.applyAsDouble(t)
                    + (t < -riseS || t > 0 ? 0 : size / 5 * square(Math.sin(Math.PI * t / riseS)));
        case TURF_FIRST -> t -> ring.applyAsDouble(t) + ring.applyAsDouble(t + leadS) / 5;
        case TWO_HITS -> t -> ring.applyAsDouble(t) + ring.applyAsDouble(t - leadS) * 0.9;
      };
    }

    private static double square(double x) {
      return x * x;
    }

    private static DoubleUnaryOperator ring(double size, double hz, double fadeS) {
      return t -> t < 0 ? 0 : size * Math.sin(2 * Math.PI * hz * t) * Math.exp(-t / fadeS);
    }
  }

  @ParameterizedTest
  @EnumSource(names = {"SOFT_THEN_SHARP", "TURF_FIRST"})
  void slowUnitsDoNotTakeWhatComesBeforeTheBallForIt(Shape shape) {
    // Given: 12 blows at 250 Hz, after something a fifth as hard 8 to 20 ms before. Expect: 10 of
    // them within 6 ms, a step and a half, of the ball and inside their interval; taken for the
    // ball, what comes before would be 8 to 20 ms off.
    int near = 0;
    int covered = 0;
    StringBuilder all = new StringBuilder();
    for (int seed = 400; seed < 400 + COUNT; seed++) {
      MadeSwing made = new MadeSwing(MadeSwing.Family.PLAIN, seed, shape.drawn(new Random(seed)));
      EventTime impact =
          SwingFinder.withDefaults()
              .find(made.recording(250, BodyPoint.LEAD_FOREARM, BodyPoint.LEAD_HAND))
              .get(0)
              .event(SwingEvent.IMPACT)
              .orElseThrow();
      double off = impact.timeS() - made.impactS();
      all.append(
          String.format(java.util.Locale.ROOT, " %.1f(%.1f)", 1000 * off, 1000 * impact.sdS()));
      near += Math.abs(off) <= 0.006 ? 1 : 0;
      covered += Math.abs(off) <= 1.96 * impact.sdS() ? 1 : 0;
    }
    System.out.println(shape.name() + " at 250 Hz" + all);
    assertThat(near).isGreaterThanOrEqualTo(COUNT * 5 / 6);
    assertThat(covered).isGreaterThanOrEqualTo(COUNT * 5 / 6);
  }

  @ParameterizedTest
  @EnumSource
  void theBallIsStruckWhereTheLargestStepBegins(Shape shape) {
    // Given: 12 blows of each shape at 500 Hz on forearm and hand. Expect: all seen; within
    // the stated interval in 5 of 6; where a spread below 2 ms is stated, as in 3 of 4 at least,
    // within 2 ms (the level for a soft rise) in the root mean square.
    double square = 0;
    int covered = 0;
    int seen = 0;
    int sure = 0;
    StringBuilder all = new StringBuilder();
    for (int seed = 400; seed < 400 + COUNT; seed++) {
      MadeSwing made = new MadeSwing(MadeSwing.Family.PLAIN, seed, shape.drawn(new Random(seed)));
      Swing swing =
          SwingFinder.withDefaults()
              .find(made.recording(500, BodyPoint.LEAD_FOREARM, BodyPoint.LEAD_HAND))
              .get(0);
      EventTime impact = swing.event(SwingEvent.IMPACT).orElseThrow();
      double off = impact.timeS() - made.impactS();
      all.append(
          String.format(java.util.Locale.ROOT, " %.1f(%.1f)", 1000 * off, 1000 * impact.sdS()));
      if (impact.sdS() < 0.002) {
        sure++;
        square += off * off;
      }
      covered += Math.abs(off) <= 1.96 * impact.sdS() ? 1 : 0;
      seen += swing.flags().contains("impact-virtual") ? 0 : 1;
    }
    System.out.println(shape.name() + all);
    assertThat(seen).isEqualTo(COUNT);
    assertThat(sure).isGreaterThanOrEqualTo(COUNT * 3 / 4);
    assertThat(Math.sqrt(square / sure)).isLessThan(0.002);
    assertThat(covered).isGreaterThanOrEqualTo(COUNT * 5 / 6);
  }
}
