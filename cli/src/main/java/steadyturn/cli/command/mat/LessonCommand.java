package steadyturn.cli.command.mat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.cli.command.live.PluginChoice;
import steadyturn.cli.command.live.PortOptions;
import steadyturn.cli.command.live.UnitChoice;
import steadyturn.cli.command.live.WarmUp;
import steadyturn.cli.command.rehearsal.RehearsedPlayer;
import steadyturn.cli.lesson.TeachingChoice;
import steadyturn.cli.live.PageServer;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.terminal.HangUp;
import steadyturn.cli.words.Words;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.recording.disk.PrivateFiles;
import steadyturn.ingest.sample.Handedness;

/** A whole lesson on a page of this machine: strap on, swing, see it. */
@Command(name = "lesson", sortOptions = false)
public final class LessonCommand implements Callable<Integer> {

  private static final long LOOK_EVERY_MS = 100;

  private static final long LAST_WORDS_S = 20;

  @Mixin private Console console;

  @SuppressWarnings("UnusedVariable") // for the help and the completion
  @Mixin
  private PluginChoice plugins;

  /** The first one is a player where it is letters and digits only; the others are units. */
  @Parameters(arity = "0..*", paramLabel = "UNIT")
  private List<String> words = List.of();

  @Option(names = "--into", paramLabel = "DIR")
  private Optional<Path> into = Optional.empty();

  @Option(names = "--rehearse")
  private boolean isRehearsed;

  @Option(names = "--listen")
  private boolean listens;

  @Option(names = "--port", paramLabel = "N")
  private int port;

  @Option(names = "--no-browser")
  private boolean hasNoBrowser;

  @Option(names = "--seed", paramLabel = "N")
  private long seed = 17;

  /** The virtual player's side. */
  @Option(names = "--handed", paramLabel = "right|left")
  private Handedness handed = Handedness.RIGHT;

  @Mixin private TeachingChoice teachingChoice;

  @Mixin private PortOptions portOptions;

  private final CountDownLatch isEnded = new CountDownLatch(1);

  @Override
  public Integer call() throws IOException {
    Path home = Path.of(System.getProperty("steadyturn.home", "."));
    Path root =
        into.orElse(isRehearsed ? home.resolve("out").resolve("rehearsal") : Path.of("lessons"));
    Teaching teaching = teachingChoice.read();
    boolean isNamed = !words.isEmpty() && RunLabel.isLabel(words.get(0));
    String player = isNamed ? words.get(0) : "";
    List<String> ports = new ArrayList<>(words.subList(isNamed ? 1 : 0, words.size()));
    PrivateFiles.folders(root);
    WarmUp.begin(teaching);
    Optional<RehearsedPlayer> rehearsed = Optional.empty();
    if (isRehearsed) {
      rehearsed = Optional.of(RehearsedPlayer.in(root.resolve(".units"), handed, seed));
      ports.clear();
      rehearsed.get().ports().forEach(path -> ports.add(path.toString()));
    }
    List<UnitChoice> units = ports.stream().map(UnitChoice::of).toList();
    MatOptions options = new MatOptions(root, player, units, portOptions, teaching, console);
    try {
      return run(new LessonRoom(options, rehearsed));
    } finally {
      if (rehearsed.isPresent()) {
        rehearsed.get().close();
      }
    }
  }

  private int run(LessonRoom room) throws IOException {
    CountDownLatch isSaid = new CountDownLatch(1);
    Thread atEnd = new Thread(() -> endFromOutside(isSaid), "end-of-lesson");
    Runtime.getRuntime().addShutdownHook(atEnd);
    try (PageServer server = new PageServer(room, port, listens ? addresses() : Set.of())) {
      room.tellsTo(server::tell);
      room.resume();
      say(server);
      watch(room);
    } finally {
      room.close();
      isSaid.countDown();
    }
    console.out().println(Words.say("mat.told.end"));
    return Failures.DONE;
  }

  private void say(PageServer server) {
    console.out().println(Words.say("mat.told.open", server.address()));
    if (listens && addresses().isEmpty()) {
      console.warn(Words.say("mat.told.no-network"));
    } else if (listens) {
      console.warn(Words.say("mat.told.listen"));
      addresses().forEach(a -> console.out().println("  http://" + a + ":" + server.port() + "/"));
      console.out().println(Words.say("mat.told.code", server.code().orElse("")));
    }
    console.out().println(Words.say("mat.told.stop"));
    console.out().flush();
    if (!hasNoBrowser && !Browser.open(server.address())) {
      console.warn(Words.say("mat.told.no-browser"));
    }
  }

  private void watch(LessonRoom room) {
    HangUp terminal = new HangUp();
    long lastNs = System.nanoTime();
    try {
      while (!terminal.isGone() && !isEnded.await(LOOK_EVERY_MS, TimeUnit.MILLISECONDS)) {
        long nowNs = System.nanoTime();
        room.look(1e-9 * (nowNs - lastNs));
        lastNs = nowNs;
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void endFromOutside(CountDownLatch isSaid) {
    isEnded.countDown();
    try {
      isSaid.await(LAST_WORDS_S, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** This machine's addresses in the local network; never one that the whole world reaches. */
  private static Set<String> addresses() {
    Set<String> all = new LinkedHashSet<>();
    try {
      for (NetworkInterface each : Collections.list(NetworkInterface.getNetworkInterfaces())) {
        Collections.list(each.getInetAddresses()).stream()
            .filter(InetAddress::isSiteLocalAddress)
            .forEach(address -> all.add(address.getHostAddress()));
      }
    } catch (IOException e) {
      return all;
    }
    return all;
  }
}
