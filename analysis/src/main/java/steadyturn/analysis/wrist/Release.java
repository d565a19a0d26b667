package steadyturn.analysis.wrist;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.tempo.PeakTime;
import steadyturn.fusion.attitude.CentredMean;
import steadyturn.ingest.words.Words;

/**
 * The release: the last fall of the cock through its plateau less 15 deg. The plateau is the 90th
 * percentile of the cock from the top to 40 ms before impact. Noise law of the time: sigma_t^2 =
 * sigma_impact^2 + (sigma_sync / 2)^2 + (sigma_angle / rate)^2: impact is the mean of two clocks,
 * and sigma_angle holds the rest of what they are apart.
 */
final class Release {

  static final double LEAST_PLATEAU_DEG = 20;
  private static final double FALL_DEG = 15;
  private static final double PLATEAU_END_S = 0.04;
  private static final double PLATEAU_PART = 0.9;
  // height of the rate that skin and gyro scale can hide, our assumption
  private static final double RATE_PART = 0.01;

  private final WristMotion motion;
  private final EventTime top;
  private final EventTime impact;
  private final double syncSdS;
  private final double plateauDeg;
  private final int plateauAt;

  private Release(
      WristMotion motion, EventTime top, EventTime impact, double plateauDeg, int plateauAt) {
    this.motion = motion;
    this.top = top;
    this.impact = impact;
    this.syncSdS = motion.syncSdS();
    this.plateauDeg = plateauDeg;
    this.plateauAt = plateauAt;
  }

  /** Finds the plateau; empty where top and impact are too close for one. */
  static Optional<Release> of(WristMotion motion, EventTime top, EventTime impact) {
    int from = motion.indexAt(top.timeS());
    int to = motion.indexAt(impact.timeS() - PLATEAU_END_S);
    if (to - from < 5 || motion.indexAt(impact.timeS()) >= motion.size()) {
      return Optional.empty();
    }
    double[] cocks = new double[to - from];
    for (int k = from; k < to; k++) {
      cocks[k - from] = motion.cockDeg(k);
    }
    double[] sorted = cocks.clone();
    Arrays.sort(sorted);
    double plateau = percentile(sorted);
    int nearest = 0;
    for (int i = 0; i < cocks.length; i++) {
      nearest = Math.abs(cocks[i] - plateau) < Math.abs(cocks[nearest] - plateau) ? i : nearest;
    }
    return Optional.of(new Release(motion, top, impact, plateau, from + nearest));
  }

  private static double percentile(double[] sorted) {
    double at = PLATEAU_PART * (sorted.length - 1);
    int low = (int) at;
    int high = Math.min(sorted.length - 1, low + 1);
    return sorted[low] + (at - low) * (sorted[high] - sorted[low]);
  }

  double plateauDeg() {
    return plateauDeg;
  }

  /** A sample at which the cock is at its plateau. */
  int plateauAt() {
    return plateauAt;
  }

  List<MeasureValue> measures() {
    return List.of(time(false), time(true), rate(false), rate(true));
  }

  private MeasureValue time(boolean part) {
    Measure measure = part ? Measure.WRIST_RELEASE_PART : Measure.WRIST_RELEASE;
    if (plateauDeg < LEAST_PLATEAU_DEG) {
      return MeasureValue.withheld(measure, "", Words.say("why.little-cock"));
    }
    int k = lastAbove(plateauDeg - FALL_DEG);
    if (k < 0) {
      return MeasureValue.withheld(measure, "", Words.say("why.keeps-past-impact"));
    }
    if (motion.cutBeyondRepairBefore(motion.timeS(k + 1))) {
      return MeasureValue.withheld(measure, "", Words.say("why.gyro-cut"));
    }
    double level = plateauDeg - FALL_DEG;
    double fall = motion.cockDeg(k) - motion.cockDeg(k + 1);
    double stepS = motion.timeS(k + 1) - motion.timeS(k);
    double releaseS = motion.timeS(k) + (motion.cockDeg(k) - level) / fall * stepS;
    double rate = Math.max(50, -motion.cockRateDegPerS(k));
    double angleSd = motion.combinedSdDeg(new int[] {k, plateauAt}, new double[] {1, -1});
    double sdS = Math.hypot(angleSd / rate, Math.hypot(impact.sdS(), syncSdS / 2));
    return part ? partOfDownswing(releaseS, sdS) : beforeImpact(measure, releaseS, sdS);
  }

  private MeasureValue beforeImpact(Measure measure, double timeS, double sdS) {
    return MeasureValue.of(
        measure, "", 1000 * (impact.timeS() - timeS), 1000 * sdS, impact.grade(), impact.why());
  }

  private MeasureValue partOfDownswing(double releaseS, double sdS) {
    double downS = impact.timeS() - top.timeS();
    double part = (releaseS - top.timeS()) / downS;
    double sd = Math.hypot(sdS, (1 - part) * top.sdS()) / downS;
    return MeasureValue.of(
        Measure.WRIST_RELEASE_PART, "", 100 * part, 100 * sd, impact.grade(), impact.why());
  }

  /** Last sample before impact with more cock than the level, and the next with less; else -1. */
  private int lastAbove(double levelDeg) {
    int k = motion.indexAt(impact.timeS()) - 1;
    if (motion.cockDeg(k) > levelDeg) {
      return -1;
    }
    while (k > 0 && motion.cockDeg(k) <= levelDeg) {
      k--;
    }
    return k;
  }

  private MeasureValue rate(boolean time) {
    Measure measure = time ? Measure.WRIST_RATE_TIME : Measure.WRIST_RATE;
    int from = motion.indexAt(top.timeS());
    int to = motion.indexAt(impact.timeS()) - 1;
    double[] times = new double[to - from];
    double[] rates = new double[to - from];
    for (int k = from; k < to; k++) {
      times[k - from] = motion.timeS(k);
      rates[k - from] = -motion.cockRateDegPerS(k);
    }
    if (motion.cutBeyondRepairBefore(impact.timeS())) {
      return MeasureValue.withheld(measure, "", Words.say("why.gyro-cut"));
    }
    PeakTime peak = PeakTime.of(times, CentredMean.of(times, rates, 0.003), RATE_PART / 2);
    if (time) {
      return beforeImpact(
          measure, peak.timeS(), Math.hypot(peak.sdS(), Math.hypot(impact.sdS(), syncSdS)));
    }
    int at = Math.min(motion.size() - 1, motion.indexAt(peak.timeS()));
    double sd = Math.hypot(5, motion.cockRateSdDegPerS(at));
    return MeasureValue.of(measure, "", peak.value(), sd, Grade.MEASURED, "");
  }
}
