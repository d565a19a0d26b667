package steadyturn.ingest.recording.dataset;

import java.nio.file.Path;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * A BIDS file name taken apart: {@code sub-mika_ses-01_task-swing_tracksys-pelvis_motion.tsv} is
 * the entities sub, ses, task and tracksys, the suffix {@code motion} and the ending {@code tsv}.
 *
 * @param entities key and label, in the order of the name
 */
public record MotionName(Map<String, String> entities, String suffix, String ending) {

  private static final Pattern LABEL = Pattern.compile("[0-9A-Za-z]+");
  private static final Pattern ENTITY = Pattern.compile("([a-z]+)-([0-9A-Za-z]+)");

  public MotionName {
    entities = Collections.unmodifiableMap(new LinkedHashMap<>(entities));
  }

  /** Takes a name apart; empty when it is no BIDS name. */
  public static Optional<MotionName> parse(String fileName) {
    int dot = fileName.indexOf('.');
    if (dot < 0) {
      return Optional.empty();
    }
    List<String> parts = List.of(fileName.substring(0, dot).split("_", -1));
    Map<String, String> entities = new LinkedHashMap<>();
    for (String part : parts.subList(0, parts.size() - 1)) {
      var entity = ENTITY.matcher(part);
      if (!entity.matches() || entities.put(entity.group(1), entity.group(2)) != null) {
        return Optional.empty();
      }
    }
    String suffix = parts.get(parts.size() - 1);
    return LABEL.matcher(suffix).matches()
        ? Optional.of(new MotionName(entities, suffix, fileName.substring(dot + 1)))
        : Optional.empty();
  }

  /** The label of an entity, or an empty string when the name lacks it. */
  String label(String key) {
    return entities.getOrDefault(key, "");
  }

  public boolean isMotionTable() {
    return suffix.equals("motion") && ending.equals("tsv") && !label("sub").isEmpty();
  }

  /** What the files of all units of one run share: the name without tracksys and suffix. */
  public String runId() {
    return entities.entrySet().stream()
        .filter(entity -> !entity.getKey().equals("tracksys"))
        .map(entity -> entity.getKey() + "-" + entity.getValue())
        .collect(Collectors.joining("_"));
  }

  /** The name of a file, taken apart; empty when it is no BIDS name. */
  public static Optional<MotionName> of(Path file) {
    return parse(String.valueOf(file.getFileName()));
  }

  /** The same for one that must be a motion table. */
  static Optional<MotionName> ofTable(Path file) {
    return file.toString().endsWith("motion.tsv") // most others need no look at their parts
        ? of(file).filter(MotionName::isMotionTable)
        : Optional.empty();
  }

  /** True when a sidecar of this name speaks for the data file: all its entities agree with it. */
  boolean speaksFor(MotionName data) {
    return data.entities.entrySet().containsAll(entities.entrySet());
  }
}
