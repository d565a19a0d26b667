package steadyturn.ingest.recording;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Stream;
import steadyturn.ingest.recording.dataset.EventsFile;
import steadyturn.ingest.recording.dataset.SessionRun;
import steadyturn.ingest.recording.dataset.Sidecars;
import steadyturn.ingest.recording.dataset.StartTimes;
import steadyturn.ingest.recording.dataset.UnitFile;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Mark;

/**
 * What is known of a run before its samples are read: the tables in use, where each begins on the
 * common axis, and the marks.
 *
 * @param sources the tables in use; the first one's first sample is the zero of the axis
 * @param offsetsS where each table's first sample lies on the axis, s
 */
record RunPlan(SessionRun run, List<UnitSource> sources, List<Double> offsetsS, List<Mark> marks) {

  /**
   * Plans the tables that can be planned.
   *
   * @param unread is handed what is wrong with each of the others
   * @throws RecordingException when there is none to be planned
   */
  static RunPlan of(
      SessionRun run,
      Function<String, Optional<BodyPoint>> pointOf,
      List<String> notices,
      Consumer<RecordingException> unread) {
    List<UnitSource> sources = new ArrayList<>();
    List<RecordingException> failures = new ArrayList<>();
    Set<BodyPoint> claimed = EnumSet.noneOf(BodyPoint.class);
    for (UnitFile file : run.units()) {
      try {
        UnitSource source =
            UnitSource.plan(
                run.root(), file, word -> pointOf.apply(word).filter(p -> !claimed.contains(p)));
        claimed.addAll(source.layout().points());
        notices.addAll(source.notices());
        source.notices().clear();
        if (!source.layout().points().isEmpty()) {
          sources.add(source);
        }
      } catch (RecordingException e) { // the other units stay
        failures.add(e);
      }
    }
    tellUnless(sources.isEmpty(), failures, unread);
    if (sources.isEmpty()) {
      throw RecordingException.of(
          run.units().get(0).table(),
          "no unit at a body point known here (pelvis, lead_forearm, lead_hand, club_shaft,"
              + " thorax). Name one in the column tracked_point of its channels file.");
    }
    pelvisFirst(sources);
    List<Double> offsetsS = offsets(run, sources, notices);
    return new RunPlan(run, sources, offsetsS, marks(run, sources, offsetsS, notices));
  }

  /** Tells what is wrong with some units; where nothing is left of the run, that fails it. */
  static void tellUnless(
      boolean nothingLeft, List<RecordingException> failures, Consumer<RecordingException> unread) {
    if (nothingLeft && !failures.isEmpty()) {
      throw failures.get(0);
    }
    failures.forEach(unread);
  }

  private static void pelvisFirst(List<UnitSource> sources) {
    for (int i = 0; i < sources.size(); i++) {
      if (sources.get(i).layout().points().contains(BodyPoint.PELVIS)) {
        sources.add(0, sources.remove(i));
        return;
      }
    }
  }

  private static List<Double> offsets(
      SessionRun run, List<UnitSource> sources, List<String> notices) {
    List<LocalDateTime> starts =
        sources.stream().flatMap(s -> s.file().startedAt().stream()).toList();
    if (starts.size() < sources.size()) {
      if (sources.size() > 1) {
        notices.add(
            run.id() + ": no start times in a scans file; all units are taken to start together.");
      }
      return sources.stream().map(s -> 0.0).toList();
    }
    return starts.stream().map(t -> StartTimes.secondsBetween(starts.get(0), t)).toList();
  }

  private static List<Mark> marks(
      SessionRun run, List<UnitSource> sources, List<Double> offsetsS, List<String> notices) {
    Stream<UnitFile> files = sources.stream().map(UnitSource::file);
    for (UnitFile file : Stream.concat(files, run.units().stream()).distinct().toList()) {
      Optional<Path> events = new Sidecars(run.root(), file, notices).nearest("events", "tsv");
      if (events.isPresent()) {
        return EventsFile.read(events.get(), offsetS(file, sources, offsetsS), notices);
      }
    }
    return List.of();
  }

  /** Where a table begins on the axis, s; one that cannot be read may still have the marks. */
  private static double offsetS(UnitFile file, List<UnitSource> sources, List<Double> offsetsS) {
    for (int i = 0; i < sources.size(); i++) {
      if (sources.get(i).file().equals(file)) {
        return offsetsS.get(i);
      }
    }
    Optional<LocalDateTime> zero = sources.get(0).file().startedAt();
    return zero.isPresent() && file.startedAt().isPresent()
        ? StartTimes.secondsBetween(zero.get(), file.startedAt().get())
        : 0;
  }
}
