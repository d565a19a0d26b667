package steadyturn.cli.command.live;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.live.LiveLesson;
import steadyturn.cli.lesson.LessonReading;
import steadyturn.cli.lesson.Lessons;
import steadyturn.cli.lesson.PlayerSizes;
import steadyturn.cli.lesson.TeachingChoice;
import steadyturn.cli.output.table.BallAnswer;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Desk;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.terminal.HangUp;
import steadyturn.cli.terminal.PlainDesk;
import steadyturn.cli.terminal.TerminalDesk;
import steadyturn.cli.words.Words;
import steadyturn.fusion.calibrate.CalibrationStore;
import steadyturn.ingest.live.LiveRecorder;
import steadyturn.ingest.recording.dataset.Participants;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.serial.HostTime;

/** Records live units into a dataset. */
@Command(name = "record", sortOptions = false)
public final class RecordCommand implements Callable<Integer> {

  private static final long LOOK_EVERY_MS = 250;
  private static final long LAST_WORDS_S = 20;

  @Mixin private Console console;

  @SuppressWarnings("UnusedVariable") // for the help and the completion
  @Mixin
  private PluginChoice plugins;

  @Parameters(index = "0", paramLabel = "DIR")
  private Path root = Path.of("");

  @Parameters(
      index = "1..*",
      arity = "1..*",
      paramLabel = "UNIT",
      converter = UnitChoice.Converter.class)
  private List<UnitChoice> units = List.of();

  @Option(names = "--player", required = true, paramLabel = "LABEL")
  private String player = "";

  @Option(names = "--handed", required = true, paramLabel = "right|left")
  private Handedness handed = Handedness.RIGHT;

  @Option(names = "--lesson", paramLabel = "LABEL")
  private String lesson = LocalDate.now(ZoneId.systemDefault()).toString().replace("-", "");

  @Mixin private PlayerSizes sizes;

  @Mixin private TeachingChoice teachingChoice;

  @Mixin private PortOptions portOptions;

  @Option(names = "--seconds", paramLabel = "S")
  private double lengthS = Double.POSITIVE_INFINITY;

  @Option(names = "--typed")
  private boolean isTyped = Boolean.getBoolean("steadyturn.typed");

  private final CountDownLatch isEnded = new CountDownLatch(1);

  @Override
  public Integer call() throws IOException {
    if (!RunLabel.isLabel(player) || !RunLabel.isLabel(lesson)) {
      throw console.wrongUsage("--player and --lesson take letters and digits only");
    }
    UnitChoice.requireApart(units, console);
    Teaching teaching = teachingChoice.read();
    List<LessonReading> earlier = earlier();
    LiveRecorder recorder = LiveRecorder.start(root, sizes.of(player, handed, console), lesson);
    Player who = Participants.player(root, player, new ArrayList<>()); // as it is read afterwards
    CountDownLatch isSaid = new CountDownLatch(1);
    Thread atEnd = new Thread(() -> endFromOutside(recorder, isSaid), "end of recording");
    Runtime.getRuntime().addShutdownHook(atEnd);
    LivePorts ports = new LivePorts();
    boolean isWell = false;
    try (Desk desk = desk()) {
      double zeroS = HostTime.steadyS();
      LocalDateTime zero = recorder.timeOfDay(zeroS);
      LiveLesson answered =
          new LiveLesson(
              recorder.label().id(),
              who,
              CalibrationStore.of(root)::applyTo,
              new BallVoice(new BallAnswer(player, teaching), lines -> lines.forEach(desk::say)));
      LiveTyping typing =
          new LiveTyping(
              recorder,
              answered,
              units.size(),
              () -> HostTime.steadyS() - zeroS,
              desk,
              isEnded::countDown);
      earlier.forEach(answered::before);
      recorder.tellMarks(mark -> answered.mark(mark.since(zero)));
      try {
        ports.open(recorder, units, portOptions, () -> new LessonFeed(answered, zero));
        if (sizes.isOtherThan(who)) {
          desk.warn(Words.say("record.sizes", player));
        }
        WarmUp.begin(teaching);
        desk.say(Words.say("record.begins", recorder.label().id(), root));
        if (isTyped) {
          typing.start();
        }
        watch(recorder, ports, typing, desk);
      } finally {
        ports.close();
        recorder.close();
        answered.close();
      }
      isWell = say(recorder, ports, desk);
    } finally {
      isSaid.countDown();
    }
    return isWell ? Failures.DONE : Failures.FAILED;
  }

  /** What was recorded of this lesson before, where wear steps may lie. */
  private List<LessonReading> earlier() {
    List<LessonReading> earlier = new ArrayList<>();
    if (Files.isDirectory(root.resolve("sub-" + player).resolve("ses-" + lesson))) {
      Lessons there = Lessons.under(List.of(root), console);
      there.eachOf(
          player,
          session -> {
            if (session.lesson().equals(lesson)) {
              earlier.add(LessonReading.ofSteps(session, there));
            }
          });
    }
    return earlier;
  }

  private Desk desk() {
    Optional<Desk> terminal =
        Boolean.getBoolean("steadyturn.typed") ? TerminalDesk.open(console) : Optional.empty();
    return terminal.orElseGet(() -> new PlainDesk(console, isTyped));
  }

  /** Ctrl-C, the end of the terminal, the end of the machine: the command says its last words. */
  private void endFromOutside(LiveRecorder recorder, CountDownLatch isSaid) {
    isEnded.countDown();
    try {
      if (!isSaid.await(LAST_WORDS_S, TimeUnit.SECONDS)) {
        recorder.close();
      }
    } catch (InterruptedException e) {
      recorder.close();
    }
  }

  /** What is on the disk, and what is not; whether all is well. */
  private boolean say(LiveRecorder recorder, LivePorts ports, Desk desk) {
    recorder.news().forEach(desk::warn);
    desk.status("");
    ports.summary().forEach(desk::say);
    recorder.stopped().ifPresent(desk::warn);
    if (recorder.missing() > 0) {
      desk.warn(Words.say("record.missing", recorder.missing()));
    }
    if (recorder.kept() == 0) {
      desk.warn(Words.say("record.nothing"));
    } else {
      desk.say(Words.say("record.next", root));
      desk.say(Words.say("record.then", root));
    }
    return recorder.stopped().isEmpty()
        && recorder.missing() == 0
        && recorder.kept() > 0
        && ports.nobodyGivenUp();
  }

  private void watch(LiveRecorder recorder, LivePorts ports, LiveTyping typing, Desk desk) {
    double fromS = HostTime.steadyS();
    HangUp terminal = new HangUp();
    try {
      while (recorder.stopped().isEmpty()
          && HostTime.steadyS() < fromS + lengthS
          && !terminal.isGone()
          && !isEnded.await(LOOK_EVERY_MS, TimeUnit.MILLISECONDS)) {
        recorder.news().forEach(desk::warn);
        ports.troubles().forEach(desk::warn);
        typing.look();
        desk.status(typing.status() + ports.status(HostTime.steadyS() - fromS));
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
