package steadyturn.ingest.quality;

import java.util.ArrayList;
import java.util.List;
import steadyturn.ingest.sample.StandardGravity;
import steadyturn.ingest.sample.UnitStream;
import steadyturn.ingest.words.Words;

/** Judges one unit's stream by itself. */
public final class UnitQuality {

  private UnitQuality() {}

  /** Judges with the default limits. */
  public static UnitReport judge(UnitStream unit) {
    return judge(unit, QualityLimits.defaults());
  }

  /** Judges with limits of the caller's. Never throws for bad data: bad data is its subject. */
  public static UnitReport judge(UnitStream unit, QualityLimits limits) {
    Timing timing = TimingCheck.of(unit);
    Saturation saturation = SaturationCheck.of(unit, timing.rateHz());
    RestFacts rest = RestCheck.of(unit, timing.rateHz());
    List<Finding> findings = new ArrayList<>(StuckCheck.of(unit, timing.rateHz(), saturation));
    findings.addAll(ofLength(unit, timing, limits));
    boolean isDead = findings.stream().anyMatch(f -> f.verdict() == Verdict.NOT_USABLE);
    if (!isDead) {
      findings.addAll(ofRate(unit, timing, limits));
      findings.addAll(ofLoss(timing, limits));
      findings.addAll(ofSaturation(saturation, timing, limits));
      findings.addAll(ofRest(rest, limits));
    }
    return new UnitReport(unit.facts(), timing, saturation, rest, findings);
  }

  private static List<Finding> ofLength(UnitStream unit, Timing timing, QualityLimits limits) {
    double lengthS = unit.size() < 2 ? 0 : unit.timeS(unit.size() - 1) - unit.timeS(0);
    if (lengthS >= limits.shortestS() && timing.samples() >= 50) {
      return List.of();
    }
    return List.of(
        new Finding(
            Check.LENGTH,
            Verdict.NOT_USABLE,
            Words.say("quality.short", timing.samples(), lengthS),
            Words.say("quality.short.do")));
  }

  private static List<Finding> ofRate(UnitStream unit, Timing timing, QualityLimits limits) {
    double rateHz = timing.rateHz();
    double statedHz = unit.facts().nominalRateHz();
    List<Finding> findings = new ArrayList<>();
    if (rateHz > 0 && rateHz < limits.slowRateHz()) {
      findings.add(
          new Finding(
              Check.RATE,
              rateHz < limits.slowestRateHz() ? Verdict.NOT_USABLE : Verdict.WIDER_INTERVALS,
              Words.say("quality.slow", rateHz),
              Words.say("quality.slow.do")));
    }
    if (rateHz > 0 && Math.abs(rateHz / statedHz - 1) > limits.rateOffPct() / 100) {
      findings.add(
          new Finding(
              Check.RATE,
              Verdict.WIDER_INTERVALS,
              Words.say("quality.rate", rateHz, statedHz),
              Words.say("quality.rate.do")));
    }
    return findings;
  }

  private static List<Finding> ofLoss(Timing timing, QualityLimits limits) {
    List<Finding> findings = new ArrayList<>();
    double scatteredPct = timing.scatteredLossPct(limits.gapS());
    if (scatteredPct > limits.lostWiderPct()) {
      findings.add(
          new Finding(
              Check.LOSS,
              scatteredPct > limits.lostTooManyPct() ? Verdict.NOT_USABLE : Verdict.WIDER_INTERVALS,
              Words.say("quality.loss", scatteredPct),
              Words.say("quality.loss.do")));
    }
    if (timing.longestGapS() > limits.gapS()) {
      long count = timing.gaps().stream().filter(g -> g.durationS() > limits.gapS()).count();
      findings.add(
          new Finding(
              Check.GAP,
              Verdict.WIDER_INTERVALS,
              Words.say("quality.gap", count, timing.longestGapS()),
              Words.say("quality.gap.do")));
    }
    return findings;
  }

  private static List<Finding> ofSaturation(
      Saturation saturation, Timing timing, QualityLimits limits) {
    List<Finding> findings = new ArrayList<>();
    if (saturation.gyroSamples() > 0) {
      double pct = 100.0 * saturation.gyroSamples() / Math.max(1, timing.samples());
      findings.add(
          new Finding(
              Check.SATURATION,
              pct > limits.saturatedTooManyPct() ? Verdict.NOT_USABLE : Verdict.WIDER_INTERVALS,
              Words.say(
                  "quality.gyro-cut",
                  saturation.gyroSamples(),
                  Math.toDegrees(saturation.gyroFullScaleRadPerS())),
              Words.say("quality.gyro-cut.do")));
    }
    if (saturation.accelSamples() > 0) {
      findings.add(ofAccelSaturation(saturation, limits));
    }
    return findings;
  }

  private static Finding ofAccelSaturation(Saturation saturation, QualityLimits limits) {
    boolean onlyShocks = saturation.longestAccelS() <= limits.shockS();
    int samples = saturation.accelSamples();
    double fullScaleG = saturation.accelFullScaleMps2() / StandardGravity.MPS2;
    return onlyShocks
        ? new Finding(
            Check.SATURATION,
            Verdict.FIT,
            Words.say("quality.shock", samples, fullScaleG),
            Words.say("quality.shock.do"))
        : new Finding(
            Check.SATURATION,
            Verdict.WIDER_INTERVALS,
            Words.say("quality.accel-cut", samples, fullScaleG, saturation.longestAccelS()),
            Words.say("quality.accel-cut.do"));
  }

  private static List<Finding> ofRest(RestFacts rest, QualityLimits limits) {
    if (!rest.found()) {
      return List.of(
          new Finding(
              Check.REST,
              Verdict.WIDER_INTERVALS,
              Words.say("quality.no-rest"),
              Words.say("quality.no-rest.do")));
    }
    List<Finding> findings = new ArrayList<>();
    if (rest.gyroNoiseRadPerS() > limits.gyroNoiseRadPerS()
        || rest.accelNoiseMps2() > limits.accelNoiseMps2()) {
      findings.add(
          new Finding(
              Check.NOISE,
              Verdict.WIDER_INTERVALS,
              Words.say(
                  "quality.noise", Math.toDegrees(rest.gyroNoiseRadPerS()), rest.accelNoiseMps2()),
              Words.say("quality.noise.do")));
    }
    if (rest.gyroBiasNormRadPerS() > limits.gyroBiasRadPerS()) {
      findings.add(
          new Finding(
              Check.GYRO_BIAS,
              Verdict.WIDER_INTERVALS,
              Words.say("quality.bias", Math.toDegrees(rest.gyroBiasNormRadPerS())),
              Words.say("quality.bias.do")));
    }
    findings.addAll(ofGravity(rest, limits));
    return findings;
  }

  private static List<Finding> ofGravity(RestFacts rest, QualityLimits limits) {
    double offPct = 100 * (rest.accelNormMps2() / StandardGravity.MPS2 - 1);
    if (Math.abs(offPct) <= limits.gravityWiderPct()) {
      return List.of();
    }
    String what = Words.say("quality.gravity", rest.accelNormMps2());
    return Math.abs(offPct) <= limits.gravityTooFarPct()
        ? List.of(
            new Finding(
                Check.GRAVITY, Verdict.WIDER_INTERVALS, what, Words.say("quality.gravity.do")))
        : List.of(
            new Finding(Check.GRAVITY, Verdict.NOT_USABLE, what, guess(rest.accelNormMps2())));
  }

  private static String guess(double normMps2) {
    if (Math.abs(normMps2 - 1) < 0.05) {
      return Words.say("quality.gravity.in-g");
    }
    if (normMps2 < 0.5) {
      return Words.say("quality.gravity.taken-out");
    }
    if (Math.abs(normMps2 / 1000 - 1) < 0.05 || Math.abs(normMps2 / 9806.65 - 1) < 0.05) {
      return Words.say("quality.gravity.thousandths");
    }
    return Words.say("quality.gravity.far.do");
  }
}
