package steadyturn.ingest.live;

import java.io.IOException;
import java.nio.file.Files;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import steadyturn.ingest.recording.dataset.EventsFile;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.sample.Mark;

/**
 * The events file of a run that is being recorded. It belongs to the first unit present, in the
 * order of the body points; when an earlier one begins later, the file moves there.
 */
final class MarkPage {

  private final RunLabel label;
  private volatile List<LiveMark> written = List.of();
  private Optional<LiveTrack> writtenFor = Optional.empty();

  MarkPage(RunLabel label) {
    this.label = label;
  }

  /** Marks in the file. */
  int written() {
    return written.size();
  }

  /** Writes the file anew when there is something new. */
  void write(List<LiveTrack> tracks, List<LiveMark> marks) throws IOException {
    Optional<LiveTrack> first =
        tracks.stream().filter(LiveTrack::hasBegun).min(Comparator.comparing(LiveTrack::point));
    boolean isWritten = written.equals(marks) && first.equals(writtenFor);
    if (first.isEmpty() || isWritten || (marks.isEmpty() && written.isEmpty())) {
      return;
    }
    LiveTrack track = first.get();
    EventsFile.write(track.folder(), label, track.point().tracksysLabel(), onsets(marks, track));
    if (writtenFor.isPresent() && !writtenFor.equals(first)) {
      delete(writtenFor.get());
    }
    writtenFor = first;
    written = List.copyOf(marks);
  }

  private static List<Mark> onsets(List<LiveMark> marks, LiveTrack track) {
    return marks.stream()
        .map(mark -> mark.since(track.startedAt()))
        .sorted(Comparator.comparingDouble(Mark::onsetS))
        .toList();
  }

  private void delete(LiveTrack track) throws IOException {
    String tracksys = track.point().tracksysLabel();
    Files.deleteIfExists(track.folder().resolve(label.fileName(tracksys, "events.tsv")));
    Files.deleteIfExists(track.folder().resolve(label.fileName(tracksys, "events.json")));
  }
}
