package steadyturn.analysis.lesson;

import steadyturn.ingest.sample.BodyPoint;

/** What a result says of one unit. Lost samples in percent of those expected. */
public record UnitResult(
    BodyPoint point, String serialNumber, double rateHz, double lostPct, int saturatedSamples) {}
