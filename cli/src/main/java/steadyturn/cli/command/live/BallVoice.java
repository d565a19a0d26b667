package steadyturn.cli.command.live;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Consumer;
import steadyturn.analysis.lesson.Notice;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.live.LiveEvents;
import steadyturn.analysis.swing.MarkReason;
import steadyturn.cli.output.table.BallAnswer;

/**
 * Says the answer after every ball; what is usual is taken from the balls as they are known now.
 */
final class BallVoice implements LiveEvents {

  private final BallAnswer answer;
  private final Consumer<List<String>> says;
  private final Map<Integer, SwingResult> balls = new TreeMap<>();

  private final Set<String> noticed = new HashSet<>();

  BallVoice(BallAnswer answer, Consumer<List<String>> says) {
    this.answer = answer;
    this.says = says;
  }

  @Override
  public void measured(SwingResult swing, double afterS) {
    says.accept(answer.lines(swing, new ArrayList<>(balls.values())));
    balls.put(swing.number(), BallAnswer.kept(swing));
  }

  @Override
  public void revised(List<SwingResult> latest) {
    for (SwingResult swing : latest) {
      SwingResult was = balls.put(swing.number(), BallAnswer.kept(swing));
      if (was != null) {
        says.accept(BallAnswer.changed(was, swing));
      }
    }
  }

  @Override
  public void noticed(Notice notice) {
    boolean isOfMark = notice.reason().code() instanceof MarkReason;
    String what = notice.about() + " " + notice.reason().code().word();
    if (isOfMark || noticed.add(what)) { // not each new count
      says.accept(BallAnswer.lines(notice));
    }
  }
}
