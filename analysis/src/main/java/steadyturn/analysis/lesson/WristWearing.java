package steadyturn.analysis.lesson;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.wear.StepResult;
import steadyturn.fusion.wear.wrist.WristSteps;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Recording;

/** What the wear steps have said of the wrist units so far, each of them read once. */
final class WristWearing {

  private final Map<String, StepResult> results = new LinkedHashMap<>();
  private final Set<String> read = new HashSet<>();
  private WristSteps steps = WristSteps.NONE;

  WristWearing() {}

  /** Knows what another one knows. */
  WristWearing(WristWearing other) {
    results.putAll(other.results);
    read.addAll(other.read);
    steps = other.steps;
  }

  /** A step whose movement was folded in once is not taken for a second one. */
  void read(Recording recording, RestBiases biases) {
    for (Mark mark : recording.marks()) {
      String key = recording.id() + " " + mark.trialType() + " " + mark.onsetS();
      if (!read.contains(key)) {
        steps = WristSteps.of(recording.with(List.of(mark)), biases, steps);
        for (StepResult result : steps.results()) {
          results.put(result.step(), result);
          if (result.used()) {
            read.add(key);
          }
        }
      }
    }
  }

  WristSteps steps() {
    return steps;
  }

  /** How each step went, the latest of its kind. */
  List<StepResult> results() {
    return List.copyOf(results.values());
  }
}
