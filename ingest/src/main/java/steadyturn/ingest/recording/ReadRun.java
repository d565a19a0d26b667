package steadyturn.ingest.recording;

import java.util.List;
import steadyturn.ingest.sample.Recording;

/**
 * A run that was read.
 *
 * @param notices what was left out or taken as given, one sentence each, with its place
 */
public record ReadRun(Recording recording, List<String> notices) {

  public ReadRun {
    notices = List.copyOf(notices);
  }
}
