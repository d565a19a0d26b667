package steadyturn.fusion.orientation;

import steadyturn.fusion.filter.ComplementaryFilter;
import steadyturn.fusion.filter.ComplementarySettings;
import steadyturn.fusion.filter.OrientationFilter;
import steadyturn.fusion.filter.SampleLimits;
import steadyturn.fusion.filter.kalman.ErrorStateKalmanFilter;
import steadyturn.fusion.filter.kalman.KalmanSettings;
import steadyturn.fusion.filter.lowpass.LowPassFilter;
import steadyturn.fusion.filter.lowpass.LowPassSettings;
import steadyturn.fusion.rotation.MutableQuaternion;
import steadyturn.ingest.sample.Offered;
import steadyturn.ingest.sample.UnitStream;

/** Finds the orientation of a unit over a whole recording. */
@Offered
public record OrientationRun(KalmanSettings kalman) {

  public static OrientationRun withDefaults() {
    return new OrientationRun(KalmanSettings.standard());
  }

  /** The orientation at every sample, unit to earth, with one sigma. */
  public OrientationTrack run(UnitStream stream, OrientationMethod method) {
    SampleLimits limits = SampleLimits.of(stream.facts());
    KalmanSettings settings = kalman.forRate(stream.facts().nominalRateHz());
    return switch (method) {
      case ONLINE -> follow(new ErrorStateKalmanFilter(settings, limits), stream);
      case OFFLINE -> new OrientationSmoother(settings, limits, stream).run();
      case LOW_PASS -> follow(new LowPassFilter(LowPassSettings.standard(), limits), stream);
      case COMPLEMENTARY ->
          follow(new ComplementaryFilter(ComplementarySettings.standard(), limits), stream);
    };
  }

  /** Runs any filter over a recording. */
  public static OrientationTrack follow(OrientationFilter filter, UnitStream stream) {
    OrientationTrack track = OrientationTrack.forInstants(stream.timeColumnS());
    MutableQuaternion q = new MutableQuaternion();
    for (int i = 0; i < stream.size(); i++) {
      feed(filter, stream, i);
      filter.copyQEarthUnit(q);
      track.set(i, q, filter.inclinationSigmaRad(), filter.headingSigmaRad());
    }
    return track;
  }

  public static void feed(OrientationFilter filter, UnitStream stream, int i) {
    double stepS = i == 0 ? 0 : stream.timeS(i) - stream.timeS(i - 1);
    filter.update(
        stream.gyroRadPerS(0, i),
        stream.gyroRadPerS(1, i),
        stream.gyroRadPerS(2, i),
        stream.accelMps2(0, i),
        stream.accelMps2(1, i),
        stream.accelMps2(2, i),
        stepS);
  }
}
