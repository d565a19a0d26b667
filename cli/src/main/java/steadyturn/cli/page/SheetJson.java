package steadyturn.cli.page;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.IntNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.List;
import java.util.function.Function;
import steadyturn.analysis.coach.Evidence;
import steadyturn.analysis.coach.MeanMotion;
import steadyturn.analysis.coach.ModelGap;
import steadyturn.analysis.coach.RuleFinding;
import steadyturn.analysis.coach.drill.DrillRep;
import steadyturn.analysis.coach.drill.DrillScore;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.output.json.ComparisonJson;
import steadyturn.cli.output.json.Json;
import steadyturn.cli.output.json.ReasonJson;
import steadyturn.cli.page.reader.Audience;
import steadyturn.cli.page.reader.LengthUnits;
import steadyturn.cli.words.Words;

/**
 * The content of a page for scripts: values in the units of the measures, and the same words, in
 * English whatever the reader's language.
 */
public final class SheetJson {

  private final Pen pen;

  private SheetJson(Pen pen) {
    this.pen = pen;
  }

  /** The whole object and a line end. */
  public static String json(Sheet sheet, Audience audience) {
    Pen pen = new Pen(sheet, Words.english(), LengthUnits.METRIC, audience);
    return Json.text(new SheetJson(pen).sheet());
  }

  private ObjectNode sheet() {
    Sheet sheet = pen.sheet();
    ObjectNode root = Json.object();
    root.set("madeBy", Json.node(sheet.madeBy()));
    root.put("lesson", sheet.lesson()).put("date", sheet.date());
    root.put("for", pen.audience().toString());
    root.putObject("player")
        .put("id", sheet.player().id())
        .put("handed", sheet.player().handed().word());
    root.put("club", sheet.club());
    Json.list(root, "swings", sheet.swings(), s -> IntNode.valueOf(s.number()));
    texts(root, "asks", sheet.advice().asks(), a -> "ask." + a);
    if (sheet.advice().priority().isPresent()) {
      root.set("priority", finding(sheet.advice().priority().get()));
    } else {
      root.putNull("priority");
    }
    Json.list(root, "further", sheet.advice().further(), this::finding);
    Json.list(root, "open", sheet.advice().open(), this::finding);
    texts(root, "good", sheet.advice().good(), g -> "good." + g.rule().name() + ".player");
    Json.list(root, "drillsDone", sheet.drills(), this::drill);
    numbers(root);
    sheet.model().ifPresent(m -> Json.list(root, "besideTheModel", m.gaps(), SheetJson::gap));
    motion(root);
    ReasonJson.notices(root, sheet.notices());
    root.put("cannotTell", text("page.cannot.text"));
    return root;
  }

  private <T> void texts(ObjectNode root, String key, List<T> of, Function<T, String> textKey) {
    Json.list(root, key, of, one -> TextNode.valueOf(text(textKey.apply(one))));
  }

  private ObjectNode finding(RuleFinding finding) {
    String key = "finding." + finding.rule().name();
    ObjectNode node = Json.object();
    node.put("id", finding.rule().name());
    node.put("name", text(key + ".name"));
    node.put("words", text(key + (pen.forPlayer() ? ".player" : ".teacher")));
    node.put("found", finding.found().word());
    node.put("confidence", finding.rule().confidence());
    node.put("source", source(finding.rule().source()));
    Json.list(node, "evidence", finding.evidence(), SheetJson::evidence);
    Json.list(node, "tendsTo", finding.chain(), this::link);
    if (finding.moreSwings().isPresent()) {
      node.put("moreSwings", finding.moreSwings().getAsInt());
    }
    Json.list(node, "drills", finding.rule().drills(), TextNode::valueOf);
    return node;
  }

  private ObjectNode link(RuleFinding.Link link) {
    return Json.object()
        .put("id", link.consequence().name())
        .put("words", text("consequence." + link.consequence().name() + ".teacher"))
        .put("seen", link.kind().word());
  }

  private static ObjectNode evidence(Evidence e) {
    ObjectNode node = Json.measure(e.need().what());
    node.put("of", e.need().ofSpread() ? "spread" : "mean");
    Json.range(node, "value", e.value(), e.low(), e.high());
    node.put("side", e.need().above() ? "above" : "below");
    Json.number(node, "limit", e.limit().value());
    node.put("limitSource", source(e.limit().source()));
    node.put("holds", e.holds().word());
    return node;
  }

  private ObjectNode drill(DrillScore score) {
    ObjectNode node = Json.object().put("id", score.drill().name());
    node.put("name", text("drill." + score.drill().name() + ".name"));
    node.put("low", score.drill().low()).put("high", score.drill().high());
    node.put("inGoal", score.inBand()).put("inARow", score.longestRun());
    node.put("nearEdge", score.near()).put("unseen", score.unseen());
    Json.list(node, "repetitions", score.reps(), SheetJson::repetition);
    score.effect().ifPresent(e -> node.set("effect", ComparisonJson.node(e)));
    return node;
  }

  private static ObjectNode repetition(DrillRep r) {
    ObjectNode node = Json.object().put("kind", r.swing() == 0 ? "rehearsal" : "swing");
    if (r.swing() > 0) {
      node.put("swing", r.swing());
    }
    Json.range(node, "value", r.value().value(), r.value().low(), r.value().high());
    return node.put("inGoal", r.inBand()).put("sure", r.sure());
  }

  private void numbers(ObjectNode root) {
    ArrayNode array = root.putArray("numbers");
    for (MeasureAt what : NumbersPart.ROWS) {
      pen.mean(what.measure(), what.at()).ifPresent(m -> array.add(number(what, m)));
    }
  }

  private static ObjectNode number(MeasureAt what, GroupSummary mean) {
    ObjectNode node = Json.measure(what);
    double half = mean.count() < 3 ? Double.NaN : mean.halfWidthOfMean();
    Json.range(node, "mean", mean.mean(), mean.mean() - half, mean.mean() + half);
    Json.number(node, "spread", mean.spread());
    return node.put("swings", mean.count());
  }

  private static ObjectNode gap(ModelGap gap) {
    ObjectNode node = Json.measure(gap.what());
    Json.number(node, "model", gap.model());
    Json.number(node, "player", gap.player());
    Json.range(node, "difference", gap.difference(), gap.low(), gap.high());
    Json.number(node, "ownSpreads", gap.spreads().orElse(Double.NaN));
    return node;
  }

  /** The mean path of the pictures: turn over slide and thrust over slide. */
  private void motion(ObjectNode root) {
    if (pen.sheet().swings().isEmpty()) {
      return;
    }
    MeanMotion motion = new MeanMotion(pen.sheet().group());
    List<double[]> turn =
        motion.points(
            Measure.PELVIS_SLIDE, Measure.PELVIS_TURN, MeanMotion.TAKEAWAY, MeanMotion.IMPACT);
    ArrayNode array = root.putArray("meanSlideMmTurnDeg");
    turn.forEach(
        p -> array.addArray().add(Math.rint(10 * p[0]) / 10).add(Math.rint(10 * p[1]) / 10));
  }

  private static String source(String named) {
    return named.isBlank() ? Words.english().text("source.own") : named;
  }

  private String text(String key, Object... values) {
    return pen.text(key, values);
  }
}
