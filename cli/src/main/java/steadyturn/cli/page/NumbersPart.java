package steadyturn.cli.page;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import steadyturn.analysis.coach.ModelComparison;
import steadyturn.analysis.coach.ModelGap;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.page.paper.Html;

/** The tables: means with their ranges, and the gaps to a model swing. */
record NumbersPart(Pen pen, Html html) {

  /** What the table of means shows, where the swings have it. */
  static final List<MeasureAt> ROWS =
      List.of(
          new MeasureAt(Measure.PELVIS_TURN, "top"),
          new MeasureAt(Measure.PELVIS_SLIDE, "top"),
          new MeasureAt(Measure.PELVIS_TURN_SHARE, "top"),
          new MeasureAt(Measure.PELVIS_CENTRE_DISTANCE, "top"),
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

  static Html means(Pen pen) {
    NumbersPart part = new NumbersPart(pen, new Html());
    part.html.open("section").element("h2", pen.text("page.numbers"));
    part.head("table.caption", "table.mean", "table.spread", "table.count");
    ROWS.forEach(part::mean);
    part.html.endTable();
    return part.html.element("p", pen.text("page.about"), "class", "small").close("section");
  }

  static Html model(Pen pen, ModelComparison model) {
    NumbersPart part = new NumbersPart(pen, new Html());
    part.html.open("section").element("h2", pen.text("page.model"));
    part.html.open("div", "class", "figures beside-model");
    BesideTheModel.draw(pen, model)
        .ifPresent(svg -> part.html.figure(svg, "", pen.text("picture.model.text")));
    part.head(
        "page.model.caption", "table.model", "table.player", "table.difference", "table.spreads");
    model.gaps().forEach(part::gap);
    return part.html.endTable().close("div", "section");
  }

  private void head(String caption, String... columns) {
    Stream<String> keys = Stream.concat(Stream.of("table.measure"), Arrays.stream(columns));
    html.table(pen.text(caption), keys.map(pen::text));
  }

  private void row(MeasureAt what, String... cells) {
    html.row(Pen.sentence(pen.name(what)), Arrays.stream(cells));
  }

  private void mean(MeasureAt what) {
    pen.mean(what.measure(), what.at())
        .ifPresent(
            m ->
                row(
                    what,
                    unbroken(pen.amount(m, what.measure())),
                    m.count() < 2 ? "–" : pen.amounts().number(m.spread(), what.measure()),
                    Integer.toString(m.count())));
  }

  private void gap(ModelGap gap) {
    Measure measure = gap.what().measure();
    row(
        gap.what(),
        pen.amounts().number(gap.model(), measure),
        pen.amounts().number(gap.player(), measure),
        pen.ranged(gap.difference(), gap.low(), gap.high(), measure),
        Amounts.decimal(gap.spreads().orElse(Double.NaN), 1, pen.words()));
  }

  /** On a narrow screen a line ends before the range only, not within it. */
  private static String unbroken(String ranged) {
    return ranged.replace(' ', '\u00a0').replace("\u00a0(", " (");
  }
}
