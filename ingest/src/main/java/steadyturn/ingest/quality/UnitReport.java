package steadyturn.ingest.quality;

import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import steadyturn.ingest.reason.ReasonCode;
import steadyturn.ingest.sample.UnitFacts;

/**
 * What was found in one unit's stream.
 *
 * @param facts the unit
 * @param timing rate, jitter, loss, gaps
 * @param saturation values at the end of the range
 * @param rest noise, bias and gravity from the quiet stretches
 * @param findings everything worth a sentence, worst first
 */
public record UnitReport(
    UnitFacts facts, Timing timing, Saturation saturation, RestFacts rest, List<Finding> findings) {

  public UnitReport {
    findings = findings.stream().sorted((a, b) -> b.verdict().compareTo(a.verdict())).toList();
  }

  /** The worst verdict of the findings; fit for use when there is none. */
  public Verdict verdict() {
    return findings.stream().map(Finding::verdict).reduce(Verdict.FIT, Verdict::worse);
  }

  /** Whether this was found. */
  boolean says(QualityReason what) {
    return findings.stream().anyMatch(f -> f.what().code() == what);
  }

  public double rateHz() {
    return timing.rateHz();
  }

  public double lostPct() {
    return timing.lostPct();
  }

  public int saturatedSamples() {
    return saturation.samples();
  }

  UnitReport without(Set<ReasonCode> some) {
    return new UnitReport(
        facts,
        timing,
        saturation,
        rest,
        findings.stream().filter(f -> !some.contains(f.what().code())).toList());
  }

  /** The same report with more findings, as those that need a look at several units. */
  public UnitReport with(List<Finding> more) {
    return new UnitReport(
        facts, timing, saturation, rest, Stream.concat(findings.stream(), more.stream()).toList());
  }
}
