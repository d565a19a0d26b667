package steadyturn.cli.output.json;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import steadyturn.analysis.lesson.Notice;
import steadyturn.cli.output.Decimals;
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
  static Map<String, Object> fields(Reason reason) {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("why", Words.english().text(reason));
    fields.put("reason", reason.code().word());
    Map<String, @Nullable Object> args = new LinkedHashMap<>();
    reason.args().forEach((name, value) -> args.put(name, plain(value)));
    fields.put("args", args);
    return fields;
  }

  /** Notices with what each is said of and the three fields of its reason. */
  public static List<Map<String, Object>> notices(List<Notice> notices) {
    return Words.english().told(notices).values().stream().map(ReasonJson::notice).toList();
  }

  private static Map<String, Object> notice(Notice notice) {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("about", notice.about());
    fields.putAll(fields(notice.reason()));
    fields.put("why", Words.english().advice(notice.reason()));
    return fields;
  }

  private static @Nullable Object plain(Object value) {
    if (value instanceof Reason nested) {
      return fields(nested);
    }
    if (value instanceof BodyPoint point) {
      return point.trackedPoint();
    }
    if (value instanceof Double number) {
      return Double.isFinite(number) ? Decimals.round(number, Decimals.OF_VALUE) : null;
    }
    return value;
  }
}
