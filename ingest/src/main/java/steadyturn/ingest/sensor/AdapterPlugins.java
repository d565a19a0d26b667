package steadyturn.ingest.sensor;

import java.io.IOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.ServiceLoader;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Stream;

/**
 * Adapters in jars beside the program. Each jar has a class loader of its own above the program's;
 * its classes are found as in the program, by {@code META-INF/services}. A jar that is broken is
 * told and passed over, the others serve.
 */
public final class AdapterPlugins {

  /**
   * A jar that does not serve.
   *
   * @param why as far as Java tells
   */
  public record PassedOver(Path jar, String why) {}

  /** A jar that names a database driver is for others. */
  private static final String DATABASE = "META-INF/services/java.sql.Driver";

  private static volatile List<Supplier<SensorAdapter>> loaded = List.of();

  private static volatile Optional<Path> loadedFrom = Optional.empty();

  private AdapterPlugins() {}

  /** The folder that was looked in last; empty before. */
  public static Optional<Path> loadedFrom() {
    return loadedFrom;
  }

  /** New instances of the adapters of all jars that were loaded last. */
  static Stream<SensorAdapter> adapters() {
    return loaded.stream().map(Supplier::get);
  }

  /** Loads every jar of a folder in place of what was loaded before; a folder may be missing. */
  public static List<PassedOver> load(Path folder) throws IOException {
    List<Supplier<SensorAdapter>> good = new ArrayList<>();
    List<PassedOver> passedOver = new ArrayList<>();
    loaded = List.of();
    loadedFrom = Optional.of(folder);
    Set<String> names = new HashSet<>();
    SensorAdapters.all().forEach(adapter -> names.add(adapter.name()));
    for (Path jar : jars(folder)) {
      try {
        good.addAll(ofJar(jar, names));
      } catch (IOException | RuntimeException | Error e) { // whatever is in a jar, the others serve
        passedOver.add(new PassedOver(jar, String.valueOf(e.getMessage())));
      }
    }
    loaded = List.copyOf(good);
    return passedOver;
  }

  private static List<Path> jars(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(f -> f.toString().endsWith(".jar")).sorted().toList();
    }
  }

  private static List<Supplier<SensorAdapter>> ofJar(Path jar, Set<String> names)
      throws IOException {
    URL[] urls = {jar.toUri().toURL()};
    URLClassLoader loader = new URLClassLoader(urls, SensorAdapter.class.getClassLoader());
    List<ServiceLoader.Provider<SensorAdapter>> providers =
        ServiceLoader.load(SensorAdapter.class, loader).stream()
            .filter(provider -> provider.type().getClassLoader() == loader)
            .toList();
    if (providers.isEmpty() && loader.findResource(DATABASE) != null) {
      return List.of();
    }
    if (providers.isEmpty()) {
      throw new IOException("it names no adapter in META-INF/services");
    }
    List<String> its = new ArrayList<>();
    for (ServiceLoader.Provider<SensorAdapter> provider : providers) {
      String name = provider.get().name();
      if (names.contains(name) || its.contains(name)) {
        throw new IOException("there is an adapter " + name + " already");
      }
      its.add(name);
    }
    names.addAll(its);
    return List.copyOf(providers);
  }
}
