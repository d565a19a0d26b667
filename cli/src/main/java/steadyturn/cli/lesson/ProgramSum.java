package steadyturn.cli.lesson;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import java.util.zip.ZipFile;
import org.apache.commons.math3.util.FastMath;
import org.ejml.data.DMatrixRMaj;
import steadyturn.analysis.lesson.LessonAnalyzer;
import steadyturn.fusion.orientation.OrientationRun;
import steadyturn.ingest.recording.dataset.Archive;

/**
 * What stands for the program where it reckons: a sum over its own classes and those of its
 * libraries of numbers. A version number alone does not change with each build.
 */
final class ProgramSum {

  private static final List<Class<?>> ROOMS =
      List.of(
          Archive.class,
          OrientationRun.class,
          LessonAnalyzer.class,
          ProgramSum.class,
          FastMath.class,
          DMatrixRMaj.class);

  private static final String OF_THIS_RUN = reckoned();

  private ProgramSum() {}

  /** The sum of the program that runs; of no kept answer where it cannot be told. */
  static String ofThisRun() {
    return OF_THIS_RUN;
  }

  private static String reckoned() {
    SortedMap<String, Long> parts = new TreeMap<>();
    try {
      for (Class<?> room : ROOMS) {
        add(place(room), parts);
      }
    } catch (IOException | URISyntaxException e) {
      return "unknown-" + System.nanoTime();
    }
    CRC32 sum = new CRC32();
    parts.forEach((name, its) -> sum.update((name + its).getBytes(StandardCharsets.UTF_8)));
    return String.format(Locale.ROOT, "%08x", sum.getValue());
  }

  private static Path place(Class<?> room) throws URISyntaxException {
    var source = Objects.requireNonNull(room.getProtectionDomain().getCodeSource());
    return Path.of(source.getLocation().toURI());
  }

  /** Of a jar the sums that it has of its files anyway; the words for people do not count. */
  private static void add(Path place, SortedMap<String, Long> parts) throws IOException {
    if (Files.isDirectory(place)) {
      try (Stream<Path> files = Files.walk(place)) {
        for (Path file : files.filter(Files::isRegularFile).toList()) {
          String name = place.relativize(file).toString().replace('\\', '/');
          if (counts(name)) {
            CRC32 sum = new CRC32();
            sum.update(Files.readAllBytes(file));
            parts.put(name, sum.getValue());
          }
        }
      }
    } else {
      try (ZipFile jar = new ZipFile(place.toFile())) {
        jar.stream()
            .filter(entry -> counts(entry.getName()))
            .forEach(entry -> parts.put(entry.getName(), entry.getCrc()));
      }
    }
  }

  private static boolean counts(String name) {
    return name.endsWith(".class")
        && (!name.startsWith("steadyturn/cli/") || name.startsWith("steadyturn/cli/lesson/"));
  }
}
