package steadyturn.fusion.filter.kalman;

/** Densities that the Kalman steps use, derived once from the settings. */
record KalmanCoefficients(
    double blockS,
    double startTiltVariance,
    double startBiasVariance,
    double rateMatrixVariance,
    double speedVariance,
    double placeVariance,
    double angleVariancePerS,
    double angleVariancePerTurn,
    double biasVariancePerS,
    double velocityVariancePerS,
    double speedDensity,
    double placeDensity,
    double movementCorrelationS,
    double restSpeedVariance,
    double restRateDensity) {

  static KalmanCoefficients of(KalmanSettings s) {
    return new KalmanCoefficients(
        s.blockS(),
        square(s.startTiltRad()),
        square(s.startBiasRadPerS()),
        square(s.rateMatrixSigma()),
        square(s.speedSigmaMps()),
        square(s.placeSigmaM()),
        square(s.rateNoiseRadPerSqrtS()),
        square(s.turnNoiseSqrtS()),
        square(s.biasWalkRadPerSSqrtS()),
        square(s.velocityNoiseMpsPerSqrtS()),
        square(s.speedSigmaMps()) * s.movementCorrelationS(),
        square(s.placeSigmaM()) * s.movementCorrelationS(),
        s.movementCorrelationS(),
        square(s.rest().velocitySigmaMps()),
        square(s.rest().rateSigmaRadPerSqrtS()));
  }

  /**
   * The same for a unit with so many times the noise of a usual one. Noise is a witness for the
   * other errors, which makers sell by the same grade; not a sure one, hence variances grow with
   * the ratio and not with its square (our choice).
   */
  KalmanCoefficients forNoise(double ratio) {
    return new KalmanCoefficients(
        blockS,
        startTiltVariance,
        startBiasVariance,
        ratio * rateMatrixVariance,
        speedVariance,
        placeVariance,
        angleVariancePerS,
        ratio * angleVariancePerTurn,
        biasVariancePerS,
        velocityVariancePerS,
        speedDensity,
        placeDensity,
        movementCorrelationS,
        restSpeedVariance,
        restRateDensity);
  }

  /** Variance of the statement "speed zero" made every stepS; never under that of one statement. */
  double speedVarianceOver(double stepS) {
    return speedDensity / Math.min(stepS, movementCorrelationS);
  }

  double placeVarianceOver(double stepS) {
    return placeDensity / Math.min(stepS, movementCorrelationS);
  }

  private static double square(double v) {
    return v * v;
  }
}
