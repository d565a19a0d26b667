/**
 * Recordings on disk, in the open standard Motion-BIDS. In: a path. Out: the {@link
 * steadyturn.ingest.recording.dataset.Session}s below it and their {@link
 * steadyturn.ingest.sample.Recording}s; or, the other way, a recording becomes files. Start at
 * {@link steadyturn.ingest.recording.dataset.Archive} to read and at {@link
 * steadyturn.ingest.recording.write.RecordingWriter} to write. What is wrong in a file is told with
 * its place: {@link steadyturn.ingest.recording.table.RecordingException}. Leaves to others:
 * whether the samples are good, finer alignment of clocks, and all other layouts (columnmap).
 */
@NullMarked
package steadyturn.ingest.recording;

import org.jspecify.annotations.NullMarked;
