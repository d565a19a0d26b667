package steadyturn.cli.output.rows;

import java.io.IOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.Driver;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Properties;
import java.util.ServiceLoader;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import steadyturn.cli.words.Words;

/**
 * The driver of DuckDB, a jar in the folder of plug-ins: 80 MB that most do without. Spoken to by
 * {@code java.sql} alone.
 */
public final class DatabaseDriver {

  private static final String IN_MEMORY = "jdbc:duckdb:";

  /** Its native library is loaded once a process. */
  private static final Map<Path, Driver> LOADED = new ConcurrentHashMap<>();

  private DatabaseDriver() {}

  /**
   * A database in memory, which reads and writes files and fetches nothing.
   *
   * @throws IOException when the driver is not there; the message says how to fetch it
   */
  public static Connection open(Path plugins) throws IOException {
    Driver driver = driver(plugins);
    Properties settings = new Properties();
    settings.setProperty("autoinstall_known_extensions", "false");
    settings.setProperty("autoload_known_extensions", "false");
    settings.setProperty("memory_limit", "512MB");
    settings.setProperty("temp_directory", System.getProperty("java.io.tmpdir"));
    try {
      return Objects.requireNonNull(driver.connect(IN_MEMORY, settings), IN_MEMORY);
    } catch (SQLException e) {
      throw new IOException(e.getMessage(), e);
    }
  }

  private static Driver driver(Path plugins) throws IOException {
    Path folder = plugins.toAbsolutePath().normalize();
    Driver known = LOADED.get(folder);
    Driver driver = known == null ? found(folder) : known;
    LOADED.put(folder, driver);
    return driver;
  }

  private static Driver found(Path folder) throws IOException {
    if (Files.isDirectory(folder)) {
      try (Stream<Path> files = Files.list(folder)) {
        for (Path jar : files.filter(f -> f.toString().endsWith(".jar")).sorted().toList()) {
          Optional<Driver> driver = ofJar(jar);
          if (driver.isPresent()) {
            return driver.get();
          }
        }
      }
    }
    throw new IOException(Words.say("tables.no-driver", folder));
  }

  private static Optional<Driver> ofJar(Path jar) throws IOException {
    ClassLoader above = ClassLoader.getPlatformClassLoader();
    ClassLoader loader = new URLClassLoader(new URL[] {jar.toUri().toURL()}, above);
    List<Driver> its =
        ServiceLoader.load(Driver.class, loader).stream()
            .filter(provider -> provider.type().getClassLoader() == loader)
            .<Driver>map(ServiceLoader.Provider::get)
            .toList();
    for (Driver driver : its) {
      try {
        if (driver.acceptsURL(IN_MEMORY)) {
          return Optional.of(driver);
        }
      } catch (SQLException e) {
        throw new IOException(jar + ": " + e.getMessage(), e);
      }
    }
    return Optional.empty();
  }
}
