package steadyturn.cli.output.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import steadyturn.analysis.lesson.Notice;
import steadyturn.cli.words.Words;
import steadyturn.ingest.quality.Finding;
import steadyturn.ingest.quality.RecordingReport;
import steadyturn.ingest.quality.UnitReport;

/** What `check` says, for scripts (docs/schema/check.json). */
public final class CheckJson {

  private final List<ObjectNode> recordings = new ArrayList<>();

  /**
   * One recording more.
   *
   * @param impossible what is refused besides, of how the units are worn and of the player
   */
  public void add(RecordingReport report, List<Notice> impossible) {
    ObjectNode node = Json.object().put("recording", report.recordingId());
    node.put("verdict", report.verdict().word());
    Json.list(node, "units", report.units(), CheckJson::unit);
    ReasonJson.notices(node, impossible);
    recordings.add(node);
  }

  /** Writes all of them and a line end; leaves the writer open. */
  public void write(Writer to) throws IOException {
    ObjectNode root = Json.root();
    Json.list(root, "recordings", recordings, node -> node);
    Json.write(root, to);
  }

  private static ObjectNode unit(UnitReport unit) {
    ObjectNode node = Json.object().put("point", unit.facts().point().trackedPoint());
    node.put("verdict", unit.verdict().word());
    Json.number(node, "rateHz", unit.rateHz());
    Json.number(node, "lostPct", unit.lostPct());
    node.put("saturatedSamples", unit.saturatedSamples());
    Json.list(node, "findings", unit.findings(), CheckJson::finding);
    return node;
  }

  private static ObjectNode finding(Finding finding) {
    return ReasonJson.put(
        Json.object().put("verdict", finding.verdict().word()),
        Words.english().advice(finding.what()),
        finding.what());
  }
}
