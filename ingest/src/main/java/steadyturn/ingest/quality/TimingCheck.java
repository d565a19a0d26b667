package steadyturn.ingest.quality;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import steadyturn.ingest.sample.Averages;
import steadyturn.ingest.sample.UnitStream;

/**
 * Counts what should have come and did not. A beat (the effective period) is laid over the time
 * stamps and followed slowly, so that jitter is not taken for loss and drift is not taken for
 * jitter; each stamp more than half a beat late means lost samples.
 */
final class TimingCheck {

  /** Losses from this many samples on are listed as gaps; shorter ones are bridged without harm. */
  private static final int GAP_SAMPLES = 5;

  /** Share of a stamp's deviation that moves the beat: slow enough to average some 20 stamps. */
  private static final double FOLLOW = 0.05;

  private static final int MOST_STEPS_LOOKED_AT = 20_001;

  private TimingCheck() {}

  static Timing of(UnitStream unit) {
    double[] timeS = timesOfWholeSamples(unit);
    if (timeS.length < 2) {
      return new Timing(timeS.length, 0, 0, unit.size() - timeS.length, List.of());
    }
    return follow(timeS, periodS(timeS));
  }

  private static double[] timesOfWholeSamples(UnitStream unit) {
    double[] timeS = unit.timeColumnS().clone();
    int n = 0;
    for (int i = 0; i < timeS.length; i++) {
      if (unit.isWhole(i)) {
        timeS[n++] = timeS[i];
      }
    }
    return n == timeS.length ? timeS : Arrays.copyOf(timeS, n);
  }

  /** Mean of the steps near the median one: right for jittered and for coarse time stamps. */
  static double periodS(double[] timeS) {
    double medianS = Averages.median(someSteps(timeS));
    double sum = 0;
    int n = 0;
    for (int i = 1; i < timeS.length; i++) {
      double step = timeS[i] - timeS[i - 1];
      if (step > 0.5 * medianS && step < 1.5 * medianS) {
        sum += step;
        n++;
      }
    }
    return n == 0 ? medianS : sum / n;
  }

  private static double[] someSteps(double[] timeS) {
    int stride = 1 + (timeS.length - 2) / MOST_STEPS_LOOKED_AT;
    double[] steps = new double[(timeS.length - 2) / stride + 1];
    for (int k = 0; k < steps.length; k++) {
      steps[k] = timeS[k * stride + 1] - timeS[k * stride];
    }
    return steps;
  }

  private static Timing follow(double[] timeS, double periodS) {
    List<Gap> gaps = new ArrayList<>();
    double beatS = timeS[0];
    double squares = 0;
    long lost = 0;
    for (int i = 1; i < timeS.length; i++) {
      double lateS = timeS[i] - beatS - periodS;
      boolean isInTime = Math.abs(lateS) < periodS / 2;
      long missed = isInTime ? 0 : Math.round(lateS / periodS);
      double restS = lateS - missed * periodS;
      if (missed >= GAP_SAMPLES) {
        gaps.add(new Gap(timeS[i - 1], timeS[i], (int) Math.min(missed, Integer.MAX_VALUE)));
        beatS = timeS[i];
      } else {
        beatS += periodS * (1 + missed) + FOLLOW * restS;
        squares += restS * restS;
      }
      lost += missed;
    }
    double jitterS = Math.sqrt(squares / (timeS.length - 1));
    return new Timing(timeS.length, 1 / periodS, jitterS, Math.max(0, lost), gaps);
  }
}
