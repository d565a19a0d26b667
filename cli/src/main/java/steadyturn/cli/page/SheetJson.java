package steadyturn.cli.page;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.List;
import steadyturn.analysis.coach.Evidence;
import steadyturn.analysis.coach.ModelComparison;
import steadyturn.analysis.coach.ModelGap;
import steadyturn.analysis.coach.RuleFinding;
import steadyturn.analysis.coach.drill.DrillScore;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.output.json.ComparisonJson;
import steadyturn.cli.output.json.ReasonJson;
import steadyturn.cli.words.Words;

/**
 * The content of a page for scripts: values in the units of the measures, and the same words, in
 * English whatever the reader's language.
 */
public final class SheetJson {

  private static final ObjectMapper JSON =
      new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

  private final Pen pen;

  private SheetJson(Pen pen) {
    this.pen = pen;
  }

  /** The whole object and a line end. */
  public static String json(Sheet sheet, Audience audience) throws IOException {
    Pen pen = new Pen(sheet, Words.english(), LengthUnits.METRIC, audience);
    return JSON.writeValueAsString(new SheetJson(pen).sheet()) + "\n";
  }

  private ObjectNode sheet() {
    Sheet sheet = pen.sheet();
    ObjectNode root = JSON.createObjectNode();
    root.put("lesson", sheet.lesson()).put("date", sheet.date());
    root.put("for", pen.audience().toString());
    root.putObject("player")
        .put("id", sheet.player().id())
        .put("handed", sheet.player().handed().word());
    root.put("club", sheet.club());
    ArrayNode swings = root.putArray("swings");
    sheet.swings().forEach(s -> swings.add(s.number()));
    ArrayNode asks = root.putArray("asks");
    sheet.advice().asks().forEach(a -> asks.add(text("ask." + a)));
    if (sheet.advice().priority().isPresent()) {
      root.set("priority", finding(sheet.advice().priority().get()));
    } else {
      root.putNull("priority");
    }
    findings(root, "further", sheet.advice().further());
    findings(root, "open", sheet.advice().open());
    ArrayNode good = root.putArray("good");
    sheet.advice().good().forEach(g -> good.add(text("good." + g.rule().name() + ".player")));
    drills(root);
    numbers(root);
    sheet.model().ifPresent(m -> model(root, m));
    motion(root);
    ArrayNode notices = root.putArray("notices");
    pen.words().told(sheet.notices()).keySet().forEach(notices::add);
    root.set("noticeReasons", JSON.valueToTree(ReasonJson.notices(sheet.notices())));
    root.put("cannotTell", text("page.cannot.text"));
    return root;
  }

  private void findings(ObjectNode root, String key, List<RuleFinding> findings) {
    ArrayNode array = root.putArray(key);
    findings.forEach(f -> array.add(finding(f)));
  }

  private ObjectNode finding(RuleFinding finding) {
    String key = "finding." + finding.rule().name();
    ObjectNode node = JSON.createObjectNode();
    node.put("id", finding.rule().name());
    node.put("name", text(key + ".name"));
    node.put("words", text(key + (pen.forPlayer() ? ".player" : ".teacher")));
    node.put("found", finding.found().word());
    node.put("confidence", finding.rule().confidence());
    node.put("source", source(finding.rule().source()));
    ArrayNode evidence = node.putArray("evidence");
    finding.evidence().forEach(e -> evidence.add(evidence(e)));
    ArrayNode chain = node.putArray("tendsTo");
    for (RuleFinding.Link link : finding.chain()) {
      chain
          .addObject()
          .put("id", link.consequence().name())
          .put("words", text("consequence." + link.consequence().name() + ".teacher"))
          .put("seen", link.kind().word());
    }
    if (finding.moreSwings().isPresent()) {
      node.put("moreSwings", finding.moreSwings().getAsInt());
    }
    ArrayNode drills = node.putArray("drills");
    finding.rule().drills().forEach(drills::add);
    return node;
  }

  private static ObjectNode evidence(Evidence e) {
    ObjectNode node = measure(e.need().what());
    node.put("of", e.need().ofSpread() ? "spread" : "mean");
    number(node, "value", e.value());
    number(node, "low", e.low());
    number(node, "high", e.high());
    node.put("side", e.need().above() ? "above" : "below");
    number(node, "limit", e.limit().value());
    node.put("limitSource", source(e.limit().source()));
    node.put("holds", e.holds().word());
    return node;
  }

  private void drills(ObjectNode root) {
    ArrayNode array = root.putArray("drillsDone");
    for (DrillScore score : pen.sheet().drills()) {
      ObjectNode node = array.addObject();
      node.put("id", score.drill().name());
      node.put("name", text("drill." + score.drill().name() + ".name"));
      node.put("low", score.drill().low()).put("high", score.drill().high());
      node.put("inGoal", score.inBand()).put("inARow", score.longestRun());
      node.put("nearEdge", score.near()).put("unseen", score.unseen());
      ArrayNode reps = node.putArray("repetitions");
      score
          .reps()
          .forEach(
              r -> {
                ObjectNode rep = reps.addObject();
                rep.put("kind", r.swing() == 0 ? "rehearsal" : "swing");
                if (r.swing() > 0) {
                  rep.put("swing", r.swing());
                }
                number(rep, "value", r.value().value());
                number(rep, "low", r.value().low());
                number(rep, "high", r.value().high());
                rep.put("inGoal", r.inBand()).put("sure", r.sure());
              });
      score.effect().ifPresent(e -> node.set("effect", ComparisonJson.node(e)));
    }
  }

  private void numbers(ObjectNode root) {
    ArrayNode array = root.putArray("numbers");
    for (MeasureAt what : NumbersPart.ROWS) {
      pen.mean(what.measure(), what.at()).ifPresent(m -> array.add(number(what, m)));
    }
  }

  private static ObjectNode number(MeasureAt what, GroupSummary mean) {
    ObjectNode node = measure(what);
    number(node, "mean", mean.mean());
    double half = mean.count() < 3 ? Double.NaN : mean.halfWidthOfMean();
    number(node, "low", mean.mean() - half);
    number(node, "high", mean.mean() + half);
    number(node, "spread", mean.spread());
    return node.put("swings", mean.count());
  }

  private static void model(ObjectNode root, ModelComparison model) {
    ArrayNode array = root.putArray("besideTheModel");
    for (ModelGap gap : model.gaps()) {
      ObjectNode node = measure(gap.what());
      number(node, "model", gap.model());
      number(node, "player", gap.player());
      number(node, "difference", gap.difference());
      number(node, "low", gap.low());
      number(node, "high", gap.high());
      number(node, "ownSpreads", gap.spreads().orElse(Double.NaN));
      array.add(node);
    }
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

  private static ObjectNode measure(MeasureAt what) {
    return JSON.createObjectNode()
        .put("measure", what.measure().id())
        .put("at", what.at())
        .put("unit", what.measure().unit());
  }

  private static void number(ObjectNode node, String key, double value) {
    if (Double.isFinite(value)) {
      node.put(key, Math.rint(value * 1e3) / 1e3);
    } else {
      node.putNull(key);
    }
  }

  private String text(String key, Object... values) {
    return pen.words().text(key, values);
  }
}
