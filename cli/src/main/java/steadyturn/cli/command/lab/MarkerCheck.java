package steadyturn.cli.command.lab;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.lesson.LessonAnalyzer;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.marker.AgreementRow;
import steadyturn.analysis.marker.MarkerAgreement;
import steadyturn.analysis.marker.PelvisMarkers;
import steadyturn.analysis.reading.LessonReading;
import steadyturn.cli.lesson.Lessons;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.words.Words;
import steadyturn.ingest.marker.TrcFile;

/** Our pelvis in one recording beside that of an optical laboratory. */
final class MarkerCheck {

  @Option(names = "--against", paramLabel = "MARKERS")
  private Optional<Path> markers = Optional.empty();

  @Parameters(arity = "0..1", paramLabel = "RECORDING")
  private Optional<Path> recording = Optional.empty();

  @Option(names = "--markers", paramLabel = "NAMES")
  private String names = "RASI,LASI,RPSI,LPSI";

  @Option(names = "--up", paramLabel = "y|z")
  private PelvisMarkers.Up up = PelvisMarkers.Up.Z;

  boolean isAsked() {
    return markers.isPresent() || recording.isPresent();
  }

  int run(Console console) {
    if (markers.isEmpty() || recording.isEmpty()) {
      throw console.wrongUsage("name both: --against MARKERS.trc RECORDING");
    }
    List<String> four = Arrays.stream(names.split(",")).map(String::strip).toList();
    if (four.size() != 4) {
      throw console.wrongUsage("--markers takes right front, left front, right back, left back");
    }
    PelvisMarkers theirs = PelvisMarkers.of(TrcFile.read(markers.get()), four, up);
    Lessons lessons = Lessons.under(List.of(recording.get()), console);
    List<LessonResult> results = new ArrayList<>();
    lessons.each(
        lesson ->
            results.addAll(
                new LessonAnalyzer(AnalysisSettings.defaults())
                    .analyze(new LessonReading(lesson, lessons))));
    if (results.size() != 1) {
      console.warn(Words.say("against.one", results.size()));
      return Failures.FAILED;
    }
    print(MarkerAgreement.of(results.get(0), theirs), results.get(0), console);
    return lessons.allWell() ? Failures.DONE : Failures.FAILED;
  }

  private static void print(MarkerAgreement found, LessonResult ours, Console console) {
    console
        .out()
        .println(
            Words.say(
                "against.head",
                ours.recording(),
                found.swings(),
                ours.swings().size(),
                found.clockMissDeg(),
                found.skewPpm()));
    console.out().println(Words.say("against.line." + ours.aim()));
    console.out().println();
    console.out().printf(Locale.ROOT, "%-14s %-22s %3s %16s %18s %8s%n", (Object[]) head());
    found.rows().forEach(row -> console.out().println(line(row)));
    console.out().println();
    console.out().println(Words.say("against.foot"));
  }

  private static String[] head() {
    return Words.say("against.columns").split(";");
  }

  private static String line(AgreementRow row) {
    return String.format(
        Locale.ROOT,
        "%-14s %-22s %3d %9.1f +-%5.1f %8.1f to %6.1f %7.0f%%",
        row.measure().id(),
        row.at(),
        row.swings(),
        row.bias(),
        row.biasHalf(),
        row.low(),
        row.high(),
        row.coveredPct());
  }
}
