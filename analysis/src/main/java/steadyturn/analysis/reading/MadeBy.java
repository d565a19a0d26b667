package steadyturn.analysis.reading;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.lesson.UnitResult;
import steadyturn.ingest.recording.disk.ProgramVersion;

/**
 * What results rest on besides the recordings.
 *
 * @param programVersion such as {@code 0.1.0-SNAPSHOT}
 * @param settings those of the analysis, in one line
 * @param calibrations of units that were used, by serial number and day
 */
public record MadeBy(String programVersion, String settings, List<Calibrated> calibrations) {

  public MadeBy {
    calibrations = List.copyOf(calibrations);
  }

  /**
   * A calibration that was used.
   *
   * @param day of its last part
   */
  public record Calibrated(String serialNumber, LocalDate day) {}

  /** Of results with these units. */
  public static MadeBy of(AnalysisSettings settings, Stream<UnitResult> units) {
    return new MadeBy(
        ProgramVersion.current(),
        inOneLine(settings),
        units
            .flatMap(u -> u.calibratedOn().map(on -> new Calibrated(u.serialNumber(), on)).stream())
            .distinct()
            .sorted(Comparator.comparing(Calibrated::serialNumber).thenComparing(Calibrated::day))
            .toList());
  }

  /** Settings in one line; whether curves are drawn changes no value. */
  public static String inOneLine(AnalysisSettings settings) {
    return settings.withoutCurves().toString();
  }
}
