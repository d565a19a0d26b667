package steadyturn.cli.output.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.List;
import java.util.Map;
import steadyturn.analysis.lesson.Notice;
import steadyturn.cli.words.Words;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;

/**
 * A reason for scripts: {@code why} in English whatever the reader's language, its code under
 * {@code reason}, what it speaks of under {@code args}.
 */
public final class ReasonJson {

  private ReasonJson() {}

  /** The three fields of a reason, in their order. */
  static ObjectNode fields(Reason reason) {
    return put(Json.object(), Words.english().text(reason), reason);
  }

  static ObjectNode put(ObjectNode node, String why, Reason reason) {
    ObjectNode args = Json.object();
    reason.args().forEach((name, value) -> argument(args, name, value));
    return node.put("why", why).put("reason", reason.code().word()).set("args", args);
  }

  /** Notices as sentences, and with what each is said of and the three fields of its reason. */
  public static void notices(ObjectNode node, List<Notice> notices) {
    Map<String, Notice> told = Words.english().told(notices);
    Json.list(node, "notices", List.copyOf(told.keySet()), TextNode::valueOf);
    Json.list(node, "noticeReasons", List.copyOf(told.values()), ReasonJson::notice);
  }

  private static ObjectNode notice(Notice notice) {
    ObjectNode node = Json.object().put("about", notice.about());
    return put(node, Words.english().advice(notice.reason()), notice.reason());
  }

  private static void argument(ObjectNode args, String name, Object value) {
    if (value instanceof Reason nested) {
      args.set(name, fields(nested));
    } else if (value instanceof BodyPoint point) {
      args.put(name, point.trackedPoint());
    } else if (value instanceof Double number) {
      Json.number(args, name, number);
    } else {
      args.putPOJO(name, value);
    }
  }
}
