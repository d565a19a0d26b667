package steadyturn.cli.page;

import java.util.List;
import steadyturn.analysis.coach.Advice;
import steadyturn.analysis.coach.Evidence;
import steadyturn.analysis.coach.RuleFinding;
import steadyturn.analysis.coach.RuleFinding.Link;
import steadyturn.analysis.compare.GroupComparison;
import steadyturn.analysis.measure.Measure;

/** The one thing, what else, what is good, and what is not sure yet. */
final class AdvicePart {

  private final Pen pen;
  private final Advice advice;
  private final Html html = new Html();

  private AdvicePart(Pen pen) {
    this.pen = pen;
    this.advice = pen.sheet().advice();
  }

  static Html oneThing(Pen pen) {
    AdvicePart part = new AdvicePart(pen);
    part.priority();
    return part.html;
  }

  static Html others(Pen pen) {
    AdvicePart part = new AdvicePart(pen);
    part.good();
    part.further();
    part.open();
    return part.html;
  }

  /** Questions about set-up, which the units cannot see; for the teacher only. */
  static Html asks(Pen pen) {
    Html html = new Html();
    html.open("section", "class", "ask").element("h2", pen.words().text("ask.title")).open("ul");
    pen.sheet().advice().asks().forEach(a -> html.element("li", pen.words().text("ask." + a)));
    return html.close("ul").close("section");
  }

  private void priority() {
    html.open("section", "class", "one");
    html.element("h2", text("page.one-thing" + (pen.forPlayer() ? ".player" : "")));
    if (advice.priority().isPresent()) {
      finding(advice.priority().get());
    } else if (advice.swings() == 0) {
      html.element("p", text("page.no-swing"), "class", "big");
    } else if (advice.swings() < GroupComparison.FEWEST_SWINGS) {
      html.element("p", text("page.not-enough"), "class", "big");
    } else {
      html.element("p", text("page.nothing"), "class", "big");
      html.element("p", text("page.nothing" + (pen.forPlayer() ? ".player" : ".teacher")));
    }
    html.close("section");
  }

  private void finding(RuleFinding finding) {
    String source = finding.rule().source();
    String key = "finding." + finding.rule().name();
    html.element("p", text(key + (pen.forPlayer() ? ".aim" : ".name")), "class", "big");
    html.element("p", text(key + (pen.forPlayer() ? ".player" : ".teacher")));
    html.element("h3", text("page.evidence"));
    html.open("ul");
    finding.evidence().forEach(e -> html.element("li", evidence(e)));
    html.close("ul");
    if (!pen.forPlayer()) {
      chain(finding);
      html.element(
          "p",
          text(
              "page.source",
              source.isBlank() ? text("source.own") : source,
              text("confidence." + finding.rule().confidence())),
          "class",
          "small");
    }
  }

  private String evidence(Evidence e) {
    Measure measure = e.need().what().measure();
    String name = pen.name(e.need().what());
    if (e.need().ofSpread()) {
      name = text("page.spread-of", name);
    }
    name = Pen.sentence(name);
    if (pen.forPlayer()) {
      return name + ": " + pen.about(e.value(), measure) + ".";
    }
    String limit =
        text(
            "page.limit",
            (pen.amounts().asSet(e.limit().value(), measure) + " " + pen.amounts().unit(measure))
                .strip());
    return name + ": " + pen.ranged(e.value(), e.low(), e.high(), measure) + "; " + limit + ".";
  }

  /** What it tends to cause, one after the other, each with what the units saw of it. */
  private void chain(RuleFinding finding) {
    if (finding.chain().isEmpty()) {
      return;
    }
    html.element("h3", text("page.tends-to"));
    html.open("ol", "class", "chain");
    for (Link link : finding.chain()) {
      html.open("li");
      html.element("span", text("consequence." + link.consequence().name() + ".teacher"));
      html.words(" ");
      html.element("em", text("seen." + link.kind().word()), "class", link.kind().word());
      html.close("li");
    }
    html.close("ol");
  }

  private void good() {
    if (advice.good().isEmpty() && pen.forPlayer()) {
      return;
    }
    html.open("section").element("h2", text("page.good"));
    if (advice.good().isEmpty()) {
      html.element("p", text("page.good.none"));
    } else {
      html.open("ul", "class", "good");
      advice.good().forEach(g -> html.element("li", text("good." + g.rule().name() + ".player")));
      html.close("ul");
    }
    html.close("section");
  }

  private void further() {
    if (advice.further().isEmpty() || pen.forPlayer()) {
      return;
    }
    html.open("section").element("h2", text("page.further")).open("ul");
    for (RuleFinding finding : advice.further()) {
      html.open("li");
      html.element("strong", text("finding." + finding.rule().name() + ".name") + ". ");
      html.words(text("finding." + finding.rule().name() + ".teacher") + " ");
      finding.evidence().forEach(e -> html.words(evidence(e) + " "));
      html.close("li");
    }
    html.close("ul").close("section");
  }

  private void open() {
    List<RuleFinding> open = advice.open();
    if (open.isEmpty()) {
      return;
    }
    html.open("section").element("h2", text("page.open")).open("ul");
    for (RuleFinding finding : open) {
      String name = text("finding." + finding.rule().name() + ".name");
      html.element(
          "li",
          finding.moreSwings().isPresent()
              ? text("page.open.more", name, finding.moreSwings().getAsInt())
              : text(pen.forPlayer() ? "page.open.error.player" : "page.open.error", name));
    }
    html.close("ul").close("section");
  }

  private String text(String key, Object... values) {
    return pen.words().text(key, values);
  }
}
