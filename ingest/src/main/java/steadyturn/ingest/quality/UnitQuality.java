package steadyturn.ingest.quality;

import static java.util.Locale.ROOT;

import java.util.ArrayList;
import java.util.List;
import steadyturn.ingest.sample.UnitStream;

/** Judges one unit's stream by itself. */
public final class UnitQuality {

  private static final double STANDARD_GRAVITY_MPS2 = 9.80665;

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
            String.format(
                ROOT, "There are only %d whole samples in %.1f s.", timing.samples(), lengthS),
            "Record again, and let the recording run until after the swing's finish."));
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
              String.format(ROOT, "The unit gives only %.0f samples a second.", rateHz),
              "Set it to 200 Hz or more; 500 Hz is best."));
    }
    if (rateHz > 0 && Math.abs(rateHz / statedHz - 1) > limits.rateOffPct() / 100) {
      findings.add(
          new Finding(
              Check.RATE,
              Verdict.WIDER_INTERVALS,
              String.format(
                  ROOT, "The unit runs at %.1f Hz, not at the stated %.1f Hz.", rateHz, statedHz),
              "Check the rate that the unit is set to and the time column of the recording."));
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
              String.format(ROOT, "%.1f %% of the samples are lost here and there.", scatteredPct),
              "Bring the receiver closer, charge the unit, or use a cable."));
    }
    if (timing.longestGapS() > limits.gapS()) {
      long count = timing.gaps().stream().filter(g -> g.durationS() > limits.gapS()).count();
      findings.add(
          new Finding(
              Check.GAP,
              Verdict.WIDER_INTERVALS,
              String.format(ROOT, "%d gap(s), the longest %.2f s.", count, timing.longestGapS()),
              "Swings that fall into a gap are left out; the others count."));
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
              String.format(
                  ROOT,
                  "In %d samples the unit turned faster than the %.0f deg/s it can show.",
                  saturation.gyroSamples(),
                  Math.toDegrees(saturation.gyroFullScaleRadPerS())),
              "Set the gyroscope to its largest range (2000 deg/s or more)."));
    }
    if (saturation.accelSamples() > 0) {
      findings.add(ofAccelSaturation(saturation, limits));
    }
    return findings;
  }

  private static Finding ofAccelSaturation(Saturation saturation, QualityLimits limits) {
    boolean onlyShocks = saturation.longestAccelS() <= limits.shockS();
    String what =
        String.format(
            ROOT,
            "In %d samples the acceleration was above the %.0f g that the unit can show",
            saturation.accelSamples(),
            saturation.accelFullScaleMps2() / STANDARD_GRAVITY_MPS2);
    return onlyShocks
        ? new Finding(
            Check.SATURATION,
            Verdict.FIT,
            what + ", only for moments as an impact gives.",
            "Nothing needs doing.")
        : new Finding(
            Check.SATURATION,
            Verdict.WIDER_INTERVALS,
            what + String.format(ROOT, ", for up to %.2f s.", saturation.longestAccelS()),
            "Set the accelerometer to its largest range (16 g or more).");
  }

  private static List<Finding> ofRest(RestFacts rest, QualityLimits limits) {
    if (!rest.found()) {
      return List.of(
          new Finding(
              Check.REST,
              Verdict.WIDER_INTERVALS,
              "The unit is never still for 0.7 s.",
              "Lay the units on a table for two seconds first, and stand still before each swing."));
    }
    List<Finding> findings = new ArrayList<>();
    if (rest.gyroNoiseRadPerS() > limits.gyroNoiseRadPerS()
        || rest.accelNoiseMps2() > limits.accelNoiseMps2()) {
      findings.add(
          new Finding(
              Check.NOISE,
              Verdict.WIDER_INTERVALS,
              String.format(
                  ROOT,
                  "Even at its quietest the unit shows %.1f deg/s and %.2f m/s^2 of unrest.",
                  Math.toDegrees(rest.gyroNoiseRadPerS()),
                  rest.accelNoiseMps2()),
              "Lay the unit on a table for two seconds; if it stays, use another unit."));
    }
    if (rest.gyroBiasNormRadPerS() > limits.gyroBiasRadPerS()) {
      findings.add(
          new Finding(
              Check.GYRO_BIAS,
              Verdict.WIDER_INTERVALS,
              String.format(
                  ROOT,
                  "At rest the gyroscope shows a turn of %.1f deg/s.",
                  Math.toDegrees(rest.gyroBiasNormRadPerS())),
              "Let the unit warm up for some minutes and begin with two seconds on a table."));
    }
    findings.addAll(ofGravity(rest, limits));
    return findings;
  }

  private static List<Finding> ofGravity(RestFacts rest, QualityLimits limits) {
    double offPct = 100 * (rest.accelNormMps2() / STANDARD_GRAVITY_MPS2 - 1);
    if (Math.abs(offPct) <= limits.gravityWiderPct()) {
      return List.of();
    }
    String what =
        String.format(
            ROOT,
            "At rest the accelerometer shows %.2f m/s^2 where 9.81 is right.",
            rest.accelNormMps2());
    return Math.abs(offPct) <= limits.gravityTooFarPct()
        ? List.of(
            new Finding(
                Check.GRAVITY,
                Verdict.WIDER_INTERVALS,
                what,
                "Calibrate the unit in six positions."))
        : List.of(
            new Finding(Check.GRAVITY, Verdict.NOT_USABLE, what, guess(rest.accelNormMps2())));
  }

  private static String guess(double normMps2) {
    if (Math.abs(normMps2 - 1) < 0.05) {
      return "It is probably in g: say so in the recording's units column.";
    }
    if (normMps2 < 0.5) {
      return "Gravity was probably taken out: record the raw acceleration.";
    }
    if (Math.abs(normMps2 / 1000 - 1) < 0.05 || Math.abs(normMps2 / 9806.65 - 1) < 0.05) {
      return "It is probably in thousandths: check the recording's units column.";
    }
    return "Check its units and scale, or calibrate the unit in six positions.";
  }
}
