package steadyturn.cli.page;

import java.util.List;
import java.util.Optional;
import steadyturn.analysis.coach.ModelComparison;
import steadyturn.analysis.coach.ModelGap;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.measure.Measure;

/** The tables: means with their ranges, and the gaps to a model swing. */
final class NumbersPart {

  /** What the table of means shows, where the swings have it. */
  static final List<MeasureAt> ROWS =
      List.of(
          new MeasureAt(Measure.PELVIS_TURN, "top"),
          new MeasureAt(Measure.PELVIS_SLIDE, "top"),
          new MeasureAt(Measure.PELVIS_TURN_SHARE, "top"),
          new MeasureAt(Measure.PELVIS_CENTRE_ALONG, "top"),
          new MeasureAt(Measure.PELVIS_TURN, "impact"),
          new MeasureAt(Measure.PELVIS_SLIDE, "impact"),
          new MeasureAt(Measure.PELVIS_THRUST, "impact"),
          new MeasureAt(Measure.PELVIS_SLIDE_PER_TURN, "impact"),
          new MeasureAt(Measure.PELVIS_CIRCLE, ""),
          new MeasureAt(Measure.WRIST_KEPT, "lead-arm-level-down"),
          new MeasureAt(Measure.WRIST_RELEASE, ""),
          new MeasureAt(Measure.TEMPO_BACK, ""),
          new MeasureAt(Measure.TEMPO_DOWN, ""),
          new MeasureAt(Measure.TEMPO_RATIO, ""));

  private final Pen pen;
  private final Html html = new Html();

  private NumbersPart(Pen pen) {
    this.pen = pen;
  }

  static Html means(Pen pen) {
    NumbersPart part = new NumbersPart(pen);
    part.html.open("section").element("h2", part.text("page.numbers"));
    part.head(
        part.text("table.caption"),
        List.of("table.measure", "table.at", "table.mean", "table.spread", "table.count"));
    ROWS.forEach(part::mean);
    part.html.close("tbody").close("table").close("div");
    part.html.element("p", part.text("page.about"), "class", "small").close("section");
    return part.html;
  }

  static Html model(Pen pen, ModelComparison model) {
    NumbersPart part = new NumbersPart(pen);
    part.html.open("section").element("h2", part.text("page.model"));
    part.html.open("div", "class", "figures beside-model");
    BesideTheModel.draw(pen, model)
        .ifPresent(
            svg -> {
              part.html.open("figure").part(svg).open("figcaption");
              part.html.words(part.text("picture.model.text"));
              part.html.close("figcaption").close("figure");
            });
    part.head(
        part.text("page.model.caption"),
        List.of(
            "table.measure",
            "table.at",
            "table.model",
            "table.player",
            "table.difference",
            "table.spreads"));
    model.gaps().forEach(part::gap);
    part.html.close("tbody").close("table").close("div").close("div").close("section");
    return part.html;
  }

  private void head(String caption, List<String> columns) {
    html.open("div", "class", "wide", "tabindex", "0").open("table");
    html.element("caption", caption).open("thead").open("tr");
    columns.forEach(c -> html.element("th", text(c), "scope", "col"));
    html.close("tr").close("thead").open("tbody");
  }

  private void mean(MeasureAt what) {
    Optional<GroupSummary> mean = pen.mean(what.measure(), what.at());
    if (mean.isEmpty()) {
      return;
    }
    GroupSummary m = mean.get();
    start(what);
    html.element("td", unbroken(pen.amount(m, what.measure())));
    html.element("td", m.count() < 2 ? "–" : pen.amounts().number(m.spread(), what.measure()));
    html.element("td", Integer.toString(m.count()));
    html.close("tr");
  }

  private void gap(ModelGap gap) {
    Measure measure = gap.what().measure();
    start(gap.what());
    html.element("td", pen.amounts().number(gap.model(), measure));
    html.element("td", pen.amounts().number(gap.player(), measure));
    html.element("td", pen.ranged(gap.difference(), gap.low(), gap.high(), measure));
    html.element(
        "td",
        gap.spreads().isPresent()
            ? Amounts.decimal(gap.spreads().getAsDouble(), 1, pen.words())
            : "–");
    html.close("tr");
  }

  /** On a narrow screen a line ends before the range only, not within it. */
  private static String unbroken(String ranged) {
    return ranged.replace(' ', '\u00a0').replace("\u00a0(", " (");
  }

  private void start(MeasureAt what) {
    html.open("tr");
    html.element("th", text("measure." + what.measure().id()), "scope", "row");
    html.element("td", what.at().isEmpty() ? "" : text("at." + what.at()));
  }

  private String text(String key, Object... values) {
    return pen.words().text(key, values);
  }
}
