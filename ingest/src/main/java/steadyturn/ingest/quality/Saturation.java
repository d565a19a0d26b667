package steadyturn.ingest.quality;

/**
 * Where the movement was larger than the unit can show.
 *
 * @param samples samples with any of the six values at the end of its range
 * @param accelSamples samples with an acceleration at the end of the range
 * @param gyroSamples samples with a rate at the end of the range
 * @param longestAccelS longest unbroken stretch of the former, s
 * @param longestGyroS longest unbroken stretch of the latter, s
 * @param accelFullScaleMps2 stated or inferred; infinite when neither
 * @param gyroFullScaleRadPerS stated or inferred; infinite when neither
 */
public record Saturation(
    int samples,
    int accelSamples,
    int gyroSamples,
    double longestAccelS,
    double longestGyroS,
    double accelFullScaleMps2,
    double gyroFullScaleRadPerS) {}
