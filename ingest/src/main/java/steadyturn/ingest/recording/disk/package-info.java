/**
 * How files reach the disk. In: bytes and a name. Out: a file that is there whole or not at all,
 * for its owner only, written by one at a time. Start at {@link WholeFile} for a file and at {@link
 * ArchiveLock} for an archive. Knows nothing of what is written.
 */
@NullMarked
package steadyturn.ingest.recording.disk;

import org.jspecify.annotations.NullMarked;
