package steadyturn.cli.command.mat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import steadyturn.analysis.lesson.Notice;
import steadyturn.analysis.swing.MarkReason;
import steadyturn.cli.command.live.LiveSession;
import steadyturn.cli.output.json.Json;
import steadyturn.cli.words.PlainWords;
import steadyturn.cli.words.Words;
import steadyturn.ingest.live.LiveState;
import steadyturn.ingest.quality.QualityReason;
import steadyturn.ingest.serial.SerialPortSource;

/** What is the matter now, and what was noticed of late, for the top of the page. */
final class Troubles {

  /** An hour of three units at 500 Hz takes 0.4 GB as text. */
  private static final long LITTLE_ROOM_BYTES = 1_000_000_000;

  /** A clock known no better than this makes a release uncertain by as much, s. */
  private static final double LOOSE_CLOCK_S = 0.006;

  private static final long MANY_SAMPLES = 3000;
  private static final int MOST_NOTICED = 4;

  private final Path root;

  /**
   * What was noticed.
   *
   * @param what by which it is told once; empty for what is told each time
   * @param isOfBall whether it holds for one ball only
   */
  private record Noticed(String what, boolean isOfBall, String sentence) {}

  private final Deque<Noticed> noticed = new ArrayDeque<>();
  private final Set<String> told = new HashSet<>();

  Troubles(Path root) {
    this.root = root;
  }

  synchronized void notice(String sentence) {
    notice(new Noticed("", false, sentence));
  }

  private void notice(Noticed its) {
    noticed.remove(its);
    noticed.addLast(its);
    if (noticed.size() > MOST_NOTICED) {
      noticed.removeFirst();
    }
  }

  /** What a person should know of the lesson, once; not what needs nothing done. */
  synchronized void notice(Notice notice) {
    boolean isIdle = notice.reason().code() == QualityReason.SHOCK;
    boolean isOfMark = notice.reason().code() instanceof MarkReason;
    boolean isOfBall = notice.reason().code() == QualityReason.GAP;
    String what = notice.about() + " " + notice.reason().code().word();
    if (!isIdle && (isOfMark || told.add(what))) {
      Words.inUse()
          .told(List.of(notice))
          .keySet()
          .forEach(sentence -> notice(new Noticed(what, isOfBall, PageUnits.in(sentence))));
    }
  }

  /** A ball came of which all is known: what was the matter with an earlier one is over. */
  synchronized void wholeBall() {
    noticed.stream().filter(Noticed::isOfBall).forEach(its -> told.remove(its.what()));
    noticed.removeIf(Noticed::isOfBall);
  }

  synchronized void read() {
    noticed.clear();
  }

  /** What holds now, worst first. */
  List<String> now(LiveSession session) {
    List<String> now = new ArrayList<>();
    session.recorder().news().forEach(this::notice);
    session.recorder().stopped().ifPresent(now::add);
    for (LiveState unit : session.ports().states()) {
      String who = unit.point().map(PlainWords::bodyPoint).orElse(Words.say("mat.unit"));
      if (!unit.trouble().isEmpty()) {
        boolean isGone = SerialPortSource.UNPLUGGED.contains(unit.trouble());
        now.add(Words.say(isGone ? "mat.trouble.gone" : "mat.trouble.unit", who, unit.trouble()));
      } else if (unit.samples() > MANY_SAMPLES && unit.clockSpreadS() > LOOSE_CLOCK_S) {
        now.add(Words.say("mat.trouble.clock", who, 1000 * unit.clockSpreadS()));
      }
    }
    try {
      if (Files.getFileStore(root).getUsableSpace() < LITTLE_ROOM_BYTES) {
        now.add(Words.say("mat.trouble.disk"));
      }
    } catch (IOException e) {
      now.add(Words.say("mat.trouble.disk"));
    }
    return now;
  }

  synchronized void json(ObjectNode node, List<String> now) {
    Json.list(node, "troubles", now, TextNode::valueOf);
    Json.list(node, "noticed", List.copyOf(noticed), its -> TextNode.valueOf(its.sentence()));
  }
}
