package steadyturn.cli.command.live;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.lesson.AnalysisSettings;
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
import steadyturn.ingest.live.LiveRecorder;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.serial.HostTime;

/** Records live units into a dataset. */
@Command(name = "record", sortOptions = false)
public final class RecordCommand implements Callable<Integer> {

  private static final long LOOK_EVERY_MS = 250;
  private static final long LAST_WORDS_S = 20;
  private static final boolean IS_TERMINAL = Boolean.getBoolean("steadyturn.typed");

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

  @Mixin private ConsentQuestion consentQuestion;

  @Mixin private PortOptions portOptions;

  @Option(names = "--seconds", paramLabel = "S")
  private double lengthS = Double.POSITIVE_INFINITY;

  @Option(names = "--typed")
  private boolean asksForTyping; // a flag that were true by itself would be turned off by its name

  private final CountDownLatch isEnded = new CountDownLatch(1);
  private final AtomicInteger exitCode = new AtomicInteger(Failures.FAILED);

  @Override
  public Integer call() throws IOException {
    if (!RunLabel.isLabel(player) || !RunLabel.isLabel(lesson)) {
      throw console.wrongUsage("--player and --lesson take letters and digits only");
    }
    UnitChoice.requireApart(units, console);
    Teaching teaching = teachingChoice.read();
    ConsentQuestion.Answer consent =
        consentQuestion.ask(
            root,
            player,
            LocalDate.now(ZoneId.systemDefault()),
            IS_TERMINAL ? Optional.of(System.in) : Optional.empty(),
            console);
    if (consent.outcome() == ConsentQuestion.Outcome.REFUSED) {
      return Failures.FAILED;
    }
    CountDownLatch isSaid = new CountDownLatch(1);
    try (Desk desk = desk()) {
      LiveSession session =
          LiveSession.start(
              root,
              sizes.of(player, handed, console),
              lesson,
              AnalysisSettings.defaults().withoutCurves(),
              new BallVoice(new BallAnswer(player, teaching), lines -> lines.forEach(desk::say)),
              console);
      consent.note(root, player);
      Thread atEnd = new Thread(() -> endFromOutside(session, isSaid), "end-of-recording");
      Runtime.getRuntime().addShutdownHook(atEnd);
      LiveTyping typing = new LiveTyping(session, units.size(), desk, isEnded::countDown);
      try {
        session.open(units, portOptions, (point, timeS, accel, gyro) -> {});
        if (sizes.isOtherThan(session.player())) {
          desk.warn(Words.say("record.sizes", player));
        }
        WarmUp.begin(teaching);
        desk.say(Words.say("record.begins", session.recorder().label().id(), root));
        if (asksForTyping || IS_TERMINAL) {
          typing.start();
        }
        watch(session, typing, desk);
      } finally {
        session.close();
      }
      exitCode.set(say(session, desk) ? Failures.DONE : Failures.FAILED);
    } finally {
      isSaid.countDown();
    }
    return exitCode.get();
  }

  private Desk desk() {
    Optional<Desk> terminal = IS_TERMINAL ? TerminalDesk.open(console) : Optional.empty();
    return terminal.orElseGet(() -> new PlainDesk(console, asksForTyping || IS_TERMINAL));
  }

  /** Ctrl-C, the end of the terminal, the end of the machine: the command says its last words. */
  private void endFromOutside(LiveSession session, CountDownLatch isSaid) {
    boolean isRunning = isSaid.getCount() > 0;
    isEnded.countDown();
    try {
      if (!isSaid.await(LAST_WORDS_S, TimeUnit.SECONDS)) {
        session.recorder().close();
      } else if (isRunning) { // an end like "quit", whatever brought it
        console.out().flush();
        console.err().flush();
        Runtime.getRuntime().halt(exitCode.get());
      }
    } catch (InterruptedException e) {
      session.recorder().close();
    }
  }

  /** What is on the disk, and what is not; whether all is well. */
  private boolean say(LiveSession session, Desk desk) {
    LiveRecorder recorder = session.recorder();
    recorder.news().forEach(desk::warn);
    desk.status("");
    session.ports().summary().forEach(desk::say);
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
    return session.isWell();
  }

  private void watch(LiveSession session, LiveTyping typing, Desk desk) {
    double fromS = HostTime.steadyS();
    HangUp terminal = new HangUp();
    try {
      while (session.recorder().stopped().isEmpty()
          && HostTime.steadyS() < fromS + lengthS
          && !terminal.isGone()
          && !isEnded.await(LOOK_EVERY_MS, TimeUnit.MILLISECONDS)) {
        session.recorder().news().forEach(desk::warn);
        session.ports().troubles().forEach(desk::warn);
        typing.look();
        desk.status(typing.status() + session.ports().status(HostTime.steadyS() - fromS));
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
