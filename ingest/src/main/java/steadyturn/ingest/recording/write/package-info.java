/**
 * Writes a recording into an archive, whole or not at all. In: a {@link
 * steadyturn.ingest.sample.Recording}. Out: files that {@code ingest.recording} reads back. Start
 * at {@link RecordingWriter}.
 */
@NullMarked
package steadyturn.ingest.recording.write;

import org.jspecify.annotations.NullMarked;
