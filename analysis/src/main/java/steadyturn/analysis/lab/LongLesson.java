package steadyturn.analysis.lab;

import java.util.List;
import steadyturn.analysis.lab.truth.LessonTruth;
import steadyturn.ingest.recording.write.UnitPieces;
import steadyturn.ingest.sample.Recording;

/**
 * A simulated lesson whose samples are made piece by piece when they are asked for.
 *
 * @param recording all but the samples
 */
public record LongLesson(Recording recording, List<UnitPieces> units, LessonTruth truth) {

  /** The same with all samples in memory, where each unit comes in one piece. */
  SyntheticLesson whole() {
    return new SyntheticLesson(
        new Recording(
            recording.id(),
            recording.player(),
            units.stream().map(unit -> unit.pieces().get().next()).toList(),
            recording.marks()),
        truth);
  }
}
