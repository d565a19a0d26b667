package steadyturn.cli.page;

import java.util.DoubleSummaryStatistics;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import steadyturn.analysis.coach.Evidence;
import steadyturn.analysis.coach.RuleFinding;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.page.paper.Drawing;
import steadyturn.cli.page.paper.Frame;
import steadyturn.cli.page.paper.Html;
import steadyturn.cli.page.paper.Ink;

/**
 * The few numbers that matter, set apart: each large, with its range drawn against what the teacher
 * calls good (hatched).
 */
record FewNumbers(Pen pen) {

  private static final int WIDTH = 300;
  private static final int HEIGHT = 46;
  private static final int MOST = 3;

  /** What a finding was seen by: good begins where its limit ends. */
  static Html against(Pen pen, RuleFinding finding) {
    return new FewNumbers(pen).list(List.of(finding), false);
  }

  /** What speaks for what is good already. */
  static Html within(Pen pen, List<RuleFinding> good) {
    return new FewNumbers(pen).list(good, true);
  }

  private Html list(List<RuleFinding> findings, boolean good) {
    Map<MeasureAt, List<Evidence>> byMeasure =
        findings.stream()
            .flatMap(finding -> finding.evidence().stream())
            .filter(e -> !good || !e.need().ofSpread())
            .collect(
                Collectors.groupingBy(
                    e -> e.need().what(), LinkedHashMap::new, Collectors.toList()));
    Html html = new Html();
    if (byMeasure.isEmpty()) {
      return html;
    }
    html.open("ul", "class", "few");
    byMeasure.values().stream().limit(MOST).forEach(same -> one(html, same, good));
    return html.close("ul");
  }

  private void one(Html html, List<Evidence> same, boolean good) {
    Evidence e = same.get(0);
    Measure measure = e.need().what().measure();
    String of = pen.name(e.need().what());
    String name = Pen.sentence(e.need().ofSpread() ? pen.text("page.spread-of", of) : of);
    String limits =
        same.stream()
            .map(each -> each.limit().value())
            .sorted()
            .distinct()
            .map(limit -> pen.amounts().asSetWithUnit(limit, measure))
            .collect(Collectors.joining(pen.text("page.few.to")));
    html.open("li").element("span", name).words(" ");
    html.element("strong", pen.amounts().amount(e.value(), measure)).words(" ");
    String range =
        pen.text(
            "page.few",
            pen.amounts().number(e.low(), measure),
            pen.amounts().number(e.high(), measure),
            pen.text(good ? "page.few.good" : "page.limit", limits));
    html.element("span", range, "class", "range");
    if (Double.isFinite(e.low()) && Double.isFinite(e.high())) {
      html.part(strip(same, name, good));
    }
    html.close("li");
  }

  /** The range of one number over its axis; what is good beyond or between the limits. */
  private Html strip(List<Evidence> same, String name, boolean good) {
    Evidence e = same.get(0);
    Measure measure = e.need().what().measure();
    DoubleSummaryStatistics ends =
        Stream.concat(Stream.of(e.low(), e.high()), same.stream().map(each -> each.limit().value()))
            .mapToDouble(Double::doubleValue)
            .summaryStatistics();
    double room = 0.2 * (ends.getMax() - ends.getMin());
    double from = ends.getMin() - room;
    double to = ends.getMax() + room;
    boolean sideways = measure == Measure.PELVIS_SLIDE;
    boolean mirrored = sideways && pen.leftIsTarget() > 0;
    Frame frame = new Frame(4, 4, WIDTH - 8, 20, mirrored ? to : from, mirrored ? from : to, 0, 1);
    for (Evidence each : same) {
      boolean least = each.need().above() == good;
      from = least ? Math.max(from, each.limit().value()) : from;
      to = least ? to : Math.min(to, each.limit().value());
    }
    String id = "few-" + measure.id().replace('.', '-') + "-" + e.need().what().at();
    String alt = pen.ranged(e.value(), e.low(), e.high(), measure);
    Drawing drawing = new Drawing(id, WIDTH, sideways ? HEIGHT + 16 : HEIGHT, name, alt);
    double x = Math.min(frame.x(from), frame.x(to));
    drawing.wanted(x, frame.top(), Math.abs(frame.x(to) - frame.x(from)), frame.height());
    drawing.line(4, 14, WIDTH - 4, 14, Ink.QUIET, 1);
    drawing.line(frame.x(e.low()), 14, frame.x(e.high()), 14, Ink.DARK, 5);
    drawing.dot(frame.x(e.value()), 14, 7, Ink.DARK);
    for (Evidence each : same) {
      String limit = pen.amounts().asSet(each.limit().value(), measure);
      drawing.words(frame.x(each.limit().value()), 42, "middle", limit, "note");
    }
    if (sideways) {
      String target = pen.text(mirrored ? "strip.target.left" : "strip.target.right");
      drawing.words(mirrored ? 4 : WIDTH - 4, 58, mirrored ? "start" : "end", target, "note");
    }
    return drawing.done();
  }
}
