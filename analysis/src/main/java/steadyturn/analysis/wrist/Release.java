package steadyturn.analysis.wrist;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.tempo.PeakTime;
import steadyturn.fusion.attitude.CentredParabola;
import steadyturn.ingest.reason.Reason;

/**
 * The release: the last fall of the cock through its plateau less 15 deg. The plateau is the 90th
 * percentile of the cock from the top to 40 ms before impact. Noise law of the time: sigma_t^2 =
 * sigma_impact^2 + (sigma_sync / 2)^2 + (sigma_angle / rate)^2: impact is the mean of two clocks,
 * and sigma_angle holds the rest of what they are apart. The same half of the clocks counts for the
 * time of the highest rate.
 */
record Release(WristMotion motion, EventTime top, EventTime impact, Plateau plateau) {

  static final double LEAST_PLATEAU_DEG = 20;
  private static final double FALL_DEG = 15;
  private static final double PLATEAU_END_S = 0.04;
  // above the gyroscope's noise, and low enough for a lopsided peak to be seen as it is: our choice
  private static final double RATE_PART = 0.005;
  private static final double SMOOTH_S = 0.006;
  private static final double TIED_S = 0.0015;
  private static final double EVENLY = Math.sqrt(12);
  // two units that ring on their skin, each its own way, change a peak by so large a part of it,
  // and move it: our assumptions
  private static final double SKIN_RINGS_PART = 0.04;
  private static final double SKIN_RINGS_S = 0.006;

  /** Finds the plateau; empty where top and impact are too close for one. */
  static Optional<Release> of(WristMotion motion, EventTime top, EventTime impact) {
    int from = motion.indexAt(top.timeS());
    int to = motion.indexAt(impact.shownS() - PLATEAU_END_S);
    if (to - from < 5 || motion.indexAt(impact.shownS()) >= motion.size()) {
      return Optional.empty();
    }
    return Optional.of(new Release(motion, top, impact, Plateau.of(motion, from, to)));
  }

  /** Clocks that no blow tied count whole: then one unit alone felt this one. */
  private double clockSdS() {
    return motion.syncSdS() > TIED_S ? motion.syncSdS() : motion.syncSdS() / 2;
  }

  List<MeasureValue> measures() {
    return List.of(time(false), time(true), rate(false), rate(true));
  }

  private MeasureValue time(boolean part) {
    Measure measure = part ? Measure.WRIST_RELEASE_PART : Measure.WRIST_RELEASE;
    if (plateau.deg() < LEAST_PLATEAU_DEG) {
      return MeasureValue.withheld(measure, "", MeasureReason.LITTLE_COCK, LEAST_PLATEAU_DEG);
    }
    int k = lastAbove(plateau.deg() - FALL_DEG);
    if (k < 0) {
      return MeasureValue.withheld(measure, "", MeasureReason.KEEPS_PAST_IMPACT);
    }
    if (motion.cutBeyondRepairBefore(motion.timeS(k + 1))) {
      return MeasureValue.withheld(measure, "", MeasureReason.GYRO_CUT);
    }
    double level = plateau.deg() - FALL_DEG;
    double fall = motion.cockDeg(k) - motion.cockDeg(k + 1);
    double stepS = motion.timeS(k + 1) - motion.timeS(k);
    double releaseS = motion.timeS(k) + (motion.cockDeg(k) - level) / fall * stepS;
    double rate = Math.max(50, -motion.cockRateDegPerS(k));
    double angleSd = plateau.againstSdDeg(motion, k, 1);
    double sdS = Math.hypot(angleSd / rate, Math.hypot(impact.sdS(), clockSdS()));
    return part ? partOfDownswing(releaseS, sdS) : beforeImpact(measure, releaseS, sdS);
  }

  private MeasureValue beforeImpact(Measure measure, double timeS, double sdS) {
    return MeasureValue.of(
        measure, "", 1000 * (impact.shownS() - timeS), 1000 * sdS, impact.grade(), impact.why());
  }

  private MeasureValue partOfDownswing(double releaseS, double sdS) {
    double downS = impact.shownS() - top.shownS();
    double part = (releaseS - top.shownS()) / downS;
    double sd = Math.hypot(sdS, (1 - part) * top.sdS()) / downS;
    return MeasureValue.of(
        Measure.WRIST_RELEASE_PART, "", 100 * part, 100 * sd, impact.grade(), impact.why());
  }

  /** Last sample before impact with more cock than the level, and the next with less; else -1. */
  private int lastAbove(double levelDeg) {
    int k = motion.indexAt(impact.shownS()) - 1;
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
    int to = motion.indexAt(impact.shownS()) - 1;
    double[] times = IntStream.range(from, to).mapToDouble(motion::timeS).toArray();
    double[] rates =
        IntStream.range(from, to).mapToDouble(k -> -motion.cockRateDegPerS(k)).toArray();
    if (motion.cutBeyondRepairBefore(impact.shownS())) {
      return MeasureValue.withheld(measure, "", MeasureReason.GYRO_CUT);
    }
    PeakTime peak = PeakTime.of(times, CentredParabola.of(times, rates, SMOOTH_S), RATE_PART);
    int at = Math.min(motion.size() - 1, motion.indexAt(peak.timeS()));
    if (time) {
      return beforeImpact(
          measure,
          peak.timeS(),
          Math.hypot(rateTimeSdS(peak, at), Math.hypot(impact.sdS(), clockSdS())));
    }
    return MeasureValue.of(
        measure,
        "",
        peak.value(),
        Math.hypot(motion.spreads().cockRateDegPerS(at), SKIN_RINGS_PART * peak.value()),
        Grade.MEASURED,
        Reason.NONE);
  }

  /** A slope in the rate's error moves its peak by that slope over the bend of the peak. */
  private double rateTimeSdS(PeakTime peak, int at) {
    double halfS = Math.sqrt(3) * peak.sdS();
    double bend = 2 * RATE_PART * peak.value() / (halfS * halfS);
    double stepS = motion.timeS(at) - motion.timeS(at - 1);
    return Math.hypot(
        motion.spreads().cockBendDegPerS2(at) / bend, Math.hypot(SKIN_RINGS_S, stepS / EVENLY));
  }
}
