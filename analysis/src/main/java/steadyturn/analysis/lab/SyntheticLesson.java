package steadyturn.analysis.lab;

import steadyturn.analysis.lab.truth.LessonTruth;
import steadyturn.ingest.sample.Recording;

/** A simulated recording, which knows only what a real one would, and the truth beside it. */
public record SyntheticLesson(Recording recording, LessonTruth truth) {}
