/**
 * Paths of markers that cameras saw, as an optical laboratory writes them. In: a TRC file. Out:
 * {@link MarkerTracks}. Start at {@link TrcFile}. Knows nothing of bodies.
 */
@NullMarked
package steadyturn.ingest.marker;

import org.jspecify.annotations.NullMarked;
