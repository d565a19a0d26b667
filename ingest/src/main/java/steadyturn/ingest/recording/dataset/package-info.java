/**
 * The folders, names and side files of an archive of lessons: sessions, players, start times,
 * marks. In: a folder. Out: {@link Session}s and their runs. Start at {@link Archive}. Reads no
 * samples.
 */
@NullMarked
package steadyturn.ingest.recording.dataset;

import org.jspecify.annotations.NullMarked;
