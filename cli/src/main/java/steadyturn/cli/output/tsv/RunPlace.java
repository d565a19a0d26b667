package steadyturn.cli.output.tsv;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Where among derivatives the results of a recording lie. */
final class RunPlace {

  private static final Pattern ENTITIES = Pattern.compile("(sub-[^_]+)(?:_(ses-[^_]+))?_.*");

  private RunPlace() {}

  /** Subject and session folders as in the raw archive; nothing for a name of another kind. */
  static String folder(String recording) {
    Matcher entities = ENTITIES.matcher(recording);
    if (!entities.matches()) {
      return "";
    }
    String session = entities.group(2) == null ? "" : entities.group(2) + "/";
    return entities.group(1) + "/" + session + "motion/";
  }
}
